using ScNet.Design;

namespace ScNet.Cli.Rendering;

/// <summary>The figures of a comparison by name: the columns of the CSV output, by which rows can be sorted.</summary>
internal static class ComparisonColumns
{
    private static readonly (string Header, Func<ModeComparison, double?> Value)[] s_figures =
    [
        ("ratio", c => Number(c.Ratio)),
        ("output_voltage_volts", c => c.OutputVoltageVolts),
        ("ssl_own_proportions_ohms", c => c.SlowSwitchingLimit.OwnProportionsOhms),
        ("ssl_best_split_ohms", c => c.SlowSwitchingLimit.BestSplitOhms),
        ("fsl_own_proportions_ohms", c => c.FastSwitchingLimit.OwnProportionsOhms),
        ("fsl_best_split_ohms", c => c.FastSwitchingLimit.BestSplitOhms),
        ("capacitor_charge_voltage", c => Number(c.CapacitorChargeVoltage.Value)),
        ("switch_charge_voltage", c => Number(c.SwitchChargeVoltage.Value)),
        ("highest_blocking_volts", c => c.SwitchStress.PeakVolts),
        ("switches_over_rating", c => c.SwitchStress.Exceeding.Count),
        ("switch_largest_excess_volts", c => c.SwitchStress.MaximumExcessVolts),
        ("switches_undetermined", c => c.SwitchStress.Undetermined.Count),
        ("highest_capacitor_volts", c => c.CapacitorStress.PeakVolts),
        ("capacitors_over_rating", c => c.CapacitorStress.Exceeding.Count),
        ("capacitor_largest_excess_volts", c => c.CapacitorStress.MaximumExcessVolts),
        ("capacitors_undetermined", c => c.CapacitorStress.Undetermined.Count),
        ("capacitors", c => c.Analysis.Converter.Capacitors.Count),
        ("switches", c => c.Analysis.Converter.Switches.Count),
        ("phases", c => c.Analysis.Converter.Phases.Count),
        ("worst_bottom_plate_swing_volts", c => c.MaximumBottomPlateSwingVolts),
        ("bottom_plate_swing_weight", c => c.BottomPlateSwing.LossWeight),
        ("bottom_plates_undetermined", c => c.BottomPlateSwing.Undetermined.Count),
    ];

    private static readonly (string Header, Func<SiliconComparison, double?> Value)[] s_silicon =
    [
        ("ssl_equal_silicon_ohms", c => c.SlowSwitchingLimit.BestSplitOhms),
        ("fsl_equal_silicon_ohms", c => c.FastSwitchingLimit.BestSplitOhms),
        ("largest_stack", c => c.MaximumStackCount),
        ("capacitor_devices", c => c.CapacitorDeviceCount),
        ("switch_devices", c => c.SwitchDeviceCount),
        ("stacks_undetermined", c => c.Undetermined.Count),
    ];

    /// <summary>The columns that are always there, for rows with a result.</summary>
    public static IReadOnlyList<(string Header, Func<ModeRow, double?> Value)> Plain { get; } =
        [.. s_figures.Select(f => (f.Header, (Func<ModeRow, double?>)(row => f.Value(row.Comparison!))))];

    /// <summary>The same, and behind them those at equal silicon, for rows with a result at equal silicon.</summary>
    public static IReadOnlyList<(string Header, Func<ModeRow, double?> Value)> WithSilicon { get; } =
        [.. Plain, .. s_silicon.Select(f => (f.Header, (Func<ModeRow, double?>)(row => f.Value(row.Silicon!))))];

    /// <summary>The columns of a comparison.</summary>
    public static IReadOnlyList<(string Header, Func<ModeRow, double?> Value)> Of(bool isSilicon) => isSilicon ? WithSilicon : Plain;

    private static double? Number(Quantity value) => value.IsDetermined ? value.ToDouble() : null;
}
