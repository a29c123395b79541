namespace ScNet.Search.Networks;

/// <summary>The fewest switches that make given wirings, of any phases; proved, see <see cref="SwitchSharing"/>.</summary>
internal static class FewestSwitches
{
    /// <summary>What is returned where there are more than are of interest.</summary>
    public const int TooMany = int.MaxValue;

    /// <summary>Their number.</summary>
    /// <param name="phases">The wirings.</param>
    /// <param name="sharing">Of as many phases.</param>
    /// <param name="most">More are of no interest.</param>
    public static int Count(ReadOnlySpan<Wiring> phases, SwitchSharing sharing, int most = TooMany)
    {
        Span<int> points = stackalloc int[phases[0].TerminalCount];
        int count = 0;
        for (int t = 0; t < points.Length; t++)
        {
            bool isNew = true;
            for (int p = 0; p < count; p++)
            {
                isNew &= Common(phases, points[p], t) != (1 << phases.Length) - 1;
            }

            if (isNew)
            {
                points[count++] = t;
            }
        }

        sharing.Start(count);
        for (int second = 1; second < count; second++)
        {
            for (int first = 0; first < second; first++)
            {
                sharing.Add(first, second, Common(phases, points[first], points[second]));
            }
        }

        int alone = 0;
        foreach (Wiring phase in phases)
        {
            alone += count - phase.NodeCount;
        }

        int least = most == TooMany ? 0 : Math.Max(0, alone - most), saved = sharing.Most(least: least);
        return saved < least ? TooMany : alone - saved;
    }

    /// <summary>
    /// The pairs of terminals whose switches serve several phases, such that all switches are the fewest and, of such choices, the highest voltage that one
    /// blocks is the lowest. Every node is joined up by further pairs that block no more.
    /// </summary>
    /// <param name="phases">The wirings.</param>
    /// <param name="groups">For each terminal the first one that it is joined to in every phase.</param>
    /// <param name="blocking">The highest voltage that a switch between two terminals blocks.</param>
    public static (int First, int Second)[] Shared(IReadOnlyList<Wiring> phases, int[] groups, Func<int, int, long> blocking)
    {
        Wiring[] wirings = [.. phases];
        int[] points = [.. Enumerable.Range(0, groups.Length).Where(t => groups[t] == t)];
        (int First, int Second, int Phases, long Blocking)[] pairs =
        [
            .. (from second in Enumerable.Range(0, points.Length)
                from first in Enumerable.Range(0, second)
                let common = Common(wirings, points[first], points[second])
                where common != 0
                select (first, second, common, blocking(points[first], points[second]))).OrderBy(p => p.Item4),
        ];
        SwitchSharing sharing = new(phases.Count);
        long[] limits = [.. pairs.Select(p => p.Blocking).Distinct()];
        int most = Most(limits[^1], 0), low = 0, high = limits.Length - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Joins(limits[middle]) && Most(limits[middle], most) == most ? (low, middle) : (middle + 1, high);
        }

        Most(limits[low], most);
        return [.. sharing.Chosen.Select(p => (points[p.First], points[p.Second]))];

        int Most(long limit, int least)
        {
            sharing.Start(points.Length);
            foreach ((int first, int second, int common, _) in pairs.Where(p => p.Blocking <= limit))
            {
                sharing.Add(first, second, common);
            }

            return sharing.Most(least: least);
        }

        bool Joins(long limit) => Enumerable.Range(0, wirings.Length).All(phase =>
        {
            Span<uint> pieces = stackalloc uint[points.Length];
            Pieces.Separate(pieces, points.Length);
            int count = points.Length;
            foreach ((int first, int second, int common, _) in pairs.Where(p => p.Blocking <= limit))
            {
                count -= (common >> phase & 1) != 0 && Pieces.Join(pieces, first, second) ? 1 : 0;
            }

            return count == wirings[phase].NodeCount;
        });
    }

    // a bit per phase that joins two terminals
    private static int Common(ReadOnlySpan<Wiring> phases, int first, int second)
    {
        int common = 0;
        for (int phase = 0; phase < phases.Length; phase++)
        {
            common |= phases[phase].Joins(first, second) ? 1 << phase : 0;
        }

        return common;
    }
}
