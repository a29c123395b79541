using Fractions;

namespace ScNet.Stress;

/// <summary>The path or cycle through all points with the least bottleneck, then the least sum, by subsets.</summary>
internal static class OrderSearch
{
    /// <summary>Finds the order of all points.</summary>
    /// <param name="costs">The cost from one point to another; null is worse than any other.</param>
    /// <param name="isCycle">Whether the last point leads back to the first.</param>
    public static int[] Of(Fraction?[,] costs, bool isCycle)
    {
        int n = costs.GetLength(0);
        Fraction[] levels = [.. costs.Cast<Fraction?>().OfType<Fraction>().Distinct().Order()];
        var rank = new int[n, n];
        var cost = new double[n, n];
        for (int a = 0; a < n; a++)
        {
            for (int b = 0; b < n; b++)
            {
                rank[a, b] = costs[a, b] is { } known ? Array.BinarySearch(levels, known) : levels.Length;
                cost[a, b] = costs[a, b]?.ToDouble() ?? 0;
            }
        }

        double bottleneck = Best(n, isCycle, (a, b) => rank[a, b], Math.Max).Value;
        return Best(n, isCycle, (a, b) => rank[a, b] <= bottleneck ? cost[a, b] : double.PositiveInfinity, (sum, next) => sum + next).Order;
    }

    // best[set, last]: the least value of an order of the set that ends with last; a cycle begins with point 0
    private static (double Value, int[] Order) Best(int n, bool isCycle, Func<int, int, double> cost, Func<double, double, double> join)
    {
        int sets = 1 << n;
        var best = new double[sets, n];
        var before = new int[sets, n];
        for (int set = 1; set < sets; set++)
        {
            for (int last = 0; last < n; last++)
            {
                int rest = set & ~(1 << last);
                best[set, last] = rest == 0 && (!isCycle || last == 0) ? 0 : double.PositiveInfinity;
                before[set, last] = -1;
                if ((set >> last & 1) == 0)
                {
                    best[set, last] = double.PositiveInfinity;
                    continue;
                }

                for (int previous = 0; previous < n; previous++)
                {
                    if ((rest >> previous & 1) == 1 && join(best[rest, previous], cost(previous, last)) is var value && value < best[set, last])
                    {
                        best[set, last] = value;
                        before[set, last] = previous;
                    }
                }
            }
        }

        int all = sets - 1;
        int end = Enumerable.Range(0, n).MinBy(last => isCycle ? join(best[all, last], cost(last, 0)) : best[all, last]);
        double result = isCycle ? join(best[all, end], cost(end, 0)) : best[all, end];
        List<int> order = [];
        for (int set = all, at = end; at >= 0;)
        {
            order.Add(at);
            (set, at) = (set & ~(1 << at), before[set, at]);
        }

        order.Reverse();
        return (result, [.. order]);
    }
}
