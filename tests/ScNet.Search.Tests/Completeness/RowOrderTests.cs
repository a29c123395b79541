using CsCheck;
using ScNet.Search.Networks;

namespace ScNet.Search.Tests.Completeness;

/// <summary>
/// The switches of a node of a phase against all trees over its members, which are n^(n-2) by Cayley's formula: joining
/// neighbours in the order of the other phase's potential is transport along a line.
/// </summary>
[Trait("Kind", "Law")]
public class RowOrderTests
{
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void No_tree_of_switches_does_better_than_the_row_or_than_direct_paths(int members)
    {
        (from potentials in Gen.Int[-4, 4].Array[members]
         from amounts in Gen.Int[-3, 3].Array[members - 1]
         select (potentials, amounts)).Holds(
            drawn => Judge([.. drawn.potentials.Select(p => (long)p)], [.. drawn.amounts.Select(a => (long)a), -drawn.amounts.Sum()]),
            count: 150);
    }

    [Fact]
    public void A_star_is_seen_to_be_worse()
    {
        long[] potentials = [0, 1, 2], amounts = [1, -1, 0];
        (int First, int Second)[] star = [(2, 0), (2, 1)];
        Assert.Equal(3, Figures(star, potentials, amounts).Product);
        Assert.Equal(1, Figures(Switches(potentials, amounts, SwitchLayout.LowestBlocking), potentials, amounts).Product);
    }

    private static void Judge(long[] potentials, long[] amounts)
    {
        (long product, _, long[] lengths) = Figures(Switches(potentials, amounts, SwitchLayout.LowestBlocking), potentials, amounts);
        (long sameProduct, long charge, _) = Figures(Switches(potentials, amounts, SwitchLayout.LeastCharge), potentials, amounts);
        Assert.Equal(product, sameProduct);
        Assert.Equal(amounts.Sum(Math.Abs) / 2, charge);
        foreach ((int First, int Second)[] tree in Trees(potentials.Length))
        {
            (long Product, long Charge, long[] Lengths) other = Figures(tree, potentials, amounts);
            Assert.True(other.Product >= product);
            Assert.True(other.Charge >= charge);
            Assert.All(other.Lengths.Zip(lengths), pair => Assert.True(pair.First >= pair.Second));
        }
    }

    // the node is the first phase's; in the second its terminals are all apart
    private static (int First, int Second)[] Switches(long[] potentials, long[] amounts, SwitchLayout layout)
    {
        int count = potentials.Length | 1;
        int[] joined = [.. Enumerable.Range(0, count).Select(t => t < potentials.Length ? 0 : 1)];
        long[] inOther = [.. potentials, .. new long[count - potentials.Length]], taken = [.. amounts, .. new long[count - amounts.Length]];
        Wiring[] phases = [Wiring.Of(joined), Wiring.Of([.. Enumerable.Range(0, count)])];
        List<PlannedSwitch> switches = SwitchPlan.Of(phases, [new long[count], inOther], [taken, new long[count]], layout);
        (int First, int Second)[] tree = [.. switches.Select(s => (s.First, s.Second))];
        Assert.Equal(potentials.Length - 1, tree.Length);
        Assert.All(switches, s => Assert.Equal(Math.Abs(ChargeThrough(tree, (s.First, s.Second), amounts)), Math.Abs(s.Charges[0])));
        return tree;
    }

    private static (long Product, long Charge, long[] Lengths) Figures((int First, int Second)[] tree, long[] potentials, long[] amounts)
    {
        long[] lengths = [.. tree.Select(b => Math.Abs(potentials[b.First] - potentials[b.Second]))];
        long[] charges = [.. tree.Select(b => Math.Abs(ChargeThrough(tree, b, amounts)))];
        return (lengths.Zip(charges, (length, charge) => length * charge).Sum(), charges.Sum(), [.. lengths.Order()]);
    }

    private static long ChargeThrough((int First, int Second)[] tree, (int First, int Second) cut, long[] amounts)
    {
        HashSet<int> behind = [cut.Second];
        for (int round = 0; round < tree.Length; round++)
        {
            foreach ((int first, int second) in tree.Where(b => b != cut && (behind.Contains(b.First) || behind.Contains(b.Second))))
            {
                behind.Add(first);
                behind.Add(second);
            }
        }

        return behind.Sum(m => amounts[m]);
    }

    // by Prüfer's codes
    private static IEnumerable<(int First, int Second)[]> Trees(int members)
    {
        int codes = Enumerable.Repeat(members, members - 2).Aggregate(1, (product, n) => product * n);
        for (int code = 0; code < codes; code++)
        {
            List<int> sequence = [];
            for (int rest = code; sequence.Count < members - 2; rest /= members)
            {
                sequence.Add(rest % members);
            }

            HashSet<int> left = [.. Enumerable.Range(0, members)];
            List<(int, int)> tree = [];
            while (sequence.Count > 0)
            {
                int leaf = left.Where(m => !sequence.Contains(m)).Min();
                tree.Add((leaf, sequence[0]));
                left.Remove(leaf);
                sequence.RemoveAt(0);
            }

            tree.Add((left.Min(), left.Max()));
            yield return [.. tree];
        }
    }
}
