using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.SteadyState;
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

    // common practice: MOS capacitors are denser, metal ones have the lighter plates
    [Fact]
    public void Where_it_runs_decides_between_dense_capacitors_and_light_plates()
    {
        Converter half = SeriesParallel.StepDown(2, farads: 1e-9, ohms: 2);
        Process process = Process([DemoDevices.NType1V2], [DemoDevices.Dense1V2, DemoDevices.Plate3V6]);
        Assert.Same(DemoDevices.Dense1V2, NetlistSizes.Of(Stress(half, 2), process).Capacitors[0].Device);
        Assert.Same(DemoDevices.Plate3V6, NetlistSizes.Of(Stress(half, 2), process, new OperatingPoint(2, 1e-3, 20e6)).Capacitors[0].Device);
    }

    [Fact]
    public void At_an_operating_point_no_other_kinds_lose_less()
    {
        Converter third = SeriesParallel.StepDown(3, farads: 1e-9, ohms: 2);
        ConverterAnalysis analysis = ConverterAnalysis.Of(third);
        SwitchDevice[] switches = [DemoDevices.NType1V2, DemoDevices.NType1V8];
        CapacitorDevice[] capacitors = [DemoDevices.Dense1V2, DemoDevices.Plate3V6];
        Process process = Process(switches, capacitors);
        OperatingPoint point = new(1.6, 5e-3, 30e6);
        int own = third.Capacitors.Count, count = own + third.Switches.Count;
        double Watts(SizedConverter sized) => LossModel.Of(sized, analysis.Modes[0].Require()).At(point).TotalLossWatts;
        double least = Enumerable.Range(0, 1 << count).Min(choice =>
        {
            StackedCapacitor[] stacks = [.. third.Capacitors.Select((c, i) => new StackedCapacitor(capacitors[(choice >> i) & 1], 1, c.Farads))];
            return Watts(new SizedConverter(
                third.WithValues([.. stacks.Select(c => c.Farads)], [.. third.Switches.Select(s => s.Ohms + 0.1)], [.. stacks.Select(c => c.EsrOhms)]),
                [.. third.Switches.Select((s, i) => new StackedSwitch(switches[(choice >> (own + i)) & 1], 1, s.Ohms))],
                stacks,
                null,
                process));
        });
        double chosen = Watts(NetlistSizes.Of(Stress(third, 1.6), process, point));
        Assert.Equal(least, chosen, 1e-12 * least);
        Assert.True(chosen < 0.9 * Watts(NetlistSizes.Of(Stress(third, 1.6), process)));
    }

    [Fact]
    public void A_density_against_bias_counts_at_the_voltage_that_the_point_holds()
    {
        CapacitorDevice moving = new()
        {
            Name = "moving",
            Source = "invented",
            RatedVolts = 1.2,
            FaradsPerSquareMetre = 10e-3,
            DensityAgainstBias = [new(0, 4e-3), new(1, 8e-3), new(1.2, 10e-3)],
        };
        Converter half = SeriesParallel.StepDown(2, farads: 1e-9, ohms: 2);
        SizedConverter sized = NetlistSizes.Of(Stress(half, 1.5), Process([DemoDevices.NType1V2], [moving]), new OperatingPoint(1.5, 1e-3, 20e6));
        Assert.Equal(1e-9 / 7e-3, sized.Capacitors[0].AreaOfEachSquareMetres, 1e-15);
    }

    [Fact]
    public void What_nothing_withstands_is_named()
    {
        ScNetException refusal = Assert.Throws<ScNetException>(() => NetlistSizes.Of(Stress(SeriesParallel.StepDown(2), 30), Process(DemoDevices.NType1V2)));
        Assert.Contains(refusal.Diagnostics, d => d.Code == DiagnosticCodes.DeviceRatingExceeded && d.Elements.Contains("series1"));
    }

    private static ConverterStress Stress(Converter converter, double volts) => ConverterStress.Of(ConverterAnalysis.Of(converter), new Interval<double>(volts, volts));

    private static Process Process(params SwitchDevice[] switches) => Process(switches, [DemoDevices.Plate3V6]);

    private static Process Process(SwitchDevice[] switches, CapacitorDevice[] capacitors) =>
        new() { Name = "demo", Switches = switches, Capacitors = capacitors, WiringOhms = 0.1 };
}
