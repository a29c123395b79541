using System.Globalization;
using ScNet.Design;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.Stress;

namespace ScNet.Cli.Rendering;

/// <summary>The comparison for people: one row per netlist and mode, what the columns mean, and what needs a note.</summary>
internal static class ComparisonText
{
    private static string[] Legend(bool isSilicon, bool isLoaded) =>
    [
        "ratio, Vout   ideal output voltage per volt of input, and in volts",
        "SSL, FSL      slow- and fast-switching limit of the output impedance at the totals above;",
        .. isSilicon
            ?
            [
                "              best: the split with the least impedance, area: the same where each element is a stack that withstands its",
                "              voltages, and a stack of n devices has 1/n² of what its area gives in one",
                "n             most devices in series of any element, for its voltages in every mode and at every change between two",
            ]
            : new[] { "              own: the netlist's values scaled to the total, best: the split with the least impedance" },
        .. isLoaded
            ?
            [
                "V, η at load  output voltage and efficiency at the load above, the netlist's values scaled to the totals: conduction, charge",
                "              redistribution and the netlist's own plates and parasitic capacitances; no gate drive, switching or leakage",
            ]
            : Array.Empty<string>(),
        "QV cap, sw    charge times voltage handled by capacitors and switches, per unit of output charge and volt of output",
        "Vsw, Vcap     highest blocking voltage of a switch, highest voltage of a capacitor",
        "over          how many of them exceed the rating, and by how much at most",
        "?, ≥, ~       undetermined; a lower bound, as others are undetermined; an estimate, as charges depend on component values",
    ];

    public static void Write(TextWriter output, ComparisonConditions conditions, bool isSilicon, double? loadAmperes, IReadOnlyList<FileComparison> comparisons, IEnumerable<ResultRow<ComparedMode>> sorted)
    {
        ResultRow<ComparedMode>[] rows = [.. sorted.Where(r => r.Outcome is not null)];
        if (rows.Length == 0)
        {
            return;
        }

        output.WriteLine(
            $"{EngineeringNumber.Of(conditions.InputVoltageVolts, "V")} input, "
            + $"{EngineeringNumber.Of(conditions.DeviceRatingVolts, "V")} rating, "
            + $"{EngineeringNumber.Of(conditions.TotalCapacitanceFarads, "F")} of capacitance, "
            + $"{EngineeringNumber.Of(conditions.TotalConductanceSiemens, "S")} of switch conductance, "
            + $"{EngineeringNumber.Of(conditions.FrequencyHz, "Hz")}"
            + (loadAmperes is { } amperes ? $", {EngineeringNumber.Of(amperes, "A")} load" : string.Empty));
        output.WriteLine();
        TextTable table = new TextTable(indent: string.Empty)
            .Words("netlist").Words("mode").Figures("ratio").Figures("Vout")
            .Figures(isSilicon ? ["SSL area", "SSL best", "FSL area", "FSL best", "n"] : ["SSL own", "SSL best", "FSL own", "FSL best"])
            .Figures(loadAmperes is null ? [] : ["V at load", "η at load"])
            .Figures("QV cap").Figures("QV sw").Figures("Vsw").Words("over").Figures("Vcap").Words("over");
        foreach (ResultRow<ComparedMode> row in rows)
        {
            table.Row([NameOf(row, comparisons), row.Outcome!.Mode.Name, .. Figures(row, isSilicon, loadAmperes is not null)]);
        }

        table.Write(output);
        output.WriteLine();
        foreach (string line in Legend(isSilicon, loadAmperes is not null))
        {
            output.WriteLine(line);
        }

        if (rows.Any(r => r.Result?.Comparison.ChargeSharing is not null))
        {
            output.WriteLine("*             charge sharing instead of SSL: what is left of it as held currents (load, inductors) carry their share steadily;");
            output.WriteLine("              with all charge as impulses it is slowSwitchingLimit of the JSON and CSV output");
        }

        ComparisonNotes.Write(output, comparisons);
    }

    // two files may hold converters of the same name
    private static string NameOf(ResultRow<ComparedMode> row, IReadOnlyList<FileComparison> comparisons) =>
        comparisons.Count(c => c.File.Reading.Converter?.Name == row.Outcome!.Converter.Name) > 1
            ? $"{row.Outcome!.Converter.Name} ({row.File})"
            : row.Outcome!.Converter.Name;

    private static IEnumerable<string> Figures(ResultRow<ComparedMode> row, bool isSilicon, bool isLoaded) => row.Result is not { Comparison: var comparison } result
        ? ["no result", .. Enumerable.Repeat("-", (isSilicon ? 12 : 11) + (isLoaded ? 2 : 0))]
        :
        [
            QuantityText.Short(comparison.Ratio),
            EngineeringNumber.Of(comparison.IdealOutputVoltageVolts, "V"),
            result.Silicon is { } slow ? Shared(slow.ChargeSharing) + Bound(slow) + Best(slow.LowFrequencyLimit) : Shared(comparison.ChargeSharing) + EngineeringNumber.Of(comparison.LowFrequencyLimit.OwnProportionsOhms, "Ω"),
            Shared(comparison.ChargeSharing) + Best(comparison.LowFrequencyLimit),
            result.Silicon is { } fast ? Bound(fast) + Best(fast.FastSwitchingLimit) : EngineeringNumber.Of(comparison.FastSwitchingLimit.OwnProportionsOhms, "Ω"),
            Best(comparison.FastSwitchingLimit),
            .. result.Silicon is { } silicon ? [Bound(silicon) + Count(silicon.MaximumStackCount)] : Array.Empty<string>(),
            .. result.Load is { } load
                ? [EngineeringNumber.Of(load.OutputVolts, "V"), load.Steady.IsOverloaded ? "overload" : load.ResistiveEfficiency?.ToString("0.00 %", CultureInfo.InvariantCulture) ?? "-"]
                : Array.Empty<string>(),
            QuantityText.Decimal(comparison.CapacitorChargeVoltage.Value),
            QuantityText.Decimal(comparison.SwitchChargeVoltage.Value),
            .. Stress(comparison.SwitchStress),
            .. Stress(comparison.CapacitorStress),
        ];

    private static string Shared(ComparedLimit? sharing) => sharing is null ? string.Empty : "*";

    private static string Bound(SiliconComparison silicon) => silicon.IsLowerBound ? "≥" : string.Empty;

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Best(ComparedLimit limit)
    {
        string text = EngineeringNumber.Of(limit.BestSplitOhms, "Ω");
        return limit is { DependsOnComponentValues: true, BestSplitOhms: not null } ? $"~{text}" : text;
    }

    private static string[] Stress(VoltageStress stress)
    {
        string bound = stress.Undetermined.Count > 0 ? "≥" : string.Empty;
        string highest = stress.PeakVolts is { } volts ? $"{bound}{EngineeringNumber.Of(volts, "V")}"
            : stress.Undetermined.Count > 0 ? "?" : "-";
        string excess = stress.Exceeding.Count > 0 ? $" +{EngineeringNumber.Of(stress.MaximumExcessVolts, "V")}" : string.Empty;
        return [highest, $"{bound}{stress.Exceeding.Count}{excess}"];
    }
}
