using CsCheck;
using Fractions;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

[Trait("Kind", "Law")]
public sealed class OrderSearchTests
{
    [Fact]
    public void The_order_is_as_good_as_the_best_of_all_permutations() => Gen.Select(Gen.Int[1, 6], Gen.Int[0, 9].Array[36], Gen.Bool).Holds(
        (n, entries, isCycle) =>
        {
            var costs = new Fraction?[n, n];
            for (int k = 0; k < n * n; k++)
            {
                costs[k / n, k % n] = entries[k] == 9 ? null : new Fraction(entries[k]);
            }

            isCycle &= n > 1;
            int[] found = OrderSearch.Of(costs, isCycle);
            Assert.Equal(Enumerable.Range(0, n), found.Order());
            Assert.Equal(Permutations(n).Select(p => Value(p, costs, isCycle)).Min(), Value(found, costs, isCycle));
        },
        count: 500);

    // the largest first, then the sum; an unknown cost is worse than any other and adds nothing
    private static (int Largest, int Sum) Value(int[] order, Fraction?[,] costs, bool isCycle)
    {
        int n = order.Length;
        Fraction?[] steps = [.. Enumerable.Range(0, isCycle ? n : n - 1).Select(k => costs[order[k], order[(k + 1) % n]])];
        return (steps.Select(s => s is { } known ? (int)known.ToInt32() : 9).DefaultIfEmpty(0).Max(), steps.Sum(s => s is { } known ? (int)known.ToInt32() : 0));
    }

    private static IEnumerable<int[]> Permutations(int n) => n == 0
        ? [[]]
        : Permutations(n - 1).SelectMany(rest => Enumerable.Range(0, n).Select(at => (int[])[.. rest[..at], n - 1, .. rest[at..]]));
}
