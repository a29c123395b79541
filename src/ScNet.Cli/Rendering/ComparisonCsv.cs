namespace ScNet.Cli.Rendering;

/// <summary>
/// The comparison as comma-separated values: one header line, one line per netlist and mode, an empty
/// field for what is undetermined or has no result.
/// </summary>
internal static class ComparisonCsv
{
    public static void Write(TextWriter output, bool isSilicon, IEnumerable<ComparisonRow> rows)
    {
        IReadOnlyList<(string Header, Func<ModeRow, double?> Value)> columns = ComparisonColumns.Of(isSilicon);
        CsvText.WriteLine(output, ["file", "converter", "mode", "status", .. columns.Select(c => c.Header)]);
        foreach (ComparisonRow row in rows)
        {
            CsvText.WriteLine(output, [
                row.File.Path,
                row.Mode?.Converter.Name ?? string.Empty,
                row.Mode?.Outcome.Mode.Name ?? string.Empty,
                row.Mode?.Comparison is null ? "error" : "ok",
                .. columns.Select(c => row.Mode is { Comparison: not null } mode ? Number(c.Value(mode)) : string.Empty),
            ]);
        }
    }

    private static string Number(double? value) => value is { } number ? CsvText.Number(number) : string.Empty;
}
