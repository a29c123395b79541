using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Sums of voltages over the paths of edges that are given: no switch of the network has a part in them.</summary>
public sealed class PathRangeTests
{
    // the largest voltage alone and the smallest alone are paths; the rest lie between
    [Fact]
    public void Of_many_parallel_edges_the_smallest_and_the_largest_count()
    {
        (RigidPieces pieces, int[] nodes) = Nodes(2);
        PathRange range = new(pieces, [.. Enumerable.Range(-3, 21).Select(k => Edge(nodes[0], nodes[1], new Fraction(k, 3)))]);
        Assert.Equal(new Interval<Fraction>(-1, new Fraction(17, 3)), range.Of(nodes[0], nodes[1]));
        Assert.Equal(new Interval<Fraction>(new Fraction(-17, 3), 1), range.Of(nodes[1], nodes[0]));
        Assert.True(range.IsExact);
    }

    // a square of 1, 2, 4 and 8 with a diagonal of 16 from corner 0 to 2: the paths from 0 to 1 are 1; 16 - 2; -8 - 4 - 2
    [Fact]
    public void Every_simple_path_counts()
    {
        (RigidPieces pieces, int[] n) = Nodes(4);
        PathRange range = new(pieces, [Edge(n[0], n[1], 1), Edge(n[1], n[2], 2), Edge(n[2], n[3], 4), Edge(n[3], n[0], 8), Edge(n[0], n[2], 16)]);
        Assert.Equal(new Interval<Fraction>(-14, 14), range.Of(n[0], n[1]));

        // from 0 to 3: -8; 1 + 2 + 4; 16 + 4
        Assert.Equal(new Interval<Fraction>(-8, 20), range.Of(n[0], n[3]));
        Assert.True(range.IsExact);
    }

    // 2⁶³ - 1 is the largest whole number of a machine word; of several voltages neither their common denominator nor
    // the sum of their numerators over it may be more
    [Fact]
    public void Sums_that_fit_into_a_machine_word_are_exact_and_no_others()
    {
        Fraction word = new(long.MaxValue);
        BigInteger half = BigInteger.One << 62;
        Check(true, word);
        Check(true, Fraction.One / word);
        Check(true, new Fraction(1, BigInteger.One << 40), new Fraction(-1, BigInteger.One << 40));
        Check(false, word + 1);
        Check(false, new Fraction(1, BigInteger.One << 64));
        Check(false, new Fraction(half), new Fraction(half));
        Check(false, new Fraction(half + 1, 3), new Fraction(half + 1, 3));

        static void Check(bool isExact, params Fraction[] voltages)
        {
            (RigidPieces pieces, int[] nodes) = Nodes(voltages.Length + 1);
            PathRange range = new(pieces, [.. voltages.Select((v, k) => Edge(nodes[k], nodes[k + 1], v))]);
            Assert.Equal(isExact, range.IsExact);
            Fraction sum = voltages.Aggregate(Fraction.Zero, (s, v) => s + v);
            Assert.Equal(isExact ? new Interval<Fraction>(sum, sum) : null, range.Of(nodes[0], nodes[^1]));
            Assert.Equal(isExact, range.IsExact);
        }
    }

    [Theory]
    [InlineData(500, true)]
    [InlineData(501, false)]
    public void A_path_of_more_than_five_hundred_edges_is_given_up(int count, bool isExact)
    {
        (RigidPieces pieces, int[] nodes) = Nodes(count + 1);
        PathRange range = new(pieces, [.. Enumerable.Range(0, count).Select(k => Edge(nodes[k], nodes[k + 1], Fraction.One))]);
        Assert.Equal(isExact ? new Interval<Fraction>(count, count) : null, range.Of(nodes[0], nodes[^1]));
        Assert.Equal(isExact, range.IsExact);
    }

    private static ResistiveEdge Edge(int first, int second, Fraction voltage) => new(first, second, voltage, 0, IsSwitch: false);

    // a halver with a number of nodes that nothing ties to each other
    private static (RigidPieces Pieces, int[] Nodes) Nodes(int count)
    {
        ConverterBuilder builder = RatedNetworks.Half();
        for (int k = 0; k < count; k++)
        {
            builder.Switch($"t{k}", "vin", $"x{k}");
        }

        Converter converter = builder.Build();
        return (RigidPieces.Of(converter, HeldVoltages.Of(ModeAnalysis.Of(converter))), [.. Enumerable.Range(0, count).Select(k => converter.Nodes.PositionOf($"x{k}"))]);
    }
}
