using System.Text;

namespace ScNet.Derivations.Expressions;

/// <summary>Writes sums in TeX's math language.</summary>
internal static class ExpressionLatex
{
    private const string Product = "\\,";

    public static string Write(IReadOnlyList<Term> terms)
    {
        if (terms.Count == 0)
        {
            return "0";
        }

        StringBuilder text = new();
        foreach (Term term in terms)
        {
            text.Append(Write(term, isFirst: text.Length == 0));
        }

        return text.ToString();
    }

    /// <summary>One term with its sign; the sign of a first positive term is left out.</summary>
    public static string Write(Term term, bool isFirst)
    {
        TermParts parts = new(term);
        string sign = isFirst ? (parts.IsNegative ? "-" : string.Empty) : parts.IsNegative ? " - " : " + ";
        return sign + Write(parts);
    }

    private static string Write(TermParts parts)
    {
        List<string> above = [.. parts.Above.Select(f => SymbolNotation.ToLatex(f.Symbol, f.Power))];
        if (!parts.IsWholeFraction)
        {
            string coefficient = parts.Denominator.IsOne
                ? TermParts.Digits(parts.Numerator)
                : $"\\frac{{{TermParts.Digits(parts.Numerator)}}}{{{TermParts.Digits(parts.Denominator)}}}";
            return string.Join(Product, coefficient == "1" && above.Count > 0 ? above : [coefficient, .. above]);
        }

        if (!parts.Numerator.IsOne || above.Count == 0)
        {
            above.Insert(0, TermParts.Digits(parts.Numerator));
        }

        List<string> below = [.. parts.Below.Select(f => SymbolNotation.ToLatex(f.Symbol, f.Power))];
        if (!parts.Denominator.IsOne)
        {
            below.Insert(0, TermParts.Digits(parts.Denominator));
        }

        return $"\\frac{{{string.Join(Product, above)}}}{{{string.Join(Product, below)}}}";
    }
}
