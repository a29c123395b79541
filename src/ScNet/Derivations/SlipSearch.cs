namespace ScNet.Derivations;

/// <summary>
/// Recognises slips: each hypothesis says what would have been stated, and those that give exactly what was
/// stated are taken, the ones that explain most first. Hypotheses that explain the same are told side by side.
/// </summary>
/// <remarks>The list of slips: docs/theory/derivation-checks.md. Cost: linear in statements for each wide slip, then in wrong statements.</remarks>
internal static class SlipSearch
{
    private const int MostAlternatives = 3;

    /// <summary>The suspected slips; those that explain the same statements follow one another.</summary>
    public static IReadOnlyList<Slip> Of(Workbench bench, IReadOnlyCollection<Statement> wrongStatements)
    {
        HashSet<Statement> wrong = [.. wrongStatements];
        SlipValues values = new(bench);
        IEnumerable<SlipHypothesis> hypotheses =
        [
            .. WideSlips.Of(bench, values),
            .. ElementSlips.Of(bench, values, wrong),
            .. ElementSwaps.Of(bench, wrong),
            .. SingleSlips.Of(bench, values, wrong),
        ];
        (SlipHypothesis Hypothesis, Statement[] Explained)[] credible =
        [
            .. hypotheses.Select(h => (Hypothesis: h, Explained: h.Explains(bench, wrong))).Where(h => h.Explained.Length > 0)
                .OrderByDescending(h => h.Explained.Length).ThenBy(h => h.Hypothesis.Rank),
        ];
        List<List<Slip>> groups = [];
        Dictionary<Statement, List<Slip>> groupOf = [];
        foreach ((SlipHypothesis hypothesis, Statement[] explained) in credible)
        {
            Statement[] open = [.. explained.Where(s => !groupOf.ContainsKey(s))];
            if (open.Length == 0)
            {
                AddAlternative(groupOf[explained[0]], hypothesis, explained);
            }
            else if (open.Length == explained.Length || !hypothesis.IsWide)
            {
                List<Slip> group = [new Slip(hypothesis.Kind, hypothesis.Description, open)];
                groups.Add(group);
                Array.ForEach(open, s => groupOf.Add(s, group));
            }
        }

        return [.. groups.SelectMany(g => g)];
    }

    private static void AddAlternative(List<Slip> group, SlipHypothesis hypothesis, Statement[] explained)
    {
        if (group.Count < MostAlternatives
            && group.TrueForAll(s => s.Kind != hypothesis.Kind)
            && group[0].Explains.SequenceEqual(explained))
        {
            group.Add(new Slip(hypothesis.Kind, hypothesis.Description, explained));
        }
    }
}
