using ScNet.Cli.Commands;

namespace ScNet.Cli.Tests.Commands;

public sealed class FrequencyListTests
{
    private const string Expected =
        "Expected positive numbers of hertz (Hz) or ranges after --f, such as 1e6,1e7 or 1e5..1e8 or 1e5..1e8:31 (from 1e-60 to 1e60), but got '{0}'.";

    private const string Rising = "Expected the ranges after --f to rise, such as 1e5..1e8, but got '{0}'.";

    private const string Points =
        "Expected a whole number of points from 2 to 100000 after the colon of a range after --f, such as 1e5..1e8:31, but got '{0}'.";

    [Theory]
    [InlineData("1e6", new[] { 1e6 })]
    [InlineData("3,1e6,2.5", new[] { 3, 1e6, 2.5 })]
    [InlineData("1e2..1e4:3", new[] { 1e2, 1e3, 1e4 })]
    [InlineData("7..700:2", new double[] { 7, 700 })]
    [InlineData("1,1e5..1e8:4,2", new[] { 1, 1e5, 1e6, 1e7, 1e8, 2 })]
    public void Numbers_and_ranges_are_taken_in_their_order(string text, double[] expected) => Assert.Equal(expected, Parse(text));

    [Fact]
    public void A_range_has_ten_points_per_decade_and_both_ends_where_nothing_else_is_said()
    {
        double[] three = Parse("1e5..1e8");
        Assert.Equal(31, three.Length);
        Assert.Equal([1e5, 1e6, 1e7, 1e8], new[] { 0, 10, 20, 30 }.Select(i => three[i]));
        Assert.All(three.Zip(three.Skip(1)), p => Assert.Equal(Math.Pow(10, 0.1), p.Second / p.First, 1e-9));
        double[] odd = Parse("3e5..4.5e6");
        Assert.Equal((3e5, 4.5e6, 13), (odd[0], odd[^1], odd.Length));
        Assert.Equal([1e-60, 1e60], [Parse("1e-60..1e60")[0], Parse("1e-60..1e60")[^1]]);
        Assert.Equal([2, 2.000001], Parse("2..2.000001"));
        Assert.Equal([0.99999999999, 1], Parse("0.99999999999..1"));
        Assert.Equal(100_000, Parse("1..2:100000").Length);
    }

    [Theory]
    [InlineData("", "", Expected)]
    [InlineData("1e6,", "", Expected)]
    [InlineData("1e6;1e7", "1e6;1e7", Expected)]
    [InlineData("1e6....1e7", "1e6....1e7", Expected)]
    [InlineData("1e6..", "1e6..", Expected)]
    [InlineData("..1e6", "..1e6", Expected)]
    [InlineData("..", "..", Expected)]
    [InlineData(":..", ":..", Expected)]
    [InlineData("1:5..10", "1:5..10", Expected)]
    [InlineData("0..1e6", "0..1e6", Expected)]
    [InlineData("1..2..3", "1..2..3", Expected)]
    [InlineData("1..NaN", "1..NaN", Expected)]
    [InlineData("1..1e61", "1..1e61", Expected)]
    [InlineData("5:3", "5:3", Expected)]
    [InlineData("3,1e7..1e6", "1e7..1e6", Rising)]
    [InlineData("1e6..1e6", "1e6..1e6", Rising)]
    [InlineData("1..2:1", "1..2:1", Points)]
    [InlineData("1..2:", "1..2:", Points)]
    [InlineData("1..2:-5", "1..2:-5", Points)]
    [InlineData("1..2:2.5", "1..2:2.5", Points)]
    [InlineData("1..2:100001", "1..2:100001", Points)]
    [InlineData("1..2:99999999999", "1..2:99999999999", Points)]
    [InlineData("1..2:3:4", "1..2:3:4", Points)]
    public void What_is_wrong_is_said_with_the_option_and_what_is_expected(string text, string part, string message)
    {
        using CultureScope scope = new("de-DE");
        List<string> errors = [];
        FrequencyList.Parse(text, "--f", errors.Add);
        Assert.Contains(message.Replace("{0}", part, StringComparison.Ordinal), errors);
    }

    [Fact]
    public void Several_mistakes_are_told_together()
    {
        List<string> errors = [];
        FrequencyList.Parse("x,1e6,2..1,1..2:0", "--f", errors.Add);
        Assert.Equal(3, errors.Count);
    }

    [Fact]
    public void A_list_has_a_largest_size_in_all()
    {
        List<string> errors = [];
        FrequencyList.Parse("1..2:100000,3", "--f", errors.Add);
        Assert.Equal(["Expected at most 100000 frequencies in all after --f, but there are more. Ask for fewer points."], errors);
        errors.Clear();
        long allocated = GC.GetAllocatedBytesForCurrentThread();
        FrequencyList.Parse(string.Join(',', Enumerable.Repeat("1..2:100000", 1000)), "--f", errors.Add);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - allocated, 0, 20_000_000);
        Assert.Single(errors);
    }

    private static double[] Parse(string text) => FrequencyList.Parse(text, "--f", message => Assert.Fail(message));
}
