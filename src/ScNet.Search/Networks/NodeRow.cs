namespace ScNet.Search.Networks;

/// <summary>Which members of a node the switches of a two-phase network join, the members standing in a row by their potential in the other phase.</summary>
internal static class NodeRow
{
    /// <summary>Pairs of members: neighbours of the row, or givers and takers paired in their order.</summary>
    /// <param name="row">The members in the row's order.</param>
    /// <param name="amounts">The charge that each member takes, negative where it gives; their sum is zero.</param>
    /// <param name="layout">Straight paths are taken only where they pass less charge than the row does.</param>
    /// <remarks>
    /// Of all ways to lead charge straight from givers to takers, pairing them in the order of potential has the least
    /// charge–voltage product, and it is that of the row (transport along a line, docs/theory/atlas.md).
    /// </remarks>
    public static IEnumerable<(int First, int Second)> Pairs(int[] row, long[] amounts, SwitchLayout layout)
    {
        long passed = 0, inRow = 0, straight = 0;
        foreach (int member in row)
        {
            passed += amounts[member];
            inRow += Math.Abs(passed);
            straight += Math.Max(0, amounts[member]);
        }

        return layout == SwitchLayout.LowestBlocking || inRow == straight ? row.Zip(row.Skip(1)) : Straight(row, amounts);
    }

    private static IEnumerable<(int First, int Second)> Straight(int[] row, long[] amounts)
    {
        int[] givers = [.. row.Where(m => amounts[m] < 0)], takers = [.. row.Where(m => amounts[m] > 0)];
        long given = 0, taken = 0;
        for (int g = 0, t = 0; g < givers.Length && t < takers.Length;)
        {
            yield return (givers[g], takers[t]);
            long leftToGive = -amounts[givers[g]] - given, leftToTake = amounts[takers[t]] - taken;
            long passed = Math.Min(leftToGive, leftToTake);
            (g, given) = passed == leftToGive ? (g + 1, 0) : (g, given + passed);
            (t, taken) = passed == leftToTake ? (t + 1, 0) : (t, taken + passed);
        }
    }
}
