using System.Globalization;
using Fractions;

namespace ScNet.Tests;

public sealed class IntervalTests
{
    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    public void An_interval_reads_the_same_in_every_culture(string culture)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal("1.75 to 1.79", new Interval<double>(1.75, 1.79).ToString());
            Assert.Equal("-0.5 V to 0 V", new Interval<double>(-0.5, 0).ToString("V"));
            Assert.Equal("1/3", new Interval<Fraction>(new Fraction(1, 3), new Fraction(2, 6)).ToString());
            Assert.Equal("?", default(Interval<double>).ToString("V"));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_hull_holds_both_and_is_undetermined_with_an_undetermined_one()
    {
        Interval<double> hull = new Interval<double>(-1, 2).Hull(new Interval<double>(0, 3));
        Assert.Equal(new Interval<double>(-1, 3), hull);
        Assert.True(hull.Contains(3) && !hull.Contains(3.1));
        Assert.False(hull.Hull(default).IsDetermined);
        Assert.False(default(Interval<double>).Hull(hull).IsDetermined);
        Assert.Equal(hull, Intervals.Empty<double>().Hull(hull));
        Assert.False(default(Interval<double>).Contains(0));
    }

    [Fact]
    public void Ends_that_are_no_numbers_out_of_order_or_missing_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Interval<double>(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Interval<double>(double.NaN, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Interval<double>(0, double.PositiveInfinity));
        Assert.Null(default(Interval<double>).Minimum);
        Assert.Null(default(Interval<double>).Maximum);
        Assert.Equal((1, 2), (new Interval<double>(1, 2).Minimum, new Interval<double>(1, 2).Maximum));
    }

    [Fact]
    public void Sums_and_differences_of_intervals_hold_those_of_their_ends()
    {
        Interval<Fraction> a = new(1, 2), b = new(-1, 3);
        Assert.Equal(new Interval<Fraction>(0, 5), a.Plus(b));
        Assert.Equal(new Interval<Fraction>(-2, 3), a.Minus(b));
        Assert.Equal(new Interval<Fraction>(0, 1), a.Minus(Fraction.One));
        Assert.False(a.Plus(default(Interval<Fraction>)).IsDetermined);
        Assert.True(a.Minus(Intervals.Empty<Fraction>()).IsEmpty);
    }
}
