using ScNet.Analysis;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

public sealed class SiliconComparisonTests
{
    private static readonly RatingLimits s_limits = new() { Switch = DemoDevices.NType1V2, Capacitor = DemoDevices.Dense1V2 };

    // A halver at 2.4 V needs no stack: C = 10e-3 · A, G = A / (600 · 0.4e-12), so with A_C = 1e-7 m² (1 nF)
    // and 1 MHz R_SSL = 1/4 / (1e-9 · 1e6) = 250 Ω; with A_S = 4 · 600/2 · 0.4e-12 m² (2 Ω each) R_FSL = 4 · 1/2 · 2 = 4 Ω.
    [Fact]
    public void A_halver_without_stacks_has_the_figures_of_the_hand_calculation()
    {
        SiliconComparison half = Compare(2.4);
        Assert.Equal(250, half.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-9);
        Assert.Equal(250, half.SlowSwitchingLimit.BestSplitOhms!.Value, 1e-9);
        Assert.Equal(4, half.FastSwitchingLimit.OwnProportionsOhms!.Value, 1e-12);
        Assert.Equal(4, half.FastSwitchingLimit.BestSplitOhms!.Value, 1e-12);
        Assert.Equal((1, 4, 1), (half.CapacitorDeviceCount, half.SwitchDeviceCount, half.MaximumStackCount));
        Assert.False(half.SlowSwitchingLimit.DependsOnComponentValues || half.FastSwitchingLimit.DependsOnComponentValues);
    }

    // at 4.8 V everything is stacked by two: a quarter of the capacitance and of the conductance
    [Fact]
    public void Stacks_of_two_cost_four_times_the_impedance_on_equal_silicon()
    {
        SiliconComparison half = Compare(4.8);
        Assert.Equal(1000, half.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-9);
        Assert.Equal(16, half.FastSwitchingLimit.BestSplitOhms!.Value, 1e-12);
        Assert.Equal((2, 8, 2), (half.CapacitorDeviceCount, half.SwitchDeviceCount, half.MaximumStackCount));
    }

    // A Dickson divider by three: capacitors of 1/3 and 2/3 with k = 1/18 + 1/18 = 1/9 each. At 3.6 V the
    // second one is stacked by two: best (1/3 · 1 + 1/3 · 2)² = 1 per 1 nF and 1 MHz, 1000 Ω.
    [Fact]
    public void A_stack_weighs_its_element_in_the_best_split()
    {
        ConverterRatings ratings = ConverterRatings.Of(
            ConverterStress.Of(ConverterAnalysis.Of(Dickson.StepDown(3)), new Interval<double>(3, 3.6)), s_limits);
        SiliconComparison third = SiliconComparison.Of(ratings, Mode.DefaultName, 1e-7, 1e-9);
        Assert.Equal([1, 2], ratings.Capacitors.Select(c => c.Stack.Count));
        Assert.Equal(1000, third.SlowSwitchingLimit.BestSplitOhms!.Value, 1e-9);
        // equal capacitances take 1/5 and 4/5 of the area: 1/9 · 5 + 1/9 · 4 · 5/4
        Assert.Equal(10000.0 / 9, third.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-9);
    }

    [Fact]
    public void A_capacitor_across_the_input_takes_no_area_and_counts_as_no_device()
    {
        Converter decoupled = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("cin", "vin", "gnd", farads: 1e-6).Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Build();
        SiliconComparison half = SiliconComparison.Of(
            ConverterRatings.Of(ConverterStress.Of(ConverterAnalysis.Of(decoupled), new Interval<double>(1, 2.4)), s_limits),
            Mode.DefaultName, 1e-7, 4 * 300 * 0.4e-12, 1e6);
        Assert.Equal(250, half.SlowSwitchingLimit.OwnProportionsOhms!.Value, 1e-9);
        Assert.Equal((1, 4, 1), (half.CapacitorDeviceCount, half.SwitchDeviceCount, half.MaximumStackCount));
        Assert.Equal("fly", Assert.Single(half.Capacitors).Capacitor.Name);
        Assert.False(half.IsLowerBound);
    }

    // the totals of the comparison are what the areas give in single devices: without stacks, the best split
    [Fact]
    public void On_the_ground_of_a_comparison_the_limits_are_those_of_the_best_split_until_something_is_stacked()
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(SeriesParallel.StepDown(3));
        foreach ((double rating, double times) in new[] { (3.6, 1.0), (1.2, 1.0) })
        {
            ComparisonConditions conditions = new(3.6, rating);
            SiliconComparison silicon = SiliconComparison.Of(SiliconComparison.Rate(analysis, conditions), Mode.DefaultName, conditions);
            ModeComparison plain = ModeComparison.Of(analysis.Modes[0].Require(), conditions);
            Assert.Equal(times * plain.SlowSwitchingLimit.BestSplitOhms!.Value, silicon.SlowSwitchingLimit.BestSplitOhms!.Value, 1e-12);
            Assert.Equal(rating > 2.4 ? 1 : 2, silicon.MaximumStackCount);
            Assert.Equal(rating > 2.4, plain.FastSwitchingLimit.BestSplitOhms!.Value > silicon.FastSwitchingLimit.BestSplitOhms!.Value - 1e-9);
        }
    }

    // charged in a quarter and discharged in the rest of the period the capacitor carries no load
    [Fact]
    public void A_mode_that_carries_no_load_has_undetermined_limits()
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(InductorFed.Behind(SeriesParallel.StepDown(2)).WithDuties(new(1, 4), new(3, 4)));
        ComparisonConditions conditions = new(3, 3);
        SiliconComparison silicon = SiliconComparison.Of(SiliconComparison.Rate(analysis, conditions), Mode.DefaultName, conditions);
        Assert.Null(silicon.SlowSwitchingLimit.OwnProportionsOhms);
        Assert.Null(silicon.FastSwitchingLimit.BestSplitOhms);
        Assert.Equal(analysis.Converter.Switches.Select(s => s.Name), silicon.FastSwitchingLimit.Undetermined);
    }

    [Fact]
    public void A_mode_without_a_name_or_totals_out_of_range_are_refused()
    {
        ConverterRatings ratings = Ratings(2.4);
        Assert.Throws<ArgumentException>(() => SiliconComparison.Of(ratings, "other", 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SiliconComparison.Of(ratings, Mode.DefaultName, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => SiliconComparison.Of(ratings, Mode.DefaultName, 1, double.NaN));
    }

    private static SiliconComparison Compare(double inputVolts) =>
        SiliconComparison.Of(Ratings(inputVolts), Mode.DefaultName, 1e-7, 4 * 300 * 0.4e-12, 1e6);

    private static ConverterRatings Ratings(double inputVolts) => ConverterRatings.Of(
        ConverterStress.Of(ConverterAnalysis.Of(SeriesParallel.StepDown(2)), new Interval<double>(1, inputVolts)), s_limits);
}
