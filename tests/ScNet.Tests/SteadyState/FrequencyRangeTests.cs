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
}
