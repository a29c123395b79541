using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

public sealed class FrequencyRangeTests
{
    [Fact]
    public void Both_ends_are_exact_and_neighbours_have_one_ratio()
    {
        IReadOnlyList<double> frequencies = FrequencyRange.Logarithmic(3e4, 7e8, 13);
        Assert.Equal((13, 3e4, 7e8), (frequencies.Count, frequencies[0], frequencies[^1]));
        double ratio = Math.Pow(7e8 / 3e4, 1.0 / 12);
        Assert.All(frequencies.Zip(frequencies.Skip(1)), p => Assert.Equal(ratio, p.Second / p.First, 9));
    }

    [Theory]
    [InlineData(1e5, 1e8, 10, 31)]
    [InlineData(1e5, 1e6, 1, 2)]
    [InlineData(1e5, 2e5, 10, 5)]
    [InlineData(1, 1.0001, 10, 2)]
    [InlineData(0.99999999999, 1, 10, 2)]
    public void As_many_as_a_decade_needs_and_no_fewer(double from, double to, int perDecade, int count) =>
        Assert.Equal(count, FrequencyRange.PerDecade(from, to, perDecade).Count);

    [Theory]
    [InlineData(1e6, 1e6, 2)]
    [InlineData(1e6, 1e5, 2)]
    [InlineData(0, 1e5, 2)]
    [InlineData(1, double.NaN, 2)]
    [InlineData(1, 2, 1)]
    public void What_is_no_range_is_refused(double from, double to, int count) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyRange.Logarithmic(from, to, count));

    [Fact]
    public void Powers_of_ten_are_spread_evenly()
    {
        Assert.Equal([1, 10, 100, 1000], FrequencyRange.Logarithmic(1, 1000, 4), Closeness.Within(1e-12));
        Assert.Equal([2, 2e6], FrequencyRange.Logarithmic(2, 2e6, 2));
        Assert.Equal([10, 100, 1000], FrequencyRange.PerDecade(10, 1000, 1), Closeness.Within(1e-12));
    }

    [Fact]
    public void A_million_frequencies_are_the_most_whatever_the_range()
    {
        // twelve decades have room for 83333 each; less than a decade for a million
        Assert.Throws<ArgumentOutOfRangeException>("pointsPerDecade", () => FrequencyRange.PerDecade(1, 1e12, 83334));
        Assert.Throws<ArgumentOutOfRangeException>("pointsPerDecade", () => FrequencyRange.PerDecade(1, 1.00001, 1_000_001));
        Assert.Throws<ArgumentOutOfRangeException>("pointsPerDecade", () => FrequencyRange.PerDecade(1, 10, 0));
        Assert.Throws<ArgumentOutOfRangeException>("count", () => FrequencyRange.Logarithmic(1, 10, 1_000_001));

        // log10 1.00001 is 4.34e-6: a million of it is 4.34 steps, and five more frequencies than the first
        Assert.Equal(6, FrequencyRange.PerDecade(1, 1.00001, 1_000_000).Count);
    }

    [Fact]
    public void The_end_that_is_out_of_range_is_named()
    {
        Assert.Throws<ArgumentOutOfRangeException>("fromHz", () => FrequencyRange.PerDecade(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>("toHz", () => FrequencyRange.PerDecade(1, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>("toHz", () => FrequencyRange.PerDecade(1, 1));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_highest_frequency_that_is_none_is_told_so_rather_than_that_it_is_below_the_lowest(double toHz) =>
        Assert.StartsWith(
            "Expected a positive value from 1E-60 to 1E+60.",
            Assert.Throws<ArgumentOutOfRangeException>(nameof(toHz), () => FrequencyRange.Logarithmic(1, toHz, 2)).Message,
            StringComparison.Ordinal);
}
