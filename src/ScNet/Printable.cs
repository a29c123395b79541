using System.Globalization;
using System.Text;

namespace ScNet;

/// <summary>Text on one line: a name may hold any character, but must not break a line, a table, a terminal or a document.</summary>
internal static class Printable
{
    private const string Unknown = "\uFFFD";

    /// <summary>The text with everything that does not show, or moves what stands around it, as its code: control, format and line-breaking characters and halves of characters as \uXXXX.</summary>
    public static string Of(string text) => Replaced(text, static code => code > char.MaxValue ? FormattableString.Invariant($"\\U{code:X8}") : FormattableString.Invariant($"\\u{code:X4}"));

    /// <summary>The same with the sign for an unknown character in the place of each, for a picture that has room for one.</summary>
    public static string Signs(string text) => Replaced(text, static _ => Unknown);

    private static string Replaced(string text, Func<int, string> replacement)
    {
        StringBuilder? result = null;
        for (int i = 0; i < text.Length;)
        {
            bool isWhole = Rune.DecodeFromUtf16(text.AsSpan(i), out Rune rune, out int length) == System.Buffers.OperationStatus.Done;
            if (!isWhole || !Shows(rune))
            {
                result ??= new StringBuilder(text.Length + 16).Append(text, 0, i);
                result.Append(replacement(isWhole ? rune.Value : text[i]));
            }
            else
            {
                result?.Append(text, i, length);
            }

            i += length;
        }

        return result?.ToString() ?? text;
    }

    /// <summary>Whether a character shows, and leaves what stands around it where it is.</summary>
    /// <remarks>The last two of each plane are no characters, and XML forbids those of the first.</remarks>
    public static bool Shows(Rune rune) => (rune.Value & 0xFFFE) != 0xFFFE && Rune.GetUnicodeCategory(rune)
        is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
