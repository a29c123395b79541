using System.Globalization;
using System.Text;

namespace ScNet.Derivations.Expressions;

/// <summary>Reads the names of symbols as <see cref="SymbolNotation"/> writes them.</summary>
internal static class SymbolReader
{
    private const string Known = "expected a symbol such as C_fly1, R_s1, ESR_fly1, C, R, ESR, f, V_in or I_out";

    private static readonly Dictionary<string, SymbolKind> s_whole = Enum.GetValues<SymbolKind>()
        .ToDictionary(kind => new Symbol(kind).Name, StringComparer.Ordinal)
        .Where(pair => !IsOfElement(pair.Value) || pair.Value is SymbolKind.Capacitance or SymbolKind.OnResistance or SymbolKind.SeriesResistance)
        .ToDictionary(StringComparer.Ordinal);

    private static readonly Dictionary<string, SymbolKind> s_letters = Enum.GetValues<SymbolKind>()
        .Where(IsOfElement).ToDictionary(kind => new Symbol(kind).Name, StringComparer.Ordinal);

    /// <summary>The symbol that starts at a position, which moves behind it.</summary>
    /// <exception cref="FormatException">There is none.</exception>
    public static Symbol Read(string text, ref int position)
    {
        int start = position;
        while (position < text.Length && IsPlain(text[position]))
        {
            position++;
        }

        string word = text[start..position];
        if (position < text.Length && text[position] == '\'' && word.EndsWith('_') && s_letters.TryGetValue(word[..^1], out SymbolKind quoted))
        {
            string name = Quoted(text, ref position);
            return new Symbol(quoted, name, Phase(text, ref position));
        }

        if (word.StartsWith('D') && int.TryParse(word.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number > 0)
        {
            return new Symbol(SymbolKind.Duty, string.Empty, number);
        }

        if (s_whole.TryGetValue(word, out SymbolKind whole))
        {
            return new Symbol(whole, string.Empty, Phase(text, ref position));
        }

        int bar = word.IndexOf('_', StringComparison.Ordinal);
        return bar > 0 && bar < word.Length - 1 && s_letters.TryGetValue(word[..bar], out SymbolKind kind)
            ? new Symbol(kind, word[(bar + 1)..], Phase(text, ref position))
            : throw Error(start, $"{Known}, but found '{(word.Length > 40 ? word[..40] + "…" : word)}'");
    }

    private static bool IsPlain(char c) => c == '_' || char.IsLetterOrDigit(c);

    private static bool IsOfElement(SymbolKind kind) => kind is SymbolKind.ElementVoltage or SymbolKind.NodePotential or SymbolKind.ElementCharge
        or SymbolKind.LoopCharge or SymbolKind.OnResistance or SymbolKind.SeriesResistance or SymbolKind.Capacitance
        or SymbolKind.InductorCurrent;

    private static int Phase(string text, ref int position)
    {
        if (position >= text.Length || text[position] != '[')
        {
            return 0;
        }

        int start = position + 1;
        int end = text.IndexOf(']', start);
        if (end < 0 || !int.TryParse(text.AsSpan(start, end - start), NumberStyles.None, CultureInfo.InvariantCulture, out int phase) || phase == 0)
        {
            throw Error(start, "expected the number of a phase, from 1, and ']'");
        }

        position = end + 1;
        return phase;
    }

    // from one quote to the other; '' is a quote, \\ a backslash and \u000A the character with that code
    private static string Quoted(string text, ref int position)
    {
        int start = position;
        StringBuilder name = new();
        for (position++; position < text.Length; position++)
        {
            char c = text[position];
            bool isPair = position + 1 < text.Length && text[position + 1] == c;
            if (c == '\'' && !isPair)
            {
                position++;
                return name.Length > 0 ? name.ToString() : throw Error(start, "expected a name between the quotes");
            }

            if (c == '\\' && !isPair)
            {
                name.Append(Code(text, position));
                position += 5;
                continue;
            }

            name.Append(c);
            position += c is '\'' or '\\' ? 1 : 0;
        }

        throw Error(start, "expected a quote at the end of the name");
    }

    private static char Code(string text, int position) =>
        position + 5 < text.Length && text[position + 1] == 'u'
            && ushort.TryParse(text.AsSpan(position + 2, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ushort code)
            ? (char)code
            : throw Error(position, "expected \\\\ or \\u and four hexadecimal digits");

    private static FormatException Error(int position, string message) =>
        new(string.Create(CultureInfo.InvariantCulture, $"Column {position + 1}: {message}."));
}
