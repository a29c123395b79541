using System.Globalization;
using System.Text;

namespace ScNet.Derivations.Expressions;

/// <summary>Writes names, which may hold any character, into plain text and LaTeX.</summary>
internal static class NameText
{
    // characters that join with an equal neighbour into another one
    private const string Ligatures = "-<>,'";

    /// <summary>The name with every character that cannot be seen or printed as its code: "a\u000Ab".</summary>
    public static string Visible(string name)
    {
        StringBuilder text = new(name.Length);
        for (int i = 0; i < name.Length; i++)
        {
            if (char.IsSurrogatePair(name, i))
            {
                text.Append(name[i]).Append(name[++i]);
            }
            else if (IsVisible(name[i]))
            {
                text.Append(name[i]);
            }
            else
            {
                text.Append(CultureInfo.InvariantCulture, $"\\u{(int)name[i]:X4}");
            }
        }

        return text.ToString();
    }

    /// <summary>The name as part of a symbol; in quotes unless it is made of letters, digits and underscores.</summary>
    public static string Quoted(string name) => IsPlain(name)
        ? name
        : $"'{Visible(name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "''", StringComparison.Ordinal))}'";

    /// <summary>Text for LaTeX outside math, or within \text.</summary>
    public static string Latex(string name)
    {
        StringBuilder text = new(name.Length);
        char before = '\0';
        foreach (char c in Visible(name))
        {
            text.Append(c switch
            {
                '\\' => "\\textbackslash{}",
                '^' => "\\textasciicircum{}",
                '~' => "\\textasciitilde{}",
                '{' or '}' or '$' or '&' or '%' or '#' or '_' => $"\\{c}",
                '`' => "{`}",
                '[' or ']' => $"{{{c}}}",
                _ when c == before && Ligatures.Contains(c, StringComparison.Ordinal) => $"{{{c}}}",
                _ => c.ToString(),
            });
            before = c;
        }

        return text.ToString();
    }

    /// <summary>The name within math, upright.</summary>
    public static string LatexMath(string name) =>
        name.All(char.IsAsciiLetterOrDigit) ? $"\\mathrm{{{name}}}" : $"\\text{{{Latex(name)}}}";

    private static bool IsPlain(string name) => name.All(c => c == '_' || char.IsLetterOrDigit(c));

    // the replacement character stands for something that could not be shown
    private static bool IsVisible(char c) => c != '\uFFFD' && char.GetUnicodeCategory(c) is not (UnicodeCategory.Control
        or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.OtherNotAssigned or UnicodeCategory.PrivateUse
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
