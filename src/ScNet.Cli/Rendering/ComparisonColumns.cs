using ScNet.Design;

namespace ScNet.Cli.Rendering;

/// <summary>The figures of a comparison by name: the columns of the CSV output, by which rows can be sorted.</summary>
internal static class ComparisonColumns
{
    public static IReadOnlyList<(string Header, Func<ModeComparison, double?> Value)> All { get; } =
    [
        ("ratio", c => Number(c.Ratio)),
        ("output_voltage_volts", c => c.OutputVoltageVolts),
        ("ssl_own_proportions_ohms", c => c.SlowSwitchingLimit.OwnProportionsOhms),
        ("ssl_best_split_ohms", c => c.SlowSwitchingLimit.BestSplitOhms),
        ("fsl_own_proportions_ohms", c => c.FastSwitchingLimit.OwnProportionsOhms),
        ("fsl_best_split_ohms", c => c.FastSwitchingLimit.BestSplitOhms),
        ("capacitor_charge_voltage", c => Number(c.CapacitorUtilisation.Value)),
        ("switch_charge_voltage", c => Number(c.SwitchUtilisation.Value)),
        ("highest_blocking_volts", c => c.SwitchStress.HighestVolts),
        ("switches_over_rating", c => c.SwitchStress.Exceeding.Count),
        ("switch_largest_excess_volts", c => c.SwitchStress.LargestExcessVolts),
        ("switches_undetermined", c => c.SwitchStress.Undetermined.Count),
        ("highest_capacitor_volts", c => c.CapacitorStress.HighestVolts),
        ("capacitors_over_rating", c => c.CapacitorStress.Exceeding.Count),
        ("capacitor_largest_excess_volts", c => c.CapacitorStress.LargestExcessVolts),
        ("capacitors_undetermined", c => c.CapacitorStress.Undetermined.Count),
        ("capacitors", c => c.Analysis.Converter.Capacitors.Count),
        ("switches", c => c.Analysis.Converter.Switches.Count),
        ("phases", c => c.Analysis.Converter.Phases.Count),
        ("worst_bottom_plate_swing_volts", c => c.WorstBottomPlateSwingVolts),
        ("bottom_plate_swing_weight", c => c.BottomPlateSwing.WeightedSquare),
        ("bottom_plates_undetermined", c => c.BottomPlateSwing.Undetermined.Count),
    ];

    private static double? Number(Quantity value) => value.IsDetermined ? value.ToDouble() : null;
}
