using ScNet.Design.Requirements.Toml;

namespace ScNet.Tests.Design.Requirements;

public sealed class TableShapeTests
{
    [Fact]
    public void Numbers_stand_between_the_keys_before_and_behind_them()
    {
        NumberKey volts = NumberKey.Required("volts", "volts"), farads = NumberKey.Optional("farads", "farads");
        TableShape shape = new(["name", "source"], [volts, farads], "corners");

        Assert.Equal([volts, farads], shape.Numbers);
        Assert.Equal(["name", "source", "volts", "farads", "corners"], shape.Keys);
        Assert.Equal(["name", "volts"], new TableShape(["name"], [volts]).Keys);
    }
}
