using ScNet.Analysis;
using ScNet.Design;

namespace ScNet.Tests.Design;

/// <summary>
/// Values worked out by hand from Kirchhoff's laws. Charges and blocking voltages of the halver and the
/// series-parallel divider by three are common practice, no source.
/// </summary>
public sealed class ModeComparisonTests
{
    private static readonly ComparisonConditions s_conditions = new(inputVoltageVolts: 3.6, deviceRatingVolts: 1.2);

    [Fact]
    public void A_halver_has_the_figures_of_the_hand_calculation()
    {
        ModeComparison half = Compare(Half().Build());
        Assert.Equal(Quantity.Exact(1, 2), half.Ratio);
        Assert.Equal(1.8, half.IdealOutputVoltageVolts);
        // one capacitor of k = 1/4; four equal switches of k = 1/2: 4 · 1/2 · 4
        AssertLimit(0.25, 0.25, half.SlowSwitchingLimit);
        AssertLimit(8, 8, half.FastSwitchingLimit);
        // 1/2 of charge at 1/2 of the input, which is the output; four switches the same
        Assert.Equal(Quantity.Exact(1, 2), half.CapacitorChargeVoltage.Value);
        Assert.Equal(Quantity.Exact(2), half.SwitchChargeVoltage.Value);
        Assert.Equal(1.8, half.SwitchStress.PeakVolts);
        Assert.Equal(["s1", "s2", "s3", "s4"], half.SwitchStress.Exceeding);
        Assert.Equal(0.6, half.SwitchStress.MaximumExcessVolts, 1e-15);
        Assert.Equal(["fly"], half.CapacitorStress.Exceeding);
    }

    [Fact]
    public void A_series_parallel_divider_by_three_has_the_figures_of_the_hand_calculation()
    {
        ModeComparison third = Compare(Third(secondFarads: 1));
        Assert.Equal(1.2, third.IdealOutputVoltageVolts);
        // k = 1/9 twice: (1/3 + 1/3)²; k = 2/9 seven times: (7 √2 / 3)² = 98/9
        AssertLimit(4.0 / 9, 4.0 / 9, third.SlowSwitchingLimit);
        AssertLimit(98.0 / 9, 98.0 / 9, third.FastSwitchingLimit);
        // two capacitors of charge 1/3 at the output voltage; blocking voltages sum to 10/3 of the input
        Assert.Equal(Quantity.Exact(2, 3), third.CapacitorChargeVoltage.Value);
        Assert.Equal(Quantity.Exact(10, 3), third.SwitchChargeVoltage.Value);
        Assert.Equal(2.4, third.SwitchStress.PeakVolts);
        Assert.Equal(["s1", "s4", "s5"], third.SwitchStress.Exceeding);
        Assert.Equal(1.2, third.SwitchStress.MaximumExcessVolts, 1e-15);
        Assert.Equal(1.2, third.CapacitorStress.PeakVolts);
        Assert.Empty(third.CapacitorStress.Exceeding);
    }

    [Fact]
    public void Unequal_capacitors_cost_impedance_in_their_own_proportions_only()
    {
        // 1/3 and 2/3 of the total: 1/9 · 3 + 1/9 · 3/2
        AssertLimit(0.5, 4.0 / 9, Compare(Third(secondFarads: 2)).SlowSwitchingLimit);
    }

    [Fact]
    public void Totals_and_frequency_divide_the_limits()
    {
        ComparisonConditions conditions = new(3.6, 1.2, totalCapacitanceFarads: 2e-9, totalConductanceSiemens: 4, frequencyHz: 5e6);
        ModeComparison half = ModeComparison.Of(Analyse(Half().Build()), conditions);
        AssertLimit(25, 25, half.SlowSwitchingLimit);
        AssertLimit(2, 2, half.FastSwitchingLimit);
    }

    [Fact]
    public void A_switch_on_a_floating_node_is_named_and_not_taken_as_zero()
    {
        ModeComparison half = Compare(Half().Capacitor("idle", "x", "gnd").Switch("open", "vin", "x").Build());
        Assert.Equal(["open"], half.SwitchStress.Undetermined);
        Assert.Equal(["idle"], half.CapacitorStress.Undetermined);
        Assert.Equal(1.8, half.SwitchStress.PeakVolts);
        Assert.Equal(Quantity.Exact(2), half.SwitchChargeVoltage.Value);
    }

    [Fact]
    public void A_mode_without_a_result_throws_its_findings()
    {
        Converter shorted = Half().Switch("s5", "vin", "gnd", 1).Build();
        ScNetException exception = Assert.Throws<ScNetException>(() => ModeComparison.Of(ModeAnalysis.Of(shorted), s_conditions));
        Assert.Contains(exception.Diagnostics, d => d.Code == DiagnosticCodes.InputShorted);
    }

    // 1 µF across 5 V against a rating of 1.2 V: it carries no charge, so it changes none of the converter's figures
    [Fact]
    public void A_capacitor_across_a_source_changes_no_figure_and_is_named()
    {
        ModeComparison plain = Compare(Half().Build());
        ModeComparison decoupled = Compare(Half().Capacitor("cin", "vin", "gnd", 1e-6).Capacitor("cout", "vout", "gnd", 1e-6).Capacitor("bridge", "vin", "vout", 1e-6).Build());
        Assert.Equal(["cin", "cout", "bridge"], decoupled.LeftOut);
        AssertLimit(plain.SlowSwitchingLimit.OwnProportionsOhms!.Value, plain.SlowSwitchingLimit.BestSplitOhms!.Value, decoupled.SlowSwitchingLimit);
        Assert.Equal(["fly"], decoupled.CapacitorStress.Exceeding);
        Assert.Equal(1.8, decoupled.CapacitorStress.PeakVolts);
        Assert.Equal(plain.BottomPlateSwing.LossWeight, decoupled.BottomPlateSwing.LossWeight);
        Assert.Equal(plain.CapacitorChargeVoltage.Value, decoupled.CapacitorChargeVoltage.Value);
        Assert.Empty(plain.LeftOut);
    }

    // with a current load a capacitor on the output carries charge: it stays
    [Fact]
    public void An_output_capacitor_that_carries_charge_is_not_left_out()
    {
        ModeComparison loaded = Compare(Half().Output("vout", LoadKind.Current).Capacitor("cout", "vout", "gnd", 1e-9).Build());
        Assert.Empty(loaded.LeftOut);
    }

    private static void AssertLimit(double ownOhms, double bestOhms, ComparedLimit limit)
    {
        Assert.Equal(ownOhms, limit.OwnProportionsOhms!.Value, 1e-12 * ownOhms);
        Assert.Equal(bestOhms, limit.BestSplitOhms!.Value, 1e-12 * bestOhms);
        Assert.False(limit.DependsOnComponentValues);
    }

    private static ModeComparison Compare(Converter converter) => ModeComparison.Of(Analyse(converter), s_conditions);

    private static ModeAnalysis Analyse(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);

    private static ConverterBuilder Half() => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2)
        .Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2);

    private static Converter Third(double secondFarads) => Converter.Create("Third").Input("vin").Output("vout")
        .Capacitor("c1", "p1", "n1").Capacitor("c2", "p2", "n2", secondFarads)
        .Switch("s1", "vin", "p1", 1).Switch("s2", "n1", "p2", 1).Switch("s3", "n2", "vout", 1)
        .Switch("s4", "p1", "vout", 2).Switch("s5", "n1", "gnd", 2)
        .Switch("s6", "p2", "vout", 2).Switch("s7", "n2", "gnd", 2)
        .Build();
}
