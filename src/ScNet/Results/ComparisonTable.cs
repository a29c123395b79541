using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Stress;

namespace ScNet.Results;

/// <summary>What a row of a <see cref="ResultTable.OfComparisons"/> shows of a mode.</summary>
/// <param name="Comparison">The comparison at equal totals.</param>
/// <param name="Silicon">The comparison at equal silicon; null where it was not asked for.</param>
/// <param name="Load">The mode at a load; null where it was not asked for.</param>
/// <param name="Budget">The losses at the load with devices; null where they were not asked for, or no devices serve.</param>
public sealed record ComparedMode(ModeComparison Comparison, SiliconComparison? Silicon = null, ComparedLoad? Load = null, LossBudget? Budget = null);

/// <summary>Modes of converters side by side as a document for other programs.</summary>
internal static class ComparisonTable
{
    private static readonly Figure<ComparedMode>[] s_figures =
    [
        new("ratio", m => m.Comparison.Ratio),
        new("idealOutputVoltageVolts", m => m.Comparison.IdealOutputVoltageVolts),
        .. Limit("slowSwitchingLimit", m => m.Comparison.SlowSwitchingLimit, m => m.Comparison.LowFrequencyLimit),
        .. Limit("fastSwitchingLimit", m => m.Comparison.FastSwitchingLimit),
        .. ChargeVoltage("capacitorChargeVoltage", m => m.Comparison.CapacitorChargeVoltage),
        .. ChargeVoltage("switchChargeVoltage", m => m.Comparison.SwitchChargeVoltage),
        .. Stress("switchStress", m => m.Comparison.SwitchStress),
        .. Stress("capacitorStress", m => m.Comparison.CapacitorStress),
        new("capacitorsLeftOut", m => m.Comparison.LeftOut, HasColumn: false),
        new("capacitorCount", m => m.Comparison.Analysis.Converter.Capacitors.Count),
        new("switchCount", m => m.Comparison.Analysis.Converter.Switches.Count),
        new("phaseCount", m => m.Comparison.Analysis.Converter.Phases.Count),
        new("bottomPlateSwing.maximumVolts", m => m.Comparison.MaximumBottomPlateSwingVolts),
        new("bottomPlateSwing.maximumCapacitors", m => m.Comparison.BottomPlateSwing.MaximumCapacitors, HasColumn: false),
        new("bottomPlateSwing.lossWeight", m => m.Comparison.BottomPlateSwing.LossWeight),
        .. Undetermined("bottomPlateSwing", m => m.Comparison.BottomPlateSwing.Undetermined),
        new("chargeSharing.ownProportionsOhms", m => m.Comparison.ChargeSharing?.OwnProportionsOhms),
        new("chargeSharing.bestSplitOhms", m => m.Comparison.ChargeSharing?.BestSplitOhms),
    ];

    private static readonly Figure<ComparedMode>[] s_silicon =
    [
        new("equalSilicon.slowSwitchingLimit.bestSplitOhms", m => m.Silicon?.SlowSwitchingLimit.BestSplitOhms) { SortValue = m => m.Silicon?.LowFrequencyLimit.BestSplitOhms },
        new("equalSilicon.fastSwitchingLimit.bestSplitOhms", m => m.Silicon?.FastSwitchingLimit.BestSplitOhms),
        new("equalSilicon.chargeSharing.bestSplitOhms", m => m.Silicon?.ChargeSharing?.BestSplitOhms),
        new("equalSilicon.maximumStackCount", m => m.Silicon?.MaximumStackCount),
        new("equalSilicon.capacitorDeviceCount", m => m.Silicon?.CapacitorDeviceCount),
        new("equalSilicon.switchDeviceCount", m => m.Silicon?.SwitchDeviceCount),
        .. Undetermined("equalSilicon", m => m.Silicon?.Undetermined ?? []),
        new("equalSilicon.stacks", m => m.Silicon is { } silicon ? StacksOf(silicon) : null, HasColumn: false),
    ];

    private static readonly Figure<ComparedMode>[] s_load =
    [
        new("atLoad.outputVoltageVolts", m => m.Load?.OutputVolts),
        new("atLoad.outputImpedanceOhms", m => m.Load?.OutputOhms),
        new("atLoad.dissipationWatts", m => m.Load?.LossWatts),
        new("atLoad.resistiveEfficiency", m => m.Load?.ResistiveEfficiency),
        new("atLoad.isOverloaded", m => m.Load?.Steady.IsOverloaded),
    ];

    private static readonly Figure<ComparedMode>[] s_budget = LossFigures.Of<ComparedMode>("budget.", m => m.Budget);

    /// <summary>The table.</summary>
    /// <param name="conditions">The conditions of all rows.</param>
    /// <param name="rows">The rows, in their order.</param>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="loadAmperes">The load current in amperes (A) of all rows; null where they are compared without load.</param>
    /// <param name="hasBudgets">Whether the rows have losses with devices.</param>
    public static ResultTable Of(
        ComparisonConditions conditions, IEnumerable<ResultRow<ComparedMode>> rows, bool hasSilicon = false, double? loadAmperes = null, bool hasBudgets = false)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentNullException.ThrowIfNull(rows);
        return ResultTable.Of(
            [
                new("inputVoltageVolts", conditions.InputVoltageVolts),
                new("deviceRatingVolts", conditions.DeviceRatingVolts),
                new("totalCapacitanceFarads", conditions.TotalCapacitanceFarads),
                new("totalConductanceSiemens", conditions.TotalConductanceSiemens),
                new("hertz", conditions.FrequencyHz),
                .. loadAmperes is { } amperes ? [new("loadCurrentAmperes", amperes)] : Array.Empty<KeyValuePair<string, object?>>(),
            ],
            FiguresOf(hasSilicon, loadAmperes is not null, hasBudgets),
            rows);
    }

    private static Figure<ComparedMode>[] FiguresOf(bool hasSilicon, bool hasLoad, bool hasBudgets) =>
        [.. s_figures, .. hasSilicon ? s_silicon : [], .. hasLoad ? s_load : [], .. hasBudgets ? s_budget : []];

    private static Figure<ComparedMode>[] Limit(string key, Func<ComparedMode, ComparedLimit> limit, Func<ComparedMode, ComparedLimit>? sorted = null) =>
    [
        new($"{key}.ownProportionsOhms", m => limit(m).OwnProportionsOhms) { SortValue = sorted is null ? null : m => sorted(m).OwnProportionsOhms },
        new($"{key}.bestSplitOhms", m => limit(m).BestSplitOhms) { SortValue = sorted is null ? null : m => sorted(m).BestSplitOhms },
        new($"{key}.dependsOnComponentValues", m => limit(m).DependsOnComponentValues, HasColumn: false),
        new($"{key}.undetermined", m => limit(m).Undetermined, HasColumn: false),
    ];

    private static Figure<ComparedMode>[] ChargeVoltage(string key, Func<ComparedMode, ChargeVoltage> measure) =>
    [
        new($"{key}.value", m => measure(m).Value),
        new($"{key}.undetermined", m => measure(m).Undetermined, HasColumn: false),
    ];

    private static Figure<ComparedMode>[] Stress(string key, Func<ComparedMode, VoltageStress> stress) =>
    [
        new($"{key}.peakVolts", m => stress(m).PeakVolts),
        new($"{key}.peakElements", m => stress(m).PeakElements, HasColumn: false),
        new($"{key}.maximumExcessVolts", m => stress(m).MaximumExcessVolts),
        new($"{key}.exceedingCount", m => stress(m).Exceeding.Count),
        new($"{key}.exceeding", m => stress(m).Exceeding, HasColumn: false),
        .. Undetermined(key, m => stress(m).Undetermined),
    ];

    private static Figure<ComparedMode>[] Undetermined(string key, Func<ComparedMode, IReadOnlyList<string>> names) =>
    [
        new($"{key}.undeterminedCount", m => names(m).Count),
        new($"{key}.undetermined", names, HasColumn: false),
    ];

    private static KeyValuePair<string, object?>[] StacksOf(SiliconComparison silicon) =>
    [
        .. silicon.Capacitors.Select(c => new KeyValuePair<string, object?>(c.Capacitor.Name, c.Stack.Count)),
        .. silicon.Ratings.Switches.Select(s => new KeyValuePair<string, object?>(s.Switch.Name, s.Stack.Count)),
    ];
}
