namespace ScNet.Reporting.Drawings;

/// <summary>Between which rows the symbol of an upright part stands.</summary>
internal static class SymbolGaps
{
    /// <summary>
    /// For each part the row above its symbol, -1 for wires and parts that lie along a row. A part that spans several rows
    /// has its symbol in the middle, beside other symbols where there are some.
    /// </summary>
    public static int[] Of(RowPlan plan)
    {
        int[] gaps = new int[plan.Parts.Length];
        HashSet<int> used = [];
        foreach (int p in Enumerable.Range(0, gaps.Length).OrderBy(p => plan.Rows(p).Bottom - plan.Rows(p).Top).ThenBy(p => p))
        {
            (int top, int bottom) = plan.Rows(p);
            gaps[p] = -1;
            if (top < bottom && plan.Parts[p].Part.Kind != PartKind.Wire)
            {
                int middle = top + bottom - 1;
                gaps[p] = Enumerable.Range(top, bottom - top).OrderBy(g => used.Contains(g) ? 0 : 1).ThenBy(g => Math.Abs((2 * g) - middle)).First();
                used.Add(gaps[p]);
            }
        }

        return gaps;
    }
}
