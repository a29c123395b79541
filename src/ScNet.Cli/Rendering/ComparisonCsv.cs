using System.Globalization;
using ScNet.Design;

namespace ScNet.Cli.Rendering;

/// <summary>
/// The comparison as comma-separated values: one header line, one line per netlist and mode, an empty
/// field for what is undetermined or has no result.
/// </summary>
internal static class ComparisonCsv
{
    private static readonly (string Header, Func<ModeComparison, string> Field)[] s_columns =
    [
        ("ratio", c => Number(c.Ratio)),
        ("output_voltage_volts", c => Number(c.OutputVoltageVolts)),
        ("ssl_own_proportions_ohms", c => Number(c.SlowSwitchingLimit.OwnProportionsOhms)),
        ("ssl_best_split_ohms", c => Number(c.SlowSwitchingLimit.BestSplitOhms)),
        ("fsl_own_proportions_ohms", c => Number(c.FastSwitchingLimit.OwnProportionsOhms)),
        ("fsl_best_split_ohms", c => Number(c.FastSwitchingLimit.BestSplitOhms)),
        ("capacitor_charge_voltage", c => Number(c.CapacitorUtilisation.Value)),
        ("switch_charge_voltage", c => Number(c.SwitchUtilisation.Value)),
        ("highest_blocking_volts", c => Number(c.SwitchStress.HighestVolts)),
        ("switches_over_rating", c => Count(c.SwitchStress.Exceeding.Count)),
        ("switch_largest_excess_volts", c => Number(c.SwitchStress.LargestExcessVolts)),
        ("switches_undetermined", c => Count(c.SwitchStress.Undetermined.Count)),
        ("highest_capacitor_volts", c => Number(c.CapacitorStress.HighestVolts)),
        ("capacitors_over_rating", c => Count(c.CapacitorStress.Exceeding.Count)),
        ("capacitor_largest_excess_volts", c => Number(c.CapacitorStress.LargestExcessVolts)),
        ("capacitors_undetermined", c => Count(c.CapacitorStress.Undetermined.Count)),
    ];

    public static void Write(TextWriter output, IEnumerable<FileComparison> comparisons)
    {
        CsvText.WriteLine(output, ["file", "converter", "mode", "status", .. s_columns.Select(c => c.Header)]);
        foreach (FileComparison file in comparisons)
        {
            if (!file.File.Reading.Succeeded)
            {
                CsvText.WriteLine(output, [file.File.Path, string.Empty, string.Empty, "error", .. s_columns.Select(_ => string.Empty)]);
            }

            foreach (ModeRow row in file.Rows)
            {
                CsvText.WriteLine(output, [
                    file.File.Path,
                    row.Converter.Name,
                    row.Analysis.Mode.Name,
                    row.Comparison is null ? "error" : "ok",
                    .. s_columns.Select(c => row.Comparison is { } comparison ? c.Field(comparison) : string.Empty),
                ]);
            }
        }
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Number(Quantity value) => value.IsDetermined ? Number(value.ToDouble()) : string.Empty;

    private static string Number(double? value) => value is { } number ? CsvText.Number(number) : string.Empty;
}
