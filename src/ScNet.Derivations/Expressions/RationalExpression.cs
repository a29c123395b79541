using System.Collections.Immutable;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// A quotient of two sums with whole coefficients and no common factor, such as D1·D3/(D1 + D3). Immutable, with
/// structural equality.
/// </summary>
[ShownAsText("One expression fits in a line.")]
public sealed class RationalExpression : IEquatable<RationalExpression>
{
    internal RationalExpression(Expression numerator, Expression denominator)
    {
        Numerator = numerator;
        Denominator = denominator;
    }

    /// <summary>What stands above the bar.</summary>
    public Expression Numerator { get; }

    /// <summary>What stands below the bar: never zero, its constant, or else its first coefficient, positive; 1 in a sum that is no fraction.</summary>
    public Expression Denominator { get; }

    // a denominator of one term is as good as a power in every term
    private bool IsSum => Denominator.Terms.Length == 1 && (Denominator.Terms[0].Factors.IsEmpty || Numerator.Terms.Length <= 1);

    private Expression Sum => IsSum
        ? Numerator * Expression.Of(new Term(
            Fraction.One / Denominator.Terms[0].Coefficient, [.. Denominator.Terms[0].Factors.Select(f => f with { Power = -f.Power })]))
        : throw new InvalidOperationException("The quotient is no sum.");

    /// <summary>The value for given values of the symbols.</summary>
    /// <param name="value">Gives the value of a symbol.</param>
    public double Evaluate(Func<Symbol, double> value) => Numerator.Evaluate(value) / Denominator.Evaluate(value);

    /// <summary>The exact value for given values of the symbols.</summary>
    /// <param name="value">Gives the value of a symbol.</param>
    /// <exception cref="DivideByZeroException">The denominator is zero there.</exception>
    public Fraction EvaluateExactly(Func<Symbol, Fraction> value)
    {
        ArgumentNullException.ThrowIfNull(value);
        Fraction below = Exact(Denominator, value);
        return below.IsZero ? throw new DivideByZeroException($"{Denominator} is zero.") : (Exact(Numerator, value) / below).Reduce();
    }

    /// <summary>The quotient in TeX's math language, without delimiters.</summary>
    public string ToLatex() => IsSum ? ExpressionLatex.Write(Written(Sum)) : $"\\frac{{{ExpressionLatex.Write(Written(Numerator))}}}{{{ExpressionLatex.Write(Written(Denominator))}}}";

    /// <summary>The quotient in MathML Core: a math element with its namespace, without line breaks.</summary>
    public string ToMathML() => ExpressionMathML.Document(MathML());

    /// <inheritdoc/>
    public bool Equals(RationalExpression? other) => other is not null && Numerator.Equals(other.Numerator) && Denominator.Equals(other.Denominator);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as RationalExpression);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Numerator, Denominator);

    /// <summary>The quotient in plain text: "D1·D3/(D1 + D3)".</summary>
    public override string ToString() => IsSum ? ExpressionText.Write(Written(Sum)) : $"{InBrackets(Numerator, false)}/{InBrackets(Denominator, true)}";

    internal System.Xml.Linq.XElement MathML() => IsSum
        ? ExpressionMathML.Write(Written(Sum))
        : ExpressionMathML.Element("mfrac", ExpressionMathML.Write(Written(Numerator)), ExpressionMathML.Write(Written(Denominator)));

    private static string InBrackets(Expression sum, bool isBelow) =>
        sum.Terms.Length == 1 && (!isBelow || (sum.Terms[0].Factors.Length == 1 && sum.Terms[0].Coefficient == Fraction.One)) ? sum.ToString() : $"({ExpressionText.Write(Written(sum))})";

    // as hands write it: 1 - D, not -D + 1
    private static ImmutableArray<Term> Written(Expression sum) => sum.Terms is [.., { Factors.IsEmpty: true } constant] terms
        ? [constant, .. terms[..^1]]
        : sum.Terms;

    private static Fraction Exact(Expression sum, Func<Symbol, Fraction> value)
    {
        Fraction total = Fraction.Zero;
        foreach (Term term in sum.Terms)
        {
            Fraction product = term.Coefficient;
            foreach (Factor factor in term.Factors)
            {
                product *= Fraction.Pow(value(factor.Symbol), factor.Power);
            }

            total += product;
        }

        return total.Reduce();
    }
}
