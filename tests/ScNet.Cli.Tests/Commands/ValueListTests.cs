using ScNet.Cli.Commands;

namespace ScNet.Cli.Tests.Commands;

public sealed class ValueListTests
{
    [Theory]
    [InlineData("1", "1")]
    [InlineData("-2.5,0,1e-3", "-5/2 0 1/1000")]
    [InlineData("1..2:5", "1 5/4 3/2 7/4 2")]
    [InlineData("-1..1:3", "-1 0 1")]
    public void Numbers_and_ranges_are_taken_exactly_in_their_order(string text, string expected) =>
        Assert.Equal(expected, string.Join(' ', ValueList.Parse(text, "numbers", _ => true, message => Assert.Fail(message))));

    // a sign and a blank or two signs before a number, and what follows its end, are no number
    [Theory]
    [InlineData("--1")]
    [InlineData("- 1")]
    [InlineData("-\r.42")]
    [InlineData("1\0")]
    [InlineData("1\0..2")]
    [InlineData("1e61")]
    [InlineData("1e-61")]
    [InlineData("1/3")]
    [InlineData("2..1")]
    [InlineData("1..2:1")]
    [InlineData("NaN")]
    [InlineData("")]
    public void What_is_no_value_is_told(string text)
    {
        List<string> errors = [];
        ValueList.Parse(text, "numbers", _ => true, errors.Add);
        Assert.Contains($"but got '{text}'.", Assert.Single(errors), StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_has_a_largest_size_in_all()
    {
        Assert.Equal(10_000, ValueList.Parse("1..2:10000", "numbers", _ => true, message => Assert.Fail(message)).Length);
        List<string> errors = [];
        ValueList.Parse("1..2:10000,3", "numbers", _ => true, errors.Add);
        Assert.Equal(["Expected numbers, at most 10000 in all, but there are more. Ask for fewer points."], errors);
    }
}
