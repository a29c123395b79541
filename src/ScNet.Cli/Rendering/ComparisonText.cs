using ScNet.Design;

namespace ScNet.Cli.Rendering;

/// <summary>The comparison for people: one row per netlist and mode, what the columns mean, and what needs a note.</summary>
internal static class ComparisonText
{
    private static readonly string[] s_legend =
    [
        "ratio, Vout   ideal output voltage per volt of input, and in volts",
        "SSL, FSL      slow- and fast-switching limit of the output impedance at the totals above;",
        "              own: the netlist's values scaled to the total, best: the split with the least impedance",
        "QV cap, sw    charge times voltage handled by capacitors and switches, per unit of output charge and volt of output",
        "Vsw, Vcap     highest blocking voltage of a switch, highest voltage of a capacitor",
        "over          how many of them exceed the rating, and by how much at most",
        "?, ≥, ~       undetermined; a lower bound, as others are undetermined; an estimate, as charges depend on component values",
    ];

    public static void Write(TextWriter output, ComparisonConditions conditions, IReadOnlyList<FileComparison> comparisons, IEnumerable<ComparisonRow> sorted)
    {
        ModeRow[] rows = [.. sorted.Select(r => r.Mode).OfType<ModeRow>()];
        if (rows.Length == 0)
        {
            return;
        }

        output.WriteLine(
            $"{EngineeringNumber.Of(conditions.InputVoltageVolts, "V")} input, "
            + $"{EngineeringNumber.Of(conditions.DeviceRatingVolts, "V")} rating, "
            + $"{EngineeringNumber.Of(conditions.TotalCapacitanceFarads, "F")} of capacitance, "
            + $"{EngineeringNumber.Of(conditions.TotalConductanceSiemens, "S")} of switch conductance, "
            + $"{EngineeringNumber.Of(conditions.FrequencyHz, "Hz")}");
        output.WriteLine();
        TextTable table = new TextTable(indent: string.Empty)
            .Words("netlist").Words("mode").Figures("ratio").Figures("Vout")
            .Figures("SSL own").Figures("SSL best").Figures("FSL own").Figures("FSL best")
            .Figures("QV cap").Figures("QV sw").Figures("Vsw").Words("over").Figures("Vcap").Words("over");
        foreach (ModeRow row in rows)
        {
            table.Row([NameOf(row, comparisons), row.Analysis.Mode.Name, .. Figures(row.Comparison)]);
        }

        table.Write(output);
        output.WriteLine();
        foreach (string line in s_legend)
        {
            output.WriteLine(line);
        }

        WriteNotes(output, comparisons);
    }

    // two files may hold converters of the same name
    private static string NameOf(ModeRow row, IReadOnlyList<FileComparison> comparisons) =>
        comparisons.Count(c => c.File.Reading.Converter?.Name == row.Converter.Name) > 1
            ? $"{row.Converter.Name} ({row.File.Path})"
            : row.Converter.Name;

    private static IEnumerable<string> Figures(ModeComparison? comparison) => comparison is null
        ? ["no result", .. Enumerable.Repeat("-", 11)]
        :
        [
            QuantityText.Short(comparison.Ratio),
            EngineeringNumber.Of(comparison.OutputVoltageVolts, "V"),
            EngineeringNumber.Of(comparison.SlowSwitchingLimit.OwnProportionsOhms, "Ω"),
            Best(comparison.SlowSwitchingLimit),
            EngineeringNumber.Of(comparison.FastSwitchingLimit.OwnProportionsOhms, "Ω"),
            Best(comparison.FastSwitchingLimit),
            QuantityText.Decimal(comparison.CapacitorUtilisation.Value),
            QuantityText.Decimal(comparison.SwitchUtilisation.Value),
            .. Stress(comparison.SwitchStress),
            .. Stress(comparison.CapacitorStress),
        ];

    private static string Best(ComparedLimit limit)
    {
        string text = EngineeringNumber.Of(limit.BestSplitOhms, "Ω");
        return limit is { DependsOnComponentValues: true, BestSplitOhms: not null } ? $"~{text}" : text;
    }

    private static string[] Stress(VoltageStress stress)
    {
        string bound = stress.Undetermined.Count > 0 ? "≥" : string.Empty;
        string highest = stress.HighestVolts is { } volts ? $"{bound}{EngineeringNumber.Of(volts, "V")}"
            : stress.Undetermined.Count > 0 ? "?" : "-";
        string excess = stress.Exceeding.Count > 0 ? $" +{EngineeringNumber.Of(stress.LargestExcessVolts, "V")}" : string.Empty;
        return [highest, $"{bound}{stress.Exceeding.Count}{excess}"];
    }

    private static void WriteNotes(TextWriter output, IReadOnlyList<FileComparison> comparisons)
    {
        List<string> notes = [];
        foreach (FileComparison file in comparisons)
        {
            notes.AddRange((file.File.Reading.Converter?.Warnings ?? []).Select(file.File.Describe));
            foreach (ModeRow row in file.Rows)
            {
                string place = $"{file.File.Path}, mode {row.Analysis.Mode.Name}: ";
                if (row.Comparison is { } comparison)
                {
                    Note(notes, place + "over the rating", comparison.SwitchStress.Exceeding, comparison.CapacitorStress.Exceeding);
                    Note(notes, place + "voltage undetermined", comparison.SwitchStress.Undetermined, comparison.CapacitorStress.Undetermined);
                }

                notes.AddRange(row.Analysis.Diagnostics.Except(row.Converter.Warnings).Select(d => place + d));
            }
        }

        if (notes.Count > 0)
        {
            output.WriteLine();
        }

        foreach (string note in notes)
        {
            output.WriteLine(Printable.Of(note));
        }
    }

    private static void Note(List<string> notes, string what, IReadOnlyList<string> switches, IReadOnlyList<string> capacitors)
    {
        string[] parts =
        [
            .. switches.Count > 0 ? [$"{Count(switches.Count, "switch", "switches")} ({string.Join(", ", switches)})"] : Array.Empty<string>(),
            .. capacitors.Count > 0 ? [$"{Count(capacitors.Count, "capacitor", "capacitors")} ({string.Join(", ", capacitors)})"] : Array.Empty<string>(),
        ];
        if (parts.Length > 0)
        {
            notes.Add($"{what}: {string.Join("; ", parts)}");
        }
    }

    private static string Count(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";
}
