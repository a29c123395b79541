using System.Globalization;
using System.Numerics;

namespace ScNet.Derivations.Expressions;

/// <summary>A term split for writing: sign, whole numbers and powers above and below the bar.</summary>
internal sealed class TermParts
{
    public TermParts(Term term)
    {
        IsNegative = term.Coefficient.Numerator.Sign < 0;
        Numerator = BigInteger.Abs(term.Coefficient.Numerator);
        Denominator = term.Coefficient.Denominator;
        Above = [.. term.Factors.Where(f => f.Power > 0)];
        Below = [.. term.Factors.Where(f => f.Power < 0).Select(f => f with { Power = -f.Power })];
    }

    public bool IsNegative { get; }

    public BigInteger Numerator { get; }

    public BigInteger Denominator { get; }

    public Factor[] Above { get; }

    public Factor[] Below { get; }

    /// <summary>Whether symbols stand below the bar, so that the whole term is one fraction.</summary>
    public bool IsWholeFraction => Below.Length > 0;

    public static string Digits(BigInteger number) => number.ToString(CultureInfo.InvariantCulture);
}
