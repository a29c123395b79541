using System.Globalization;

namespace ScNet.Cli.Rendering;

/// <summary>
/// The comparison as comma-separated values (RFC 4180, but with "\n" line ends): one header line, one
/// line per netlist and mode, an empty field for what is undetermined or has no result.
/// </summary>
internal static class ComparisonCsv
{
    public static void Write(TextWriter output, IEnumerable<ComparisonRow> rows)
    {
        WriteLine(output, ["file", "converter", "mode", "status", .. ComparisonColumns.All.Select(c => c.Header)]);
        foreach (ComparisonRow row in rows)
        {
            WriteLine(output, [
                row.File.Path,
                row.Mode?.Converter.Name ?? string.Empty,
                row.Mode?.Analysis.Mode.Name ?? string.Empty,
                row.Mode?.Comparison is null ? "error" : "ok",
                .. ComparisonColumns.All.Select(c => row.Mode?.Comparison is { } comparison ? Number(c.Value(comparison)) : string.Empty),
            ]);
        }
    }

    private static void WriteLine(TextWriter output, IEnumerable<string> fields) =>
        output.WriteLine(string.Join(',', fields.Select(Quote)));

    private static string Quote(string field) => field.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? field
        : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? string.Empty;
}
