using ScNet.Analysis;
using ScNet.Design;
using ScNet.Tests.SteadyState.Conduction;

namespace ScNet.Tests.Design;

/// <summary>The values with which a converter is compared: all capacitances times one factor, all conductances times another.</summary>
public sealed class ComparedValuesTests
{
    // 1 F and 3 F become 2 F and 6 F, 1/2 S and 1/4 S twice as much; the capacitor across the input stays
    [Fact]
    public void Values_are_scaled_to_the_totals()
    {
        Converter converter = Converter.Create("two").Input("vin").Output("vout").Capacitor("in", "vin", "gnd", 7, 5, new CapacitorPlates(BottomFarads: 0.7))
            .Capacitor("a", "p", "n", 1, 2, new CapacitorPlates(BottomFarads: 0.1, TopFarads: 0.01, BodyNode: "vin")).Capacitor("b", "q", "n", 3, 4, new CapacitorPlates(TopFarads: 0.3))
            .Switch("s", "vin", "p", 1, 2).Switch("t", "n", "vout", 1, 4).Parasitic("wire", "n", "gnd", 0.5).Build();
        Converter values = ComparedLoad.AtTotals(converter, new ComparisonConditions(1, 1, totalCapacitanceFarads: 8, totalConductanceSiemens: 1.5));
        Assert.Equal([7, 2, 6], values.Capacitors.Select(c => c.Farads));
        Assert.Equal([5, 1, 2], values.Capacitors.Select(c => c.EsrOhms));
        Assert.Equal([1, 2], values.Switches.Select(s => s.Ohms));
        Assert.Equal([0.7, 0.2, 0], values.Capacitors.Select(c => c.Plates.BottomFarads));
        Assert.Equal([0, 0.02, 0.6], values.Capacitors.Select(c => c.Plates.TopFarads));
        Assert.Equal("vin", values.Capacitors["a"].Plates.BodyNode);
        Assert.Equal(0.5, Assert.Single(values.Parasitics).Farads);
    }

    [Fact]
    public void What_has_no_capacitors_or_no_switches_stays_as_it_is()
    {
        ComparisonConditions conditions = new(1, 1, totalCapacitanceFarads: 8, totalConductanceSiemens: 1.5);
        Assert.Equal(3, Assert.Single(ComparedLoad.AtTotals(Converter.Create("none").Input("vin").Output("vout").Capacitor("in", "vin", "gnd", 3).Switch("s", "vin", "vout", 1).Build(), conditions).Capacitors).Farads);
        Assert.Equal(8, Assert.Single(ComparedLoad.AtTotals(Converter.Create("none").Input("vin").Output("vout").Capacitor("c", "p", "gnd", 3).Inductor("l", "vin", "vout").Build(), conditions).Capacitors).Farads);
    }

    // triangles with a rest: 2/(1 + √(1 + 4K/D²)) of the input, K = 2 L f I/V_out
    [Fact]
    public void Where_a_current_ends_a_phase_the_voltage_follows_from_the_load()
    {
        Converter stage = Stages.StepDown(new(1, 4), 1e-5);
        ComparisonConditions conditions = new(4, 5, totalConductanceSiemens: 1.5e5, frequencyHz: 1e6);
        ComparedLoad load = ComparedLoad.Of(ModeAnalysis.Of(stage), conditions, 0.15);
        double k = 2 * Stages.Henries * 1e6 * 0.15 / load.OutputVolts;
        Assert.Equal(4 * 2 / (1 + Math.Sqrt(1 + (4 * k * 16))), load.OutputVolts, 1e-3);
        Assert.Equal(0.15, load.LoadAmperes);
    }

    // a coil with a capacitor of its own at the input carries nothing, and ends no phase
    [Fact]
    public void One_of_several_coils_whose_current_ends_a_phase_is_enough()
    {
        Converter stage = Converter.Create("two coils").Input("vin").Output("vout").Duties(0.25, 0.75).Inductor("coil", "x", "vout", Stages.Henries, 1e-5, untilZero: 2)
            .Inductor("filter", "vin", "y", 1e-6, 0.1).Capacitor("end", "y", "gnd", 1e-6, esrOhms: 0.1)
            .Switch("high", "vin", "x", 1, 1e-5).Switch("low", "x", "gnd", 2, 2e-5).Build();
        ComparedLoad load = ComparedLoad.Of(ModeAnalysis.Of(stage), new ComparisonConditions(4, 5, totalConductanceSiemens: 1.5e5, frequencyHz: 1e6), 0.15);
        double k = 2 * Stages.Henries * 1e6 * 0.15 / load.OutputVolts;
        Assert.Equal(4 * 2 / (1 + Math.Sqrt(1 + (4 * k * 16))), load.OutputVolts, 1e-3);
    }

    [Fact]
    public void Limits_conditions_and_loads_tell_their_figures()
    {
        Assert.Equal(
            "8 Ω in own proportions, 8 Ω by the best split",
            ComparedLimit.Of(["a"], [Quantity.Exact(8)], [1], 1).ToString());
        Assert.Equal(
            "8 Ω in own proportions, 8 Ω by the best split, as component values decide",
            ComparedLimit.Of(["a"], [Quantity.Exact(8)], [1], 1, dependsOnComponentValues: true).ToString());
        Assert.Equal(
            "3 V input, 2 V rating, 4 F of capacitance, 5 S of switch conductance, 7 Hz",
            new ComparisonConditions(3, 2, 4, 5, 7).ToString());
        Assert.True(ComparedLimit.Of(["a"], [Quantity.Undetermined], [1], 1, dependsOnComponentValues: true).DependsOnComponentValues);
        Assert.False(ComparedLimit.Of(["a"], [Quantity.Numeric(1)], [1], 1, dependsOnComponentValues: false).DependsOnComponentValues);
    }
}
