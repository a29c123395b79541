using Fractions;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

public sealed class VoltageSpanTests
{
    [Fact]
    public void Bounds_that_hold_nothing_are_no_bounds()
    {
        Assert.Equal(default, new VoltageSpan(Intervals.Empty<Fraction>(), VoltageBasis.Floating));
        Assert.Equal(default, new VoltageSpan(default, VoltageBasis.Fixed));
    }

    [Fact]
    public void A_hull_rests_on_the_less_certain_of_both()
    {
        VoltageSpan sure = VoltageSpan.Fixed(new Fraction(1, 3)), loose = new(new Interval<Fraction>(-1, new Fraction(1, 4)), VoltageBasis.Surge);
        VoltageSpan both = new(new Interval<Fraction>(-1, new Fraction(1, 3)), VoltageBasis.Surge);
        Assert.Equal(both, sure.Hull(loose));
        Assert.Equal(both, loose.Hull(sure));
        Assert.Equal(default, sure.Hull(default));
        Assert.Equal(default, default(VoltageSpan).Hull(sure));
    }
}
