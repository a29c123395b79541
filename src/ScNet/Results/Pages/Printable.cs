using System.Globalization;
using System.Text;

namespace ScNet.Results.Pages;

/// <summary>Text on one line: a name may hold any character, but must not break a line or a table.</summary>
internal static class Printable
{
    /// <summary>The text with every control, format and line-breaking character written as \uXXXX.</summary>
    public static string Of(string text)
    {
        if (!text.Any(IsUnprintable))
        {
            return text;
        }

        StringBuilder result = new();
        foreach (char c in text)
        {
            _ = IsUnprintable(c) ? result.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}") : result.Append(c);
        }

        return result.ToString();
    }

    private static bool IsUnprintable(char c) => CharUnicodeInfo.GetUnicodeCategory(c)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
