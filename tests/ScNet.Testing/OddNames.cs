using System.Globalization;

namespace ScNet.Testing;

/// <summary>Names that a document may hold, and that every output has to survive.</summary>
internal static class OddNames
{
    /// <summary>Formulas of spreadsheets, commands of terminals, markup, marks of direction, line ends, what is no character, and plain text that looks like one of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "=1+1", "+SUM(A1)", "-x", "@now", "\t=1", "\r=2", "\n=3", " =4", "\uFF1D5", "-3", "-1/2", "'quoted'",
        "\u001b[31mred", "\u009b2J", "\u001b]0;title\u0007", "a\bb", "\0", "\u007f", "a\r\nb", "\u2028", "\u2029", "\u0085",
        "<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "a&amp;b", "\"'`", "]]>", "--><b>", "</style>", "{{1}}",
        "\u202Etxt.exe", "\u200Fa", "\u2067b", "\u061C", "\uFEFFc", "\u200Bd", "\uFFFE", "\uFFFFe", "\uFDD0", "\U000E0041\U000E0042", "\U0001FFFE",
        "a,b\"c;d", "\\input{x}%$#_^~&", "\U0001F600", "\u05E9\u05DC\u05D5\u05DD", "e\u0301", "|a|", "1. b", "name.with = 1",
    ];

    /// <summary>One of each sort.</summary>
    public static IReadOnlyList<string> Modes { get; } =
    [
        "=1+1", "-x", "@now", "-3", "-1/2", "\u001b[31mred", "\u009b2J", "a\r\nb", "\u2028", "<script>alert(1)</script>", "a&amp;b", "]]>", "\u202Etxt.exe", "\uFFFE", "\U000E0041\U000E0042", "a,b\"c;d", "\U0001F600",
    ];

    /// <summary>Four capacitors in series, then in parallel: every element, node, phase and mode has an odd name.</summary>
    public static Converter Converter { get; } = Built(hasModes: true);

    /// <summary>The same with its one mode written at the switches.</summary>
    public static Converter Single { get; } = Built(hasModes: false);

    /// <summary>What a text holds that does not show or moves its surroundings, line ends "\n" left out.</summary>
    public static IEnumerable<string> Hidden(string text)
    {
        for (int i = 0; i < text.Length; i++)
        {
            bool isPair = char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]);
            int code = isPair ? char.ConvertToUtf32(text[i], text[i + 1]) : text[i];
            UnicodeCategory category = CharUnicodeInfo.GetUnicodeCategory(text, i);
            if ((char.IsSurrogate(text[i]) && !isPair) || code % 0x10000 >= 0xFFFE || (code != '\n' && category
                is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator))
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"U+{code:X4} at {i}");
            }

            i += isPair ? 1 : 0;
        }
    }

    private static Converter Built(bool hasModes)
    {
        const int Count = 4;
        Queue<string> names = new(All);
        string input = $"in{All[12]}", output = All[30];
        string[] top = [.. Enumerable.Range(0, Count).Select(i => $"p{All[2 * i]}")], bottom = [.. Enumerable.Range(0, Count).Select(i => $"{All[(2 * i) + 22]}n")];
        ConverterBuilder builder = ScNet.Converter.Create("=\"\u001b[1m<b>\u202E&").Input(input).Output(output).PhaseNames("=charge\n", "<i>\u202Ddischarge");
        List<(string Switch, PhaseSet On)> closed = [];
        for (int i = 0; i < Count; i++)
        {
            builder.Capacitor(names.Dequeue(), top[i], bottom[i], 1e-9, 0.01);
        }

        Switch(input, top[0], 1);
        for (int i = 0; i < Count; i++)
        {
            Switch(bottom[i], i + 1 < Count ? top[i + 1] : output, 1);
            Switch(top[i], output, 2);
            Switch(bottom[i], ScNet.Converter.ReferenceNode, 2);
        }

        foreach (string mode in hasModes ? Modes : [])
        {
            builder.Mode(mode, [.. closed]);
        }

        return builder.Build();

        void Switch(string from, string to, int phase)
        {
            string name = names.Dequeue();
            builder.Switch(name, from, to, hasModes ? default(PhaseSet) : phase, ohms: 2);
            closed.Add((name, phase));
        }
    }
}
