using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

/// <summary>Stacks that need more area than their devices, flows that values decide, and texts of a comparison on silicon.</summary>
public sealed class SiliconComparisonStacksTests
{
    private static readonly RatingLimits s_wide = new()
    {
        Switch = DemoDevices.NType1V2 with { StackAreaFactor = 1.5 },
        Capacitor = DemoDevices.Dense1V2 with { StackAreaFactor = 1.25 },
    };

    // 250 Ω and 4 Ω without stacks, see SiliconComparisonTests; two in series on 1.25 and 1.5 times the area: four times as much and that factor
    [Theory]
    [InlineData(2.4, 250, 4)]
    [InlineData(4.8, 1250, 24)]
    public void Area_that_a_stack_wastes_counts_from_two_devices_on(double inputVolts, double slowOhms, double fastOhms)
    {
        SiliconComparison half = SiliconComparison.Of(Rate(SeriesParallel.StepDown(2), inputVolts), Mode.DefaultName, 1e-7, 4 * 300 * 0.4e-12, 1e6);
        Assert.Equal(slowOhms, half.SlowSwitchingLimit.BestSplitOhms!.Value, 1e-9);
        Assert.Equal(slowOhms, half.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-9);
        Assert.Equal(fastOhms, half.FastSwitchingLimit.BestSplitOhms!.Value, 1e-12);
        Assert.Equal(fastOhms, half.FastSwitchingLimit.OwnProportionsOhms!.Value, 1e-12);
    }

    // capacitors with a third and two thirds of 3.6 V: one and two of 1.2 V
    [Fact]
    public void Devices_are_counted_over_all_stacks()
    {
        SiliconComparison third = SiliconComparison.Of(Rate(Dickson.StepDown(3), 3.6), Mode.DefaultName, 1e-7, 1e-9);
        Assert.Equal(3, third.CapacitorDeviceCount);
        Assert.Equal(third.Ratings.Switches.Sum(s => s.Stack.Count), third.SwitchDeviceCount);
        Assert.Contains($"ratio 1/3, {3 + third.SwitchDeviceCount} devices; SSL {third.SlowSwitchingLimit}; FSL ", third.ToString(), StringComparison.Ordinal);
        Assert.Same(third.SlowSwitchingLimit, third.LowFrequencyLimit);
    }

    [Fact]
    public void Charge_sharing_stands_first_where_there_is_a_current()
    {
        Converter loaded = Half(LoadKind.Current).Capacitor("out", "vout", "gnd", 1).Build();
        SiliconComparison half = SiliconComparison.Of(Rate(loaded, 2.4), Mode.DefaultName, 1e-7, 1e-9);
        Assert.NotNull(half.ChargeSharing);
        Assert.Same(half.ChargeSharing, half.LowFrequencyLimit);
        Assert.Contains($"; charge sharing {half.ChargeSharing}; FSL ", half.ToString(), StringComparison.Ordinal);
    }

    // two capacitors, and two switches, side by side share by their values; what rests and the others do not
    [Fact]
    public void One_flow_that_values_decide_makes_the_best_split_an_estimate()
    {
        Converter beside = Half().Capacitor("beside", "p", "n", 3).Capacitor("rest", "x", "gnd").Switch("idle", "vin", "x", 1).Build();
        SiliconComparison capacitors = SiliconComparison.Of(Rate(beside, 2), Mode.DefaultName, 1e-7, 1e-9);
        Assert.True(capacitors.SlowSwitchingLimit.DependsOnComponentValues);
        Assert.False(capacitors.FastSwitchingLimit.DependsOnComponentValues);
        SiliconComparison switches = SiliconComparison.Of(Rate(Half().Switch("too", "vin", "p", 1, 3).Build(), 2), Mode.DefaultName, 1e-7, 1e-9);
        Assert.False(switches.SlowSwitchingLimit.DependsOnComponentValues);
        Assert.True(switches.FastSwitchingLimit.DependsOnComponentValues);
    }

    [Fact]
    public void Areas_and_frequencies_of_zero_are_refused()
    {
        ConverterRatings ratings = Rate(SeriesParallel.StepDown(2), 2.4);
        Assert.Equal("capacitorAreaSquareMetres", Refusal(() => SiliconComparison.Of(ratings, Mode.DefaultName, 0, 1)));
        Assert.Equal("switchAreaSquareMetres", Refusal(() => SiliconComparison.Of(ratings, Mode.DefaultName, 1, 0)));
        Assert.Equal("frequencyHz", Refusal(() => SiliconComparison.Of(ratings, Mode.DefaultName, 1, 1, 0)));

        static string? Refusal(Func<object> act) => Assert.Throws<ArgumentOutOfRangeException>(act).ParamName;
    }

    private static ConverterRatings Rate(Converter converter, double inputVolts) =>
        ConverterRatings.Of(ConverterStress.Of(ConverterAnalysis.Of(converter), new Interval<double>(1, inputVolts)), s_wide);

    private static ConverterBuilder Half(LoadKind load = LoadKind.Stiff) => Converter.Create("Half").Input("vin").Output("vout", load).Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);
}
