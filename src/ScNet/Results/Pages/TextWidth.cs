using System.Globalization;
using System.Text;

namespace ScNet.Results.Pages;

/// <summary>How many columns of a terminal a text takes.</summary>
internal static class TextWidth
{
    // what Unicode Standard Annex #11 calls wide or fullwidth, in whole blocks (from memory)
    private static readonly (int First, int Last)[] s_wide =
    [
        (0x1100, 0x115F), (0x2E80, 0x303E), (0x3041, 0xA4CF), (0xA960, 0xA97F), (0xAC00, 0xD7A3), (0xF900, 0xFAFF), (0xFE30, 0xFE6F),
        (0xFF00, 0xFF60), (0xFFE0, 0xFFE6), (0x1F300, 0x1F64F), (0x1F900, 0x1F9FF), (0x20000, 0x3FFFD),
    ];

    /// <summary>The columns of a text on one line: one for what a reader counts as one character, two for a wide one.</summary>
    public static int Of(string text)
    {
        if (Ascii.IsValid(text))
        {
            return text.Length;
        }

        int width = 0;
        for (TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(text); elements.MoveNext();)
        {
            width += OfElement(elements.GetTextElement());
        }

        return width;
    }

    /// <summary>The columns of one character as a reader counts them.</summary>
    public static int OfElement(string element) =>
        Rune.TryGetRuneAt(element, 0, out Rune rune) && Array.Exists(s_wide, w => rune.Value >= w.First && rune.Value <= w.Last) ? 2 : 1;
}
