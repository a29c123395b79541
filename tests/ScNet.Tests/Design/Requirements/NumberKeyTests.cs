using ScNet.Design.Requirements.Toml;

namespace ScNet.Tests.Design.Requirements;

public sealed class NumberKeyTests
{
    [Fact]
    public void A_key_keeps_the_bounds_that_it_is_given()
    {
        Assert.Equal(NumberBounds.Share, NumberKey.Required("share", string.Empty, NumberBounds.Share).Bounds);
        Assert.Equal(NumberBounds.Share, NumberKey.Or(1, "efficiency", string.Empty, NumberBounds.Share).Bounds);
        Assert.Equal(NumberBounds.ZeroOrMore, NumberKey.OrZero("ohms", "ohms").Bounds);
    }

    [Fact]
    public void Without_bounds_of_its_own_a_key_is_positive()
    {
        Assert.Equal(NumberBounds.Positive, NumberKey.Required("volts", "volts").Bounds);
        Assert.Equal(NumberBounds.Positive, NumberKey.Or(1, "factor", string.Empty).Bounds);
        Assert.Equal(NumberBounds.Positive, NumberKey.Optional("farads", "farads").Bounds);
    }

    [Fact]
    public void A_key_must_be_there_or_has_a_value_without_or_neither()
    {
        Assert.Equal((true, null), Of(NumberKey.Required("volts", "volts")));
        Assert.Equal((false, 0.0), Of(NumberKey.OrZero("ohms", "ohms")));
        Assert.Equal((false, 0.7), Of(NumberKey.Or(0.7, "diode_volts", "volts")));
        Assert.Equal((false, null), Of(NumberKey.Optional("farads", "farads")));

        static (bool, double?) Of(NumberKey key) => (key.IsRequired, key.Default);
    }
}
