using System.Globalization;
using System.Text;

namespace ScNet.Derivations.Expressions;

/// <summary>Writes sums in plain text.</summary>
internal static class ExpressionText
{
    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    public static string Write(IReadOnlyList<Term> terms)
    {
        if (terms.Count == 0)
        {
            return "0";
        }

        StringBuilder text = new();
        foreach (Term term in terms)
        {
            TermParts parts = new(term);
            text.Append(text.Length == 0 ? (parts.IsNegative ? "-" : string.Empty) : parts.IsNegative ? " - " : " + ");
            text.Append(Write(parts));
        }

        return text.ToString();
    }

    private static string Write(TermParts parts)
    {
        List<string> above = [.. parts.Above.Select(Write)];
        if (!parts.IsWholeFraction)
        {
            string coefficient = parts.Denominator.IsOne
                ? TermParts.Digits(parts.Numerator)
                : $"{TermParts.Digits(parts.Numerator)}/{TermParts.Digits(parts.Denominator)}";
            return string.Join('·', coefficient == "1" && above.Count > 0 ? above : [coefficient, .. above]);
        }

        if (!parts.Numerator.IsOne || above.Count == 0)
        {
            above.Insert(0, TermParts.Digits(parts.Numerator));
        }

        List<string> below = [.. parts.Below.Select(Write)];
        if (!parts.Denominator.IsOne)
        {
            below.Insert(0, TermParts.Digits(parts.Denominator));
        }

        return $"{string.Join('·', above)}/{(below.Count == 1 ? below[0] : $"({string.Join('·', below)})")}";
    }

    private static string Write(Factor factor) => factor.Power == 1
        ? factor.Symbol.Name
        : factor.Symbol.Name + string.Concat(factor.Power.ToString(CultureInfo.InvariantCulture).Select(d => Superscripts[d - '0']));
}
