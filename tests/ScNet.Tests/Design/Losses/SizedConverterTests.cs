using ScNet.Design.Losses;
using ScNet.Devices;

namespace ScNet.Tests.Design.Losses;

public sealed class SizedConverterTests
{
    // four switches of 500 µm at 1 µm² each, 0.1 mm² of capacitor and a coil of 1 mm²
    [Fact]
    public void The_area_is_that_of_all_devices()
    {
        SizedConverter sized = Sized.Of(Stage("one"));
        SizedConverter with = new(sized.Converter, sized.Switches, sized.Capacitors, [sized.Inductors[0] with { AreaSquareMetres = 1e-6 }], sized.Process);
        Assert.Equal((4 * 500e-12) + 1e-7 + 1e-6, with.AreaSquareMetres, 1e-18);
        Assert.Equal("one, 1.102 mm²", with.ToString());
    }

    [Fact]
    public void The_same_devices_give_another_converter_their_values()
    {
        SizedConverter sized = Sized.Of(Stage("one"));
        SizedConverter moved = sized.Of(Stage("other", 5, 5e-9, 5, 5, 5));
        Assert.Equal("other", moved.Converter.Name);
        Assert.Equal([2, 2, 2, 2], moved.Converter.Switches.Select(s => s.Ohms));
        Assert.Equal((1e-9, 0.25), (moved.Converter.Capacitors[0].Farads, moved.Converter.Capacitors[0].EsrOhms));
        Assert.Equal((3e-6, 0.125), (moved.Converter.Inductors[0].Henries, moved.Converter.Inductors[0].Ohms));
        Assert.Equal(sized.Switches, moved.Switches);
        Assert.Same(sized.Process, moved.Process);
        Converter renamed = Converter.Create("renamed").Input("vin").Output("vout").Capacitor("fly", "p", "n").Inductor("coil", "x", "vout")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "x", 1).Switch("s3", "p", "x", 2).Switch("s5", "n", "gnd", 2).Build();
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => sized.Of(renamed));
        Assert.Equal("other", refusal.ParamName);
        Assert.StartsWith("Expected a converter of the elements of 'one', but got 'renamed' with others.", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lists_of_other_lengths_are_refused_by_their_names()
    {
        SizedConverter sized = Sized.Of(Stage("one"));
        StackedSwitch[] switches = [.. sized.Switches];
        StackedCapacitor[] capacitors = [.. sized.Capacitors];
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => new SizedConverter(sized.Converter, switches[..3], capacitors, sized.Inductors, sized.Process));
        Assert.Equal("switches", refusal.ParamName);
        Assert.StartsWith("Expected 4 devices, one per element, but got 3.", refusal.Message, StringComparison.Ordinal);
        Assert.Equal("capacitors", Assert.Throws<ArgumentException>(() => new SizedConverter(sized.Converter, switches, [], sized.Inductors, sized.Process)).ParamName);
        Assert.Equal("inductors", Assert.Throws<ArgumentException>(() => new SizedConverter(sized.Converter, switches, capacitors, null, sized.Process)).ParamName);
        Assert.Throws<ArgumentNullException>(() => new SizedConverter(null!, switches, capacitors, null, sized.Process));
        Assert.Throws<ArgumentNullException>(() => sized.Of(null!));
    }

    private static Converter Stage(string name, double ohms = 2, double farads = 1e-9, double esrOhms = 0.25, double henries = 3e-6, double windingOhms = 0.125) => Converter.Create(name)
        .Input("vin").Output("vout").Capacitor("fly", "p", "n", farads, esrOhms).Inductor("coil", "x", "vout", henries, windingOhms)
        .Switch("s1", "vin", "p", 1, ohms).Switch("s2", "n", "x", 1, ohms).Switch("s3", "p", "x", 2, ohms).Switch("s4", "n", "gnd", 2, ohms).Build();
}
