using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.Tests.Analysis;

/// <summary>Mixtures of inductor currents that see no voltage on average, by hand for capacitors of one farad.</summary>
public sealed class SlowCurrentsTests
{
    // three phases: sums 1 0 0 | 0 2 0 and 0 1 0 | 1 1 0 less half the steady parts give the law (4 -2; 1/2 1/2)
    private static readonly SparseVector s_first = Vector(1, -1, 0, 0, 2, -2), s_second = Vector(0, 1, -1, 1, 0, -1);
    private static readonly SparseVector s_firstSteady = Vector(1, -1), s_secondSteady = Vector(0, 0, 0, 1, 1, -2);

    // sums 1/2 1/2 0 | -1 -6 0 and half of 2 -2: the mixtures see -14 and 1/2, as the law times (2, -3) sees 14 and -1/2
    private static readonly (SparseVector Charges, SparseVector Steady) s_flow = (Vector(0.5, 0, -0.5, -1, -5, 6), Vector(2, -2));

    [Fact]
    public void On_average_a_voltage_is_that_of_the_end_less_half_of_its_straight_line() =>
        AssertNear([2, -3], SlowCurrents.Amounts([s_first, s_second], [s_firstSteady, s_secondSteady], [Vector(1), Vector(2)], s_flow, 3));

    [Fact]
    public void A_mixture_counts_whatever_its_size() => AssertNear(
        [2e8, -3],
        SlowCurrents.Amounts(
            [s_first.Weighted(_ => 1e-8), s_second], [s_firstSteady.Weighted(_ => 1e-8), s_secondSteady], [Vector(1), Vector(2)], s_flow, 3));

    // The first is -3 by voltages. The second moves no capacitor: it meets the drops -3, -15 by 1, 3 times 48/10 at the least square
    // sum. The third dissipates nothing either and stays.
    [Theory]
    [InlineData(1)]
    [InlineData(1e-7)]
    public void What_voltages_do_not_see_is_of_least_loss(double size) => AssertNear(
        [-3, 4.8, 0],
        SlowCurrents.Amounts(
            [Vector(1, -1), default, default],
            [default, default, default],
            [Vector(size, 5 * size), Vector(size, 3 * size), default],
            (Vector(3, -3), default),
            2));

    [Fact]
    public void What_neither_sees_stays() =>
        AssertNear([-3, 0], SlowCurrents.Amounts([Vector(1, -1), default], [default, default], [Vector(1), default], (Vector(3, -3), default), 2));

    // all but 2⁻³² of the second charge is steady: no less a voltage for that, and the flow shows three times as much
    [Fact]
    public void A_mixture_that_is_nearly_soft_is_still_decided_by_voltages()
    {
        double steady = 1 - Math.Pow(2, -32), seen = 3 * Math.Pow(2, -32);
        AssertNear([-3], SlowCurrents.Amounts([Vector(1, -1)], [Vector(steady, -steady)], [Vector(1)], (Vector(seen, -seen), default), 2));
    }

    // 2⁻⁴⁵ of the second charge beside all of the first is rounding: losses put it at none
    [Fact]
    public void A_mixture_that_is_soft_but_for_rounding_is_left_to_losses()
    {
        double steady = 1 - Math.Pow(2, -45);
        AssertNear(
            [-3, 0],
            SlowCurrents.Amounts(
                [Vector(1, -1), Vector(0, 0, 1, -1)], [default, Vector(0, 0, steady, -steady)], [Vector(1), Vector(0, 1)], (Vector(3, -3, 1, -1), default), 2));
    }

    private static SparseVector Vector(params double[] values) => SparseVector.OfDense(values);

    private static void AssertNear(double[] expected, double[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected.Zip(actual), p => Assert.Equal(p.First, p.Second, 1e-12 * Math.Max(1, Math.Abs(p.First))));
    }
}
