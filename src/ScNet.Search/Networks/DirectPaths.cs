namespace ScNet.Search.Networks;

/// <summary>Which members of a node hand charge to one another when each amount goes straight from giver to taker.</summary>
/// <remarks>
/// Givers and takers are paired in the order of their potential in the other phase: of all ways to do it this one has
/// the least charge–voltage product (transport along a line, docs/theory/atlas.md).
/// </remarks>
internal static class DirectPaths
{
    /// <summary>Pairs of positions.</summary>
    /// <param name="potentials">Each member's potential in the other phase.</param>
    /// <param name="order">Breaks ties between equal potentials, a number per member.</param>
    /// <param name="amounts">The charge that each member takes, negative where it gives; their sum is zero.</param>
    public static IEnumerable<(int First, int Second)> Of(long[] potentials, int[] order, long[] amounts)
    {
        int[] sorted = [.. Enumerable.Range(0, amounts.Length).OrderBy(m => potentials[m]).ThenBy(m => order[m])];
        int[] givers = [.. sorted.Where(m => amounts[m] < 0)], takers = [.. sorted.Where(m => amounts[m] > 0)];
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
