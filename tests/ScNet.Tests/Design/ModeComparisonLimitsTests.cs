using ScNet.Analysis;
using ScNet.Design;

namespace ScNet.Tests.Design;

/// <summary>Limits of halvers in which component values decide, with currents and with elements that rest.</summary>
public sealed class ModeComparisonLimitsTests
{
    // conductances of 1 S four times and 1/4 S without charge: 4 · 1/2 · 17/4; the best split leaves out the last, 4 · 1/2 · 4
    [Fact]
    public void A_switch_without_charge_takes_its_share_of_the_conductance()
    {
        ModeComparison half = Compare(Half().Capacitor("rest", "x", "gnd").Switch("idle", "vin", "x", 1, 4).Build());
        Assert.Equal(8.5, half.FastSwitchingLimit.OwnProportionsOhms!.Value, 1e-12);
        Assert.Equal(8, half.FastSwitchingLimit.BestSplitOhms!.Value, 1e-12);
    }

    // 1 F and 3 F side by side share each half of the charge: k = 1/64 and 9/64, together 1/4; the resting one has none
    [Fact]
    public void One_flow_that_values_decide_makes_the_best_split_an_estimate()
    {
        ModeComparison half = Compare(Half().Capacitor("beside", "p", "n", 3).Capacitor("rest", "x", "gnd", 4).Switch("idle", "vin", "x", 1).Build());
        Assert.True(half.SlowSwitchingLimit.DependsOnComponentValues);
        Assert.False(half.FastSwitchingLimit.DependsOnComponentValues);
        Assert.Equal(0.5, half.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-12);
        Assert.Equal(0.25, half.SlowSwitchingLimit.BestSplitOhms!.Value, 1e-12);
        Assert.True(ComparedLimit.Of(["a", "b"], [Quantity.Numeric(1), Quantity.Exact(1)], [1, 1], 1).DependsOnComponentValues);
    }

    // twice the capacitance or twice the frequency leaves half of what impulses lose
    [Fact]
    public void Charge_sharing_falls_with_capacitance_and_frequency_and_stands_first()
    {
        Converter loaded = Half(LoadKind.Current).Capacitor("out", "vout", "gnd", 1).Build();
        ModeComparison one = Compare(loaded), two = Compare(loaded, farads: 2), fast = Compare(loaded, hertz: 4);
        double ohms = one.ChargeSharing!.BestSplitOhms!.Value;
        Assert.True(ohms > 0.01, $"{ohms} Ω");
        Assert.Equal(ohms / 2, two.ChargeSharing!.BestSplitOhms!.Value, 1e-12 * ohms);
        Assert.Equal(ohms / 4, fast.ChargeSharing!.BestSplitOhms!.Value, 1e-12 * ohms);
        Assert.Same(one.ChargeSharing, one.LowFrequencyLimit);
        Assert.Equal(
            $"Half, mode {one.Analysis.Mode}: ratio 1/2, 2 V; charge sharing {one.ChargeSharing}; FSL {one.FastSwitchingLimit}", one.ToString());
    }

    [Fact]
    public void Without_a_current_the_slow_limit_stands_for_it()
    {
        ModeComparison half = Compare(Half().Build());
        Assert.Null(half.ChargeSharing);
        Assert.Same(half.SlowSwitchingLimit, half.LowFrequencyLimit);
        Assert.Equal(
            $"Half, mode {half.Analysis.Mode}: ratio 1/2, 2 V; SSL 0.25 Ω in own proportions, 0.25 Ω by the best split; FSL 8 Ω in own proportions, 8 Ω by the best split", half.ToString());
    }

    private static ModeComparison Compare(Converter converter, double farads = 1, double hertz = 1) => ModeComparison.Of(
        ModeAnalysis.Of(converter), new(4, 4, totalCapacitanceFarads: farads, totalConductanceSiemens: 1, frequencyHz: hertz));

    private static ConverterBuilder Half(LoadKind load = LoadKind.Stiff) => Converter.Create("Half").Input("vin").Output("vout", load).Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);
}
