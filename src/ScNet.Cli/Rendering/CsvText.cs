using System.Globalization;

namespace ScNet.Cli.Rendering;

/// <summary>Comma-separated values as in RFC 4180, but with "\n" line ends.</summary>
internal static class CsvText
{
    public static void WriteLine(TextWriter output, IEnumerable<string> fields) =>
        output.WriteLine(string.Join(',', fields.Select(Quote)));

    /// <summary>A number that reads back as the same double, with a point in every culture; empty where it is not finite.</summary>
    public static string Number(double value) => double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) : string.Empty;

    private static string Quote(string field) => field.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? field
        : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
