using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Stress;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Kinds for the values of a netlist, by what they lose where it runs.</summary>
public sealed class NetlistSizesChoiceTests
{
    private static readonly SwitchDevice s_wide = HalfTasks.Long with { Name = "wide", AreaSquareMetresPerMicrometre = 2e-12, GateChargeCoulombsPerMicrometre = 1e-15, BodyDiodeVolts = 0.4 };

    // twice the area, half of the charge
    [Fact]
    public void A_switch_of_less_charge_is_worth_its_area_where_it_runs()
    {
        Process process = HalfTasks.Process([HalfTasks.Long, s_wide], [HalfTasks.Metal]);
        ConverterStress stress = Stress(HalfTasks.Half);
        Assert.All(NetlistSizes.Of(stress, process).Switches, s => Assert.Same(HalfTasks.Long, s.Device));
        Assert.All(NetlistSizes.Of(stress, process, new OperatingPoint(2, 1e-3, 1e6)).Switches, s => Assert.Same(s_wide, s.Device));
    }

    // but for its diode the wide one is like the other; the coil drives its current through the low diode alone
    [Fact]
    public void A_body_diode_of_less_voltage_is_worth_its_area_where_it_conducts()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Switch("high", "vin", "x", 1).Switch("low", "x", "gnd", 2)
            .Inductor("coil", "x", "vout", 1e-6, 0.1).Build();
        SwitchDevice wide = s_wide with { GateChargeCoulombsPerMicrometre = HalfTasks.Long.GateChargeCoulombsPerMicrometre };
        Process process = HalfTasks.Process([HalfTasks.Long, wide], [HalfTasks.Metal]) with { DeadTimeSeconds = 1e-8 };
        SizedConverter sized = NetlistSizes.Of(Stress(stage), process, new OperatingPoint(2, 1, 1e6));
        Assert.Same(HalfTasks.Long, sized.Switches["high"].Device);
        Assert.Same(wide, sized.Switches["low"].Device);
    }

    [Fact]
    public void A_mode_in_which_a_current_ends_phases_has_no_say()
    {
        Process process = HalfTasks.Process([HalfTasks.Long, s_wide], [HalfTasks.Metal]);
        OperatingPoint point = new(2, 1e-3, 1e6);
        Assert.All(NetlistSizes.Of(Stress(Build(default)), process, point).Switches, s => Assert.Same(s_wide, s.Device));
        Assert.All(NetlistSizes.Of(Stress(Build(2)), process, point).Switches, s => Assert.Same(HalfTasks.Long, s.Device));

        static Converter Build(PhaseSet untilZero) => Converter.Create("step-down").Input("vin").Output("vout").Switch("high", "vin", "x", 1).Switch("low", "x", "gnd", 2)
            .Inductor("coil", "x", "vout", 1e-6, 0.1, untilZero).Build();
    }

    // 1 Ω each are 4 S; of the total of 1 S each has a quarter, and the wiring of 0.5 Ω comes on top. The capacitor across the input is not scaled
    [Fact]
    public void At_the_totals_of_a_comparison_each_has_its_share()
    {
        ComparisonConditions conditions = new(2, 10, totalCapacitanceFarads: 3e-6, totalConductanceSiemens: 1, frequencyHz: 1e6);
        SizedConverter sized = NetlistSizes.AtTotals(ConverterAnalysis.Of(HalfTasks.Half), conditions, 1e-3, HalfTasks.Process([HalfTasks.Long, s_wide], [HalfTasks.Metal]));
        Assert.All(sized.Switches, s => Assert.Equal(4, s.Ohms, 1e-12));
        Assert.All(sized.Converter.Switches, s => Assert.Equal(4.5, s.Ohms, 1e-12));
        Assert.Equal(3e-6, sized.Converter.Capacitors["fly"].Farads, 1e-18);
        Assert.Equal(1, sized.Converter.Capacitors["in"].Farads);
        Assert.All(sized.Switches, s => Assert.Same(s_wide, s.Device));
    }

    private static ConverterStress Stress(Converter converter) => ConverterStress.Of(ConverterAnalysis.Of(converter), new Interval<double>(2, 2));
}
