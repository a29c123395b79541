using System.Globalization;
using System.Numerics;
using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Tests.Completeness;

/// <summary>
/// The ratios of all two-phase networks. Source of the bound: M. S. Makowski and D. Maksimovic, "Performance limits of
/// switched-capacitor DC-DC converters", PESC 1995, of which the abstract was read and the rest is from memory: with k
/// capacitors, the output's counted, the attainable ratios are p/q with both terms at most the k-th Fibonacci number 1,
/// 2, 3, 5, 8, and 3k - 2 switches are enough.
/// </summary>
public class RatioTests
{
    [Theory]
    [InlineData(1, 2, "-1 1/2 1 2")]
    [InlineData(2, 3, "-2 -1 -1/2 1/3 1/2 2/3 1 3/2 2 3")]
    [InlineData(3, 5, "-4 -3 -2 -3/2 -1 -2/3 -1/2 -1/3 -1/4 1/5 1/4 1/3 2/5 1/2 3/5 2/3 3/4 4/5 1 5/4 4/3 3/2 5/3 2 5/2 3 4 5")]
    public void Networks_of_up_to_so_many_capacitors_reach_every_positive_fraction_of_the_bound_and_no_other(int capacitors, int bound, string ratios)
    {
        SortedSet<Fraction> reached = [.. Enumerable.Range(1, capacitors).SelectMany(RatiosOfNetworks)];

        Assert.Equal(ratios.Split(' ').Select(r => Fraction.FromString(r, CultureInfo.InvariantCulture)), reached);
        IEnumerable<Fraction> fractions =
            from p in Enumerable.Range(1, bound)
            from q in Enumerable.Range(1, bound)
            select new Fraction(p, q).Reduce();
        Assert.Equal(fractions.Distinct().Order(), reached.Where(r => r > 0));

        // the reference changes places with the input, or the input with the output
        Assert.All(reached, r => Assert.Contains(r == 1 ? r : 1 - r, reached));
        Assert.All(reached, r => Assert.Contains(1 / r, reached));
    }

    // what is left out of the atlas makes no ratio of its own: loops too many, or voltages that nothing fixes
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Dependent_loops_and_open_voltages_give_no_further_ratio(int capacitors)
    {
        SpaceList list = SpaceList.Of(capacitors);
        int[] leaders = list.OrbitLeaders();
        SortedSet<Fraction> all = [];
        for (int first = 0; first < leaders.Length; first++)
        {
            for (int second = 0; second < leaders.Length && leaders[first] == first; second++)
            {
                if (RatioOf(list.Spaces[first], list.Spaces[second]) is { } ratio)
                {
                    all.Add(ratio);
                }
            }
        }

        Assert.Equal([.. Enumerable.Range(1, capacitors).SelectMany(RatiosOfNetworks).Distinct().Order()], all);
    }

    // the largest minor of rows that are totally unimodular in two parts is at most the number of ways to share columns
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Terms_of_ratios_are_within_the_bound_by_minors(int capacitors)
    {
        SpaceList list = SpaceList.Of(capacitors);
        foreach ((int first, _, Networks.NetworkSolution solution) in SpacePairs.Of(capacitors))
        {
            long ways = 1, loops = list.Spaces[first].Dimension;
            for (int i = 1; i <= loops; i++)
            {
                ways = ways * (capacitors + 2 - i) / i;
            }

            Assert.All(solution.Voltages, v => Assert.InRange(Math.Abs(v), 1, ways));
        }
    }

    internal static IEnumerable<Fraction> RatiosOfNetworks(int capacitors) => SpacePairs.Of(capacitors)
        .Select(pair => new Fraction(pair.Solution.Voltages[LoopSpace.OutputColumn], pair.Solution.Voltages[LoopSpace.InputColumn]).Reduce());

    // whatever the loops are: they fix the output where a combination of them holds input and output alone
    private static Fraction? RatioOf(LoopSpace first, LoopSpace second)
    {
        int width = first.BranchCount;
        List<BigInteger[]> rows = [];
        foreach (LoopSpace space in new[] { first, second })
        {
            for (int row = 0; row < space.Dimension; row++)
            {
                BigInteger[] turned = new BigInteger[width];
                for (int c = 0; c < width; c++)
                {
                    turned[(c + width - LoopSpace.FirstCapacitorColumn) % width] = space.Row(row)[c];
                }

                rows.Add(turned);
            }
        }

        BigInteger[][] ports = [.. ExactRank.Echelon(rows, width).Where(row => row.AsSpan(0, width - 2).IndexOfAnyExcept(BigInteger.Zero) < 0)];
        return ports.Length == 1 && !ports[0][^1].IsZero && !ports[0][^2].IsZero ? new Fraction(-ports[0][^2], ports[0][^1]).Reduce() : null;
    }
}
