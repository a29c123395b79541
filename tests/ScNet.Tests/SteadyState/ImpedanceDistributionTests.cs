using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Four impedances, whose mean, deviation and quantiles are known.</summary>
public sealed class ImpedanceDistributionTests
{
    private static readonly ImpedanceDistribution s_four = new(2, [3, 1, 4, 2]);

    [Fact]
    public void Mean_and_deviation_are_those_of_a_sample()
    {
        // squares of the distances sum to 5, over one less than the number
        Assert.Equal(2.5, s_four.MeanOhms, 1e-15);
        Assert.Equal(Math.Sqrt(5.0 / 3), s_four.StandardDeviationOhms, 1e-15);
        Assert.Equal(2, s_four.NominalOhms);
    }

    [Fact]
    public void Samples_stay_in_the_order_drawn() => Assert.Equal([3, 1, 4, 2], s_four.SamplesOhms);

    [Fact]
    public void Quantiles_go_from_the_least_to_the_greatest() =>
        Assert.Equal([1, 2.5, 4], new[] { s_four.QuantileOhms(0), s_four.QuantileOhms(0.5), s_four.QuantileOhms(1) });

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1.000001)]
    [InlineData(double.NaN)]
    public void A_fraction_beyond_the_whole_is_refused(double fraction)
    {
        ArgumentOutOfRangeException exception = Assert.Throws<ArgumentOutOfRangeException>(nameof(fraction), () => s_four.QuantileOhms(fraction));
        Assert.Contains("Expected a fraction from 0 to 1.", exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_shown_in_a_line() =>
        Assert.Equal("nominal 2 Ω, mean 2.5 Ω, standard deviation 1.29099 Ω of 4 samples", s_four.ToString());
}
