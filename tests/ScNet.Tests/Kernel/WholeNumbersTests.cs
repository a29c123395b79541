using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

public class WholeNumbersTests
{
    [Theory]
    [InlineData("2 4", "1 2")]
    [InlineData("1/6 1/4", "2 3")]
    [InlineData("0 -3/2 9/4", "0 -2 3")]
    [InlineData("5", "1")]
    [InlineData("0 0", "0 0")]
    [InlineData("1/1099511627776 1/2199023255552", "2 1")]
    public void A_vector_becomes_the_smallest_whole_numbers_in_proportion(string values, string expected) =>
        Assert.Equal(Parse(expected), WholeNumbers.Of(Parse(values)));

    [Fact]
    public void Numbers_that_do_not_fit_are_refused() =>
        Assert.Throws<OverflowException>(() => WholeNumbers.Of(Parse("1/4294967311 1/4294967357")));

    private static Rational<long>[] Parse(string text) => [.. text.Split(' ').Select(v => v.Split('/').Select(p => long.Parse(p, System.Globalization.CultureInfo.InvariantCulture)).ToArray())
        .Select(p => p.Length == 1 ? Rational<long>.Of(p[0]) : Rational<long>.Of(p[0], p[1]))];
}
