using System.Text;

namespace ScNet;

/// <summary>Text of a user inside a message: in quotation marks, on one line and never longer than a line.</summary>
internal static class Quoted
{
    private const int MaximumLength = 60;
    private const int MaximumCount = 8;

    public static string Name(string text) => $"'{Plain(text)}'";

    public static string Plain(string text)
    {
        int length = Math.Min(text.Length, MaximumLength);
        StringBuilder plain = new(length + 1);
        for (int i = 0; i < length; i++)
        {
            char c = text[i];
            plain.Append(char.IsControl(c) || char.IsSurrogate(c) && !IsPaired(text, i) ? '\uFFFD' : c);
        }

        return length < text.Length ? plain.Append('…').ToString() : plain.ToString();
    }

    /// <summary>The first few of many, in quotation marks.</summary>
    public static string List(IReadOnlyCollection<string> texts)
    {
        string shown = string.Join(", ", texts.Take(MaximumCount).Select(Name));
        return texts.Count > MaximumCount ? $"{shown} and {texts.Count - MaximumCount} more" : shown;
    }

    private static bool IsPaired(string text, int index) => char.IsHighSurrogate(text[index])
        ? index + 1 < Math.Min(text.Length, MaximumLength) && char.IsLowSurrogate(text[index + 1])
        : index > 0 && char.IsHighSurrogate(text[index - 1]);
}
