using ScNet.Devices;
using ScNet.Kernel;
using ScNet.Topologies;

namespace ScNet.Tests.Devices;

/// <summary>The parasitic capacitances of devices, worked out by hand from the invented devices of the demonstration.</summary>
public sealed class DeviceParasiticsTests
{
    private static readonly Converter s_converter = SeriesParallel.StepDown(2, farads: 1e-9, ohms: 2);

    [Fact]
    public void A_bottom_plate_is_its_fraction_of_the_capacitance()
    {
        Converter plated = s_converter.WithParasitics(capacitors: [DemoDevices.Dense1V2]);

        ParasiticCapacitance plate = Assert.Single(plated.ParasiticCapacitances);
        Assert.Equal(new NodePair(plated.Nodes.Names.Find("n1"), 0), plate.Nodes);
        Assert.Equal(5e-11, plate.Farads, 1e-24);
        Assert.Equal((plate.Farads, 0, "gnd"), (plated.Capacitors[0].Plates.BottomFarads, plated.Capacitors[0].Plates.TopFarads, plated.Capacitors[0].Plates.BodyNode));
    }

    [Fact]
    public void Both_plates_are_those_of_the_device_and_keep_their_body()
    {
        CapacitorDevice both = new() { Name = "both", Source = "invented", RatedVolts = 1.2, FaradsPerSquareMetre = 1e-2, BottomPlateFraction = 0.05, TopPlateFraction = 0.01 };
        Converter plated = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", 1e-9, plates: new CapacitorPlates(1, 2, "vout"))
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Build().WithParasitics(capacitors: [both]);

        Assert.Equal(5e-11, plated.Capacitors[0].Plates.BottomFarads, 1e-24);
        Assert.Equal(1e-11, plated.Capacitors[0].Plates.TopFarads, 1e-24);
        Assert.Equal("vout", plated.Capacitors[0].Plates.BodyNode);
    }

    [Fact]
    public void A_junction_lies_across_its_switch_as_wide_as_the_resistance_asks_for()
    {
        Converter plated = s_converter.WithParasitics(switches: [.. s_converter.Switches.Select(_ => DemoDevices.NType1V2)]);

        // 600 Ω·µm for 2 Ω is 300 µm; 0.8 fC/µm at 1.2 V is 2/3 fF/µm
        Assert.All(plated.Parasitics, p => Assert.Equal(2e-13, p.Farads, 1e-25));
        Assert.Equal(s_converter.Switches.Select(s => (s.Name + " junction", s.FirstNode, s.SecondNode)), plated.Parasitics.Select(p => (p.Name, p.FirstNode, p.SecondNode)));
        Assert.Equal(4, plated.ParasiticCapacitances.Count());
    }

    [Fact]
    public void What_was_there_is_kept_and_names_stay_unique()
    {
        Converter twice = s_converter.WithParasitics(switches: [.. s_converter.Switches.Select(_ => DemoDevices.NType1V2)])
            .WithParasitics([DemoDevices.Dense1V2], [.. s_converter.Switches.Select(_ => DemoDevices.NType1V2)]);

        Assert.Equal(8, twice.Parasitics.Select(p => p.Name).Distinct().Count());
        Assert.Equal(9, twice.ParasiticCapacitances.Count());
        Assert.Throws<ArgumentException>(() => s_converter.WithParasitics(capacitors: []));
    }
}
