using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Losses;

public sealed class NetlistSizesTests
{
    // by hand at 3 V: every switch blocks 1.5 V. Two thin ones in series, 600 Ω·µm each, take 2² · 600 · 0.4 µm² = 960 per 1/Ω, one thick one 700.
    [Fact]
    public void Every_element_is_the_stack_of_least_area_that_withstands_its_voltage()
    {
        Converter half = SeriesParallel.StepDown(2, farads: 1e-9, ohms: 2);
        SizedConverter sized = NetlistSizes.Of(Stress(half, 3), Process(DemoDevices.NType1V2, DemoDevices.NType1V8));
        Assert.All(sized.Switches, s => Assert.Equal((DemoDevices.NType1V8, 1, 2.0), (s.Device, s.Count, s.Ohms)));
        Assert.All(sized.Converter.Switches, s => Assert.Equal(2.1, s.Ohms));
        Assert.Equal(1e-9, Assert.Single(sized.Converter.Capacitors).Farads);

        Assert.All(NetlistSizes.Of(Stress(half, 2), Process(DemoDevices.NType1V2, DemoDevices.NType1V8)).Switches, s => Assert.Same(DemoDevices.NType1V2, s.Device));
        Assert.All(NetlistSizes.Of(Stress(half, 3), Process(DemoDevices.NType1V2)).Switches, s => Assert.Equal(2, s.Count));
    }

    [Fact]
    public void What_nothing_withstands_is_named()
    {
        ScNetException refusal = Assert.Throws<ScNetException>(() => NetlistSizes.Of(Stress(SeriesParallel.StepDown(2), 30), Process(DemoDevices.NType1V2)));
        Assert.Contains(refusal.Diagnostics, d => d.Code == DiagnosticCodes.DeviceRatingExceeded && d.Elements.Contains("series1"));
    }

    private static ConverterStress Stress(Converter converter, double volts) => ConverterStress.Of(ConverterAnalysis.Of(converter), new Interval<double>(volts, volts));

    private static Process Process(params SwitchDevice[] switches) => new() { Name = "demo", Switches = switches, Capacitors = [DemoDevices.Plate3V6], WiringOhms = 0.1 };
}
