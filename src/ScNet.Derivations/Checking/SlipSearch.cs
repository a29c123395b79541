namespace ScNet.Derivations.Checking;

/// <summary>
/// Recognises slips: each hypothesis says what would have been stated, and those that give exactly what was
/// stated are taken, the ones that explain most first. Hypotheses that explain the same are told side by side.
/// </summary>
/// <remarks>The list of slips: docs/theory/derivation-checks.md. Cost: linear in statements for each wide slip, then in wrong statements.</remarks>
internal sealed class SlipSearch
{
    private const int MaximumAlternatives = 3;

    private readonly Workbench _bench;
    private readonly HashSet<Statement> _wrong;
    private readonly List<List<Slip>> _groups = [];
    private readonly Dictionary<Statement, List<Slip>> _groupOf = [];

    private SlipSearch(Workbench bench, HashSet<Statement> wrong)
    {
        _bench = bench;
        _wrong = wrong;
    }

    /// <summary>The suspected slips; those that explain the same statements follow one another.</summary>
    public static IReadOnlyList<Slip> Of(Workbench bench, IReadOnlyCollection<Statement> wrongStatements)
    {
        HashSet<Statement> wrong = [.. wrongStatements];
        SlipValues values = new(bench);
        SlipSearch search = new(bench, wrong);
        search.Take([.. WideSlips.Of(bench, values), .. ElementSlips.Of(bench, values, wrong), .. ElementSwaps.Of(bench, wrong)]);
        search.Take(SingleSlips.Of(bench, values, wrong.Where(s => search._groupOf.GetValueOrDefault(s) is not [{ Explains.Count: > 1 }, ..])));
        return [.. search._groups.SelectMany(g => g).OrderByDescending(s => s.Explains.Count)];
    }

    private void Take(IEnumerable<SlipHypothesis> hypotheses)
    {
        (SlipHypothesis Hypothesis, Statement[] Explained)[] credible =
        [
            .. hypotheses.Select(h => (Hypothesis: h, Explained: h.Explains(_bench, _wrong))).Where(h => h.Explained.Length > 0)
                .OrderByDescending(h => h.Explained.Length).ThenBy(h => h.Hypothesis.Rank),
        ];
        foreach ((SlipHypothesis hypothesis, Statement[] explained) in credible)
        {
            Statement[] open = [.. explained.Where(s => !_groupOf.ContainsKey(s))];
            if (open.Length == 0)
            {
                AddAlternative(_groupOf[explained[0]], hypothesis, explained);
            }
            else if (open.Length == explained.Length || !hypothesis.IsWide)
            {
                List<Slip> group = [new Slip(hypothesis.Kind, hypothesis.Description, open)];
                _groups.Add(group);
                Array.ForEach(open, s => _groupOf.Add(s, group));
            }
        }
    }

    private static void AddAlternative(List<Slip> group, SlipHypothesis hypothesis, Statement[] explained)
    {
        if (group.Count < MaximumAlternatives
            && group.TrueForAll(s => s.Kind != hypothesis.Kind)
            && group[0].Explains.SequenceEqual(explained))
        {
            group.Add(new Slip(hypothesis.Kind, hypothesis.Description, explained));
        }
    }
}
