using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace ScNet.Results.Pages;

/// <summary>Breaks a text into lines of a width: at blanks, and within a word only where it is longer than a line.</summary>
internal static partial class TextLines
{
    /// <summary>The lines without blanks at their ends; one empty line for an empty text.</summary>
    public static IReadOnlyList<string> Of(string text, int width)
    {
        if (TextWidth.Of(text) <= width)
        {
            return [text];
        }

        List<string> lines = [];
        StringBuilder line = new();
        int used = 0;
        foreach (string word in Words(text))
        {
            int length = TextWidth.Of(word);
            if (used > 0 && used + 1 + length > width)
            {
                Close();
            }
            else if (used > 0)
            {
                line.Append(' ');
                used++;
            }

            if (length <= width)
            {
                line.Append(word);
                used += length;
                continue;
            }

            for (TextElementEnumerator elements = StringInfo.GetTextElementEnumerator(word); elements.MoveNext();)
            {
                int one = TextWidth.OfElement(elements.GetTextElement());
                if (used > 0 && used + one > width)
                {
                    Close();
                }

                line.Append(elements.GetTextElement());
                used += one;
            }
        }

        Close();
        return [.. lines];

        void Close()
        {
            lines.Add(line.ToString().TrimEnd());
            line.Clear();
            used = 0;
        }
    }

    // a number and its unit are one word
    private static List<string> Words(string text)
    {
        List<string> words = [];
        foreach (string word in text.Split(' '))
        {
            if (words.Count > 0 && words[^1].Length > 0 && char.IsAsciiDigit(words[^1][^1]) && Unit().IsMatch(word))
            {
                words[^1] += $" {word}";
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    [GeneratedRegex("^([afpnµmkMGTPE]?(V|A|W|F|H|Ω|S|s|Hz)|%|h|[mµ]m²)[^a-zA-Z]?$")]
    private static partial Regex Unit();
}
