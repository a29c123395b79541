namespace ScNet.Design;

/// <summary>The ways in which phases can be split: some switch closes later, or opens earlier, than the others.</summary>
internal sealed class PhaseSplits
{
    private const int MostTries = 1_000;
    private const int MostParts = 100;

    private readonly Func<int, bool[], SteadyPhase?> _phase;
    private readonly List<SteadyPhase>[][] _waysByCuts;

    /// <summary>Finds the ways of every phase.</summary>
    /// <param name="closed">Which switches are closed in each phase.</param>
    /// <param name="phase">The phase of a number, from 1, with some switches closed; null where a current has no path.</param>
    public PhaseSplits(IReadOnlyList<bool[]> closed, Func<int, bool[], SteadyPhase?> phase)
    {
        _phase = phase;
        _waysByCuts = [.. closed.Select((c, j) => Ways(phase(j + 1, c)))];
    }

    /// <summary>All phases as they are; null where a held current has no path in one.</summary>
    public IReadOnlyList<SteadyPhase>? Whole => Array.TrueForAll(_waysByCuts, w => w[0].Count > 0) ? [.. _waysByCuts.Select(w => w[0][0])] : null;

    /// <summary>The ways to split the phases, fewest cuts first.</summary>
    public IEnumerable<IReadOnlyList<SteadyPhase>> All()
    {
        int most = _waysByCuts.Sum(w => w.Length - 1);
        return Enumerable.Range(0, most + 1).SelectMany(cuts => Combined(0, cuts)).Take(MostTries);
    }

    private IEnumerable<IReadOnlyList<SteadyPhase>> Combined(int phase, int cuts)
    {
        if (phase == _waysByCuts.Length)
        {
            return cuts == 0 ? [[]] : [];
        }

        return Enumerable.Range(0, Math.Min(cuts, _waysByCuts[phase].Length - 1) + 1).SelectMany(own =>
            Chunks(phase, own).SelectMany(way => Combined(phase + 1, cuts - own).Select(rest => (IReadOnlyList<SteadyPhase>)[.. way, .. rest])));
    }

    // a list of ways with the same number of cuts, one after another
    private IEnumerable<SteadyPhase[]> Chunks(int phase, int cuts) => _waysByCuts[phase][cuts].Chunk(cuts + 1);

    private List<SteadyPhase>[] Ways(SteadyPhase? whole)
    {
        if (whole is null || whole.Loops.Count == 0)
        {
            return [whole is null ? [] : [whole]];
        }

        SteadyPhase[] opened = Below(whole);
        List<SteadyPhase> once = [.. opened.SelectMany(part => (SteadyPhase[])[part, whole, whole, part])];
        List<SteadyPhase> twice =
        [
            .. opened.SelectMany(part => Below(part).SelectMany(less => (SteadyPhase[])[less, part, whole, whole, part, less])),
            .. opened.SelectMany(part => opened.SelectMany(other => (SteadyPhase[])[part, whole, other])),
        ];
        return [[whole], once, twice];
    }

    // with one switch open or more, fewest first, each effect once
    private SteadyPhase[] Below(SteadyPhase whole)
    {
        List<SteadyPhase> found = [], last = [whole];
        while (last.Count > 0 && found.Count < MostParts)
        {
            last = [.. last.SelectMany(Opened).DistinctBy(p => p.Key).Where(p => !found.Exists(f => f.Key == p.Key))];
            found.AddRange(last);
        }

        return [.. found];
    }

    // one switch open that leaves fewer loops, each effect once
    private SteadyPhase[] Opened(SteadyPhase whole) =>
    [
        .. Enumerable.Range(0, whole.Closed.Length).Where(s => whole.Closed[s])
            .Select(s => _phase(whole.Number, [.. whole.Closed.Select((c, k) => c && k != s)]))
            .OfType<SteadyPhase>().Where(p => p.Loops.Count < whole.Loops.Count).DistinctBy(p => p.Key),
    ];
}
