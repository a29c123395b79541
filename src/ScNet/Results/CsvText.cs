using System.Globalization;
using System.Text;

namespace ScNet.Results;

/// <summary>Comma-separated values as in RFC 4180, but with "\n" line ends; the same bytes in every culture.</summary>
internal static class CsvText
{
    public static void AppendLine(StringBuilder text, IEnumerable<object?> cells) =>
        text.AppendJoin(',', cells.Select(c => Quote(Cell(c)))).Append('\n');

    // a number reads back as the same double; what is undetermined or infinite is an empty field
    private static string Cell(object? value) => value switch
    {
        Quantity { IsDetermined: true } quantity => Cell(quantity.ToDouble()),
        double number when double.IsFinite(number) => number.ToString("R", CultureInfo.InvariantCulture),
        int or long => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        bool flag => flag ? "true" : "false",
        string text => text,
        _ => string.Empty,
    };

    private static string Quote(string field) => field.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? field
        : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
