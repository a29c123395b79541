using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What estimates make of limits of 3 Ω and 4 Ω.</summary>
public sealed class ImpedancePointTests
{
    [Fact]
    public void The_root_of_the_sum_of_squares_is_a_right_triangles_longest_side()
    {
        ImpedancePoint point = Of(3, 4);
        Assert.Equal(5, point.RootSumSquareOhms, 1e-15);
        Assert.Equal(0.25, point.RootSumSquareError, 1e-15);
    }

    [Theory]
    [InlineData(3, 4)]
    [InlineData(4, 3)]
    [InlineData(1e-200, 4)]
    [InlineData(0, 4)]
    public void The_later_exponent_joins_the_limits_whichever_is_the_larger(double slow, double fast)
    {
        double expected = Math.Pow(Math.Pow(slow, 2.54) + Math.Pow(fast, 2.54), 1 / 2.54);
        Assert.Equal(expected, Of(slow, fast).Norm254Ohms, 1e-14 * expected);
        Assert.Equal((expected / 4) - 1, Of(slow, fast).Norm254Error, 1e-14);
    }

    [Fact]
    public void A_single_pair_is_a_hyperbolic_cotangent_of_the_limits()
    {
        // coth x = (1 + e^(-2x)) / (1 - e^(-2x)) at x = 3/4
        double expected = 3 * (1 + Math.Exp(-1.5)) / (1 - Math.Exp(-1.5));
        Assert.Equal(expected, Of(3, 4).SinglePairOhms, 1e-14 * expected);
        Assert.Equal((expected / 4) - 1, Of(3, 4).SinglePairError, 1e-14);
    }

    [Fact]
    public void Without_a_slow_limit_a_single_pair_is_the_fast_one() => Assert.Equal(4, Of(0, 4).SinglePairOhms);

    [Fact]
    public void All_figures_are_shown_in_a_line()
    {
        ImpedancePoint point = Of(3, 4);
        Assert.Equal("4 Ω at 1E+06 Hz: SSL 3 Ω, FSL 4 Ω", point.ToString());
        Assert.Equal((1e6, 4, 3, 4), (point.FrequencyHz, point.Ohms, point.SlowOhms, point.FastOhms));
    }

    // the exact impedance is 4 Ω
    private static ImpedancePoint Of(double slow, double fast) =>
        new(new TwoPortPoint(1e6, new PortRatios(0.5, 0.5, 0), 4, 0, () => throw new InvalidOperationException()), slow, fast);
}
