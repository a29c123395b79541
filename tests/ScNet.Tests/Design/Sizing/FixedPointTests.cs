using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

/// <summary>The way to a fixed point on straight lines in the logarithms, whose fixed point is known: y = b/(1 − a) of g(y) = a y + b.</summary>
public sealed class FixedPointTests
{
    private static readonly double[] s_slopes = [0.1, 0.2, 0.3, 0.4, 0.5];

    // b = 0.1 everywhere
    private static readonly double[] s_fixed = [.. s_slopes.Select(a => 0.1 / (1 - a))];

    [Fact]
    public void Without_sizes_that_went_in_those_that_came_out_are_next()
    {
        double[] came = [2, 3];
        Assert.Equal(came, new FixedPoint().Next(null, came));
    }

    [Fact]
    public void After_one_round_those_that_came_out_are_next()
    {
        double[] next = new FixedPoint().Next([1, 1], [2, 0.25]);
        Assert.Equal(2, next[0], 1e-15);
        Assert.Equal(0.25, next[1], 1e-15);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1e-5)]
    public void Two_rounds_on_a_line_lead_to_where_it_meets_the_diagonal(double start)
    {
        // g(y) = y/2 from any start: the line meets the diagonal at zero
        FixedPoint sizes = new();
        sizes.Next([Math.Exp(start)], [Math.Exp(start / 2)]);
        double next = sizes.Next([Math.Exp(start / 2)], [Math.Exp(start / 4)])[0];
        Assert.InRange(Math.Log(next), -1e-6 * start, 1e-6 * start);
    }

    [Fact]
    public void No_size_goes_beyond_what_came_out_by_more_than_a_factor_of_e()
    {
        // g(y) = 0.9 y leads from 8.1 to 0, g(z) = 0.9 z from 0.81 to 0 just as far beyond: both are shortened alike, by 1/8.1
        FixedPoint sizes = new();
        sizes.Next([Math.Exp(10), Math.Exp(1)], [Math.Exp(9), Math.Exp(0.9)]);
        double[] next = sizes.Next([Math.Exp(9), Math.Exp(0.9)], [Math.Exp(8.1), Math.Exp(0.81)]);
        Assert.Equal(8.1 - 1, Math.Log(next[0]), 1e-9);
        Assert.Equal(0.81 - 0.1, Math.Log(next[1]), 1e-9);
    }

    [Fact]
    public void Six_rounds_settle_five_sizes()
    {
        FixedPoint sizes = new();
        Assert.All(Rounds(sizes).Zip(s_fixed), pair => Assert.Equal(pair.Second, Math.Log(pair.First), 1e-8));
    }

    [Fact]
    public void What_is_older_than_six_rounds_is_forgotten()
    {
        // a first round off the lines
        FixedPoint sizes = new();
        sizes.Next([1.2, 0.9, 1.1, 1, 0.8], [0.8, 1.3, 1, 1.2, 1.1]);
        Assert.All(Rounds(sizes).Zip(s_fixed), pair => Assert.Equal(pair.Second, Math.Log(pair.First), 1e-8));
    }

    // from zero, and from a tenth along each axis: five changes that are independent
    private static double[] Rounds(FixedPoint sizes)
    {
        double[] next = [];
        for (int k = -1; k < s_slopes.Length; k++)
        {
            double[] went = [.. s_slopes.Select((_, e) => e == k ? 0.1 : 0)];
            next = sizes.Next([.. went.Select(y => Math.Exp(y))], [.. went.Zip(s_slopes, (y, a) => Math.Exp((a * y) + 0.1))]);
        }

        return next;
    }
}
