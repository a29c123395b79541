using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ScNet.Results;

/// <summary>Comma-separated values as in RFC 4180, but with "\n" line ends; the same bytes in every culture.</summary>
/// <remarks>
/// A text stands on one line, what does not show in it as its code. Where it begins like a formula it has an apostrophe before it, by which
/// spreadsheets take it as text; what is a number or a fraction with a sign begins so too, and stays as it is.
/// </remarks>
internal static partial class CsvText
{
    private const string FormulaSigns = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

    public static void AppendLine(StringBuilder text, IEnumerable<object?> cells) =>
        text.AppendJoin(',', cells.Select(c => Quote(Cell(c)))).Append('\n');

    // a number reads back as the same double; what is undetermined or infinite is an empty field
    private static string Cell(object? value) => value switch
    {
        Quantity { IsDetermined: true } quantity => Cell(quantity.ToDouble()),
        double number when double.IsFinite(number) => number.ToString("R", CultureInfo.InvariantCulture),
        int or long => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        bool flag => flag ? "true" : "false",
        string text => Guarded(Printable.Of(text)),
        _ => string.Empty,
    };

    // some spreadsheets leave out blanks before they look
    private static string Guarded(string text) =>
        text.AsSpan().TrimStart() is [var first, ..] && FormulaSigns.Contains(first, StringComparison.Ordinal) && !Number().IsMatch(text) ? "'" + text : text;

    private static string Quote(string field) => field.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? field
        : $"\"{field.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    [GeneratedRegex(@"^[+-][0-9]+(?:/[0-9]+|(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)\z")]
    private static partial Regex Number();
}
