using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.Tests.Analysis;

/// <summary>Kirchhoff's voltage law at the phase ends for a few flows through two capacitors of one farad, by hand.</summary>
public sealed class VoltageLawTests
{
    // index capacitor · 3 + phase; running sums 1 0 0 | 0 2 0 and 0 1 0 | 1 1 0, so that M = (5 1; 0 2)
    private static readonly SparseVector s_first = Vector(1, -1, 0, 0, 2, -2), s_second = Vector(0, 1, -1, 1, 0, -1);

    // running sums 1 2 0 | 4 -3 0, of which the flows above see -7 and 6: M (2, -3) = (7, -6)
    private static readonly SparseVector s_given = Vector(1, 1, -2, 4, -7, 3);

    [Fact]
    public void Running_sums_are_what_has_entered_each_capacitor_so_far() => AssertEntries(
        VoltageLaw.RunningSums(Vector(2, 0, -2, 1, 1, -2, 0, 3, -3), 3), (0, 2), (1, 2), (3, 1), (4, 2), (7, 3));

    [Fact]
    public void A_product_takes_the_entries_that_both_have()
    {
        Assert.Equal(5 * 3, VoltageLaw.Dot(SparseVector.Of([0, 3, 7], [2, 5, 1]), SparseVector.Of([1, 3, 8], [4, 3, -2])));
        Assert.Equal((5 * 3) - 2, VoltageLaw.Dot(SparseVector.Of([0, 3, 7], [2, 5, 1]), SparseVector.Of([1, 3, 7], [4, 3, -2])));
    }

    [Fact]
    public void Directions_are_added_until_none_sees_a_voltage() =>
        AssertNear([2, -3], VoltageLaw.Amounts([s_first, s_second], s_given, 3));

    [Fact]
    public void A_direction_counts_whatever_its_size() =>
        AssertNear([2e10, -3], VoltageLaw.Amounts([s_first.Weighted(_ => 1e-10), s_second], s_given, 3));

    [Fact]
    public void A_direction_without_charge_takes_no_part() => AssertNear([2, 0, -3], VoltageLaw.Amounts([s_first, default, s_second], s_given, 3));

    // M x = μ (1, 2) with x₁ + 2 x₂ = 1: x = μ (0, 1)
    [Fact]
    public void A_mixture_delivers_one_unit() => AssertNear([0, 0.5], VoltageLaw.Mixture([s_first, s_second], [1, 2], 3));

    // (−2, −3, 1) is all that is left of the third flow where the first two are taken off: 10⁻⁹, whose square is nothing beside 1
    [Fact]
    public void With_two_phases_flows_may_be_alike_but_for_a_billionth() => AssertNear(
        [-2, -3, 1],
        VoltageLaw.Mixture([Vector(1, -1, 0, 0, 0, 0), Vector(0, 0, 1, -1, 0, 0), Vector(2, -2, 3, -3, 1e-9, -1e-9)], [0, 0, 1], 2),
        1e-6);

    // The second direction less the first is what meets the given charges, and M holds it as the last digits of 1 + e².
    [Theory]
    [InlineData(3e-7)]
    [InlineData(5e-7)]
    [InlineData(7e-7)]
    public void What_the_products_have_lost_the_charges_bring_back(double e)
    {
        double[] amounts = VoltageLaw.Amounts([Vector(1, -1, 0, 0, 0, 0), Vector(1, -1, 0, e, 0, -e)], Vector(0, 0, 0, -e, 0, e), 3);
        AssertNear([-1, 1], amounts, 1e-7);
    }

    private static SparseVector Vector(params double[] values) => SparseVector.OfDense(values);

    private static void AssertEntries(SparseVector actual, params (int Index, double Value)[] expected) =>
        Assert.Equal(expected, actual.Indices.ToArray().Zip(actual.Values.ToArray()));

    private static void AssertNear(double[] expected, double[] actual, double tolerance = 1e-12)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, tolerance * Math.Max(1, Math.Abs(p.First))));
    }
}
