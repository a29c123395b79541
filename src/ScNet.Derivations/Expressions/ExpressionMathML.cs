using System.Numerics;
using System.Xml.Linq;

namespace ScNet.Derivations.Expressions;

/// <summary>Writes sums in MathML Core.</summary>
internal static class ExpressionMathML
{
    private static readonly XNamespace s_namespace = "http://www.w3.org/1998/Math/MathML";

    public static string Document(params object[] content) =>
        Element("math", content).ToString(SaveOptions.DisableFormatting);

    public static XElement Element(string name, params object[] content) => new(s_namespace + name, content);

    public static XElement Operator(string sign) => Element("mo", sign);

    public static XElement Number(BigInteger number) => Element("mn", TermParts.Digits(number));

    public static XElement Write(IReadOnlyList<Term> terms)
    {
        List<XElement> row = [];
        foreach (Term term in terms)
        {
            TermParts parts = new(term);
            if (parts.IsNegative || row.Count > 0)
            {
                row.Add(Operator(parts.IsNegative ? "\u2212" : "+"));
            }

            row.AddRange(Write(parts));
        }

        return row.Count == 0 ? Number(0) : Row(row);
    }

    private static List<XElement> Write(TermParts parts)
    {
        List<XElement> above = [.. parts.Above.Select(f => SymbolNotation.ToMathML(f.Symbol, f.Power))];
        if (!parts.IsWholeFraction)
        {
            if (!parts.Denominator.IsOne)
            {
                above.Insert(0, Element("mfrac", Number(parts.Numerator), Number(parts.Denominator)));
            }
            else if (!parts.Numerator.IsOne || above.Count == 0)
            {
                above.Insert(0, Number(parts.Numerator));
            }

            return Product(above);
        }

        if (!parts.Numerator.IsOne || above.Count == 0)
        {
            above.Insert(0, Number(parts.Numerator));
        }

        List<XElement> below = [.. parts.Below.Select(f => SymbolNotation.ToMathML(f.Symbol, f.Power))];
        if (!parts.Denominator.IsOne)
        {
            below.Insert(0, Number(parts.Denominator));
        }

        return [Element("mfrac", Row(Product(above)), Row(Product(below)))];
    }

    private static List<XElement> Product(List<XElement> factors)
    {
        List<XElement> row = [];
        foreach (XElement factor in factors)
        {
            if (row.Count > 0)
            {
                row.Add(Operator("\u00B7"));
            }

            row.Add(factor);
        }

        return row;
    }

    private static XElement Row(List<XElement> row) => row.Count == 1 ? row[0] : Element("mrow", [.. row]);
}
