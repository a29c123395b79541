namespace ScNet.Search.Networks;

/// <summary>The fewest switches of given wirings when none of them may block more than some limit.</summary>
internal sealed class SwitchLimits
{
    private readonly Wiring[] _phases;
    private readonly int[] _points;
    private readonly (int First, int Second, int Phases, long Blocking)[] _pairs;
    private readonly SwitchSharing _sharing;
    private readonly long[] _limits;

    private SwitchLimits(Wiring[] phases, int[] points, (int First, int Second, int Phases, long Blocking)[] pairs)
    {
        _phases = phases;
        _points = points;
        _pairs = pairs;
        _sharing = new SwitchSharing(phases.Length);
        _limits = [.. pairs.Select(p => p.Blocking).Distinct()];
    }

    /// <summary>The limits of wirings.</summary>
    /// <param name="phases">The wirings.</param>
    /// <param name="groups">For each terminal the first one that it is joined to in every phase.</param>
    /// <param name="potentials">Per phase the potential of each terminal.</param>
    public static SwitchLimits Of(IReadOnlyList<Wiring> phases, int[] groups, IReadOnlyList<long[]> potentials)
    {
        Wiring[] wirings = [.. phases];
        int[] points = [.. Enumerable.Range(0, groups.Length).Where(t => groups[t] == t)];
        List<(int First, int Second, int Phases, long Blocking)> pairs = [];
        for (int second = 1; second < points.Length; second++)
        {
            for (int first = 0; first < second; first++)
            {
                int common = FewestSwitches.Common(wirings, points[first], points[second]);
                if (common != 0)
                {
                    pairs.Add((first, second, common, Blocking(wirings, potentials, points[first], points[second])));
                }
            }
        }

        return new SwitchLimits(wirings, points, [.. pairs.OrderBy(p => p.Blocking)]);
    }

    /// <summary>The highest voltage that a switch between two terminals blocks, which are not joined in some phase.</summary>
    public static long Blocking(IReadOnlyList<Wiring> phases, IReadOnlyList<long[]> potentials, int first, int second)
    {
        long highest = 0;
        for (int phase = 0; phase < phases.Count; phase++)
        {
            highest = phases[phase].Joins(first, second) ? highest : Math.Max(highest, Math.Abs(potentials[phase][first] - potentials[phase][second]));
        }

        return highest;
    }

    /// <summary>The numbers of switches from the lowest limit that any have to the fewest of all, each with the lowest limit at which there are so many.</summary>
    public IReadOnlyList<(int Count, long Limit)> Steps()
    {
        int alone = _phases.Sum(p => _points.Length - p.NodeCount), most = Saved(_limits[^1], 0), last = -1;
        List<(int, long)> steps = [];
        foreach (long limit in _limits.SkipWhile(l => !Joins(l)))
        {
            int saved = Saved(limit, last + 1);
            if (saved > last)
            {
                steps.Add((alone - saved, limit));
                last = saved;
            }

            if (last == most)
            {
                break;
            }
        }

        return steps;
    }

    /// <summary>
    /// The pairs of terminals whose switches serve several phases, such that all switches are the fewest within a limit and, of such choices, the highest voltage that one
    /// blocks is the lowest. Every node is joined up by further pairs that block no more.
    /// </summary>
    /// <param name="within">The limit; null for any voltage.</param>
    /// <exception cref="ArgumentException">No switches are within the limit.</exception>
    public (int First, int Second)[] Shared(long? within)
    {
        long[] limits = [.. _limits.Where(l => within is null || l <= within)];
        if (limits.Length == 0 || !Joins(limits[^1]))
        {
            throw new ArgumentException($"Expected a limit that some switches keep to, but it is {within}.", nameof(within));
        }

        int most = Saved(limits[^1], 0), low = 0, high = limits.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Joins(limits[middle]) && Saved(limits[middle], most) == most ? (low, middle) : (middle + 1, high);
        }

        Saved(limits[low], most);
        return [.. _sharing.Chosen.Select(p => (_points[p.First], _points[p.Second]))];
    }

    // the switches saved by sharing; of fewer than the least nothing is known but that
    private int Saved(long limit, int least)
    {
        _sharing.Start(_points.Length);
        foreach ((int first, int second, int common, long blocking) in _pairs)
        {
            if (blocking <= limit)
            {
                _sharing.Add(first, second, common);
            }
        }

        return _sharing.Most(least: least);
    }

    private bool Joins(long limit)
    {
        Span<uint> pieces = stackalloc uint[_points.Length];
        for (int phase = 0; phase < _phases.Length; phase++)
        {
            Pieces.Separate(pieces, _points.Length);
            int count = _points.Length;
            foreach ((int first, int second, int common, long blocking) in _pairs)
            {
                count -= blocking <= limit && (common >> phase & 1) != 0 && Pieces.Join(pieces, first, second) ? 1 : 0;
            }

            if (count != _phases[phase].NodeCount)
            {
                return false;
            }
        }

        return true;
    }
}
