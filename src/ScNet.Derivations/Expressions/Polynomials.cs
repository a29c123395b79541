using System.Diagnostics.CodeAnalysis;
using System.Numerics;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// Exact arithmetic of polynomials in several symbols: expressions whose powers are positive. Ends with a
/// <see cref="PolynomialLimitException"/> before it costs too much.
/// </summary>
/// <remarks>
/// The order of terms in an expression is the lexicographic one of polynomials, so that the first term of a product is the
/// product of the first terms. Greatest common divisors by primitive remainders, one symbol after another: D. E. Knuth, The
/// Art of Computer Programming 2, section 4.6.1 (from memory).
/// </remarks>
internal sealed class Polynomials
{
    private static readonly Expression s_one = Expression.Of(Fraction.One);

    private long _left = 2_000_000;

    /// <summary>The product.</summary>
    public Expression Product(Expression left, Expression right)
    {
        Spend((long)left.Terms.Length * right.Terms.Length);
        return left * right;
    }

    /// <summary>The quotient; false where the division leaves a remainder.</summary>
    public bool TryDivide(Expression dividend, Expression divisor, [NotNullWhen(true)] out Expression? quotient)
    {
        quotient = null;
        List<Expression> parts = [];
        Term lead = divisor.Terms[0];
        for (Expression rest = dividend; !rest.IsZero;)
        {
            if (Ratio(rest.Terms[0], lead) is not { } part)
            {
                return false;
            }

            parts.Add(part);
            rest -= Product(part, divisor);
        }

        quotient = Expression.Sum(parts);
        return true;
    }

    /// <summary>The quotient of a division that leaves no remainder.</summary>
    public Expression Quotient(Expression dividend, Expression divisor) => TryDivide(dividend, divisor, out Expression? quotient)
        ? quotient
        : throw new ArgumentException($"Expected a multiple of {divisor}, but got {dividend}.", nameof(dividend));

    /// <summary>The greatest common divisor, its first coefficient 1; zero where both are.</summary>
    public Expression Gcd(Expression left, Expression right)
    {
        if (left.IsZero || right.IsZero)
        {
            return Monic(left.IsZero ? right : left);
        }

        Symbol[] symbols = [.. left.Symbols.Concat(right.Symbols)];
        if (left.Symbols.IsEmpty || right.Symbols.IsEmpty)
        {
            return s_one;
        }

        Symbol main = symbols.Aggregate((a, b) => Symbol.Compare(a, b) <= 0 ? a : b);
        Expression leftContent = Content(left, main), rightContent = Content(right, main);
        Expression content = Gcd(leftContent, rightContent);
        (Expression a, Expression b) = (Quotient(left, leftContent), Quotient(right, rightContent));
        while (!b.IsZero)
        {
            if (Degree(a, main) < Degree(b, main))
            {
                (a, b) = (b, a);
                continue;
            }

            if (Degree(b, main) == 0)
            {
                // primitive without the main symbol: a unit
                return content;
            }

            Expression rest = Remainder(a, b, main);
            (a, b) = (b, rest.IsZero ? rest : Quotient(rest, Content(rest, main)));
        }

        return Monic(Product(content, a));
    }

    /// <summary>Both without common factors, with whole coefficients.</summary>
    public (Expression Numerator, Expression Denominator) Reduced(Expression numerator, Expression denominator)
    {
        if (numerator.IsZero)
        {
            return (numerator, s_one);
        }

        Expression common = Gcd(numerator, denominator);
        return Whole(Quotient(numerator, common), Quotient(denominator, common));
    }

    /// <summary>The same quotient with the smallest whole coefficients.</summary>
    public static (Expression Numerator, Expression Denominator) Whole(Expression numerator, Expression denominator)
    {
        BigInteger common = BigInteger.One, content = BigInteger.Zero;
        Term[] all = [.. numerator.Terms, .. denominator.Terms];
        foreach (Term term in all)
        {
            common *= term.Coefficient.Denominator / BigInteger.GreatestCommonDivisor(common, term.Coefficient.Denominator);
        }

        foreach (Term term in all)
        {
            content = BigInteger.GreatestCommonDivisor(content, term.Coefficient.Numerator * (common / term.Coefficient.Denominator));
        }

        Fraction sign = (denominator.Terms[^1].Factors.IsEmpty ? denominator.Terms[^1] : denominator.Terms[0]).Coefficient;
        Expression factor = Expression.Of(new Fraction(sign.IsNegative ? -common : common, content, true));
        return (numerator * factor, denominator * factor);
    }

    /// <summary>The highest power of a symbol.</summary>
    public static int Degree(Expression polynomial, Symbol symbol) => polynomial.Terms.Length == 0 ? 0 : polynomial.Terms.Max(t => PowerOf(t, symbol));

    private static Expression Monic(Expression polynomial) =>
        polynomial.IsZero ? polynomial : polynomial * Expression.Of(Fraction.One / polynomial.Terms[0].Coefficient);

    private static int PowerOf(Term term, Symbol symbol) => term.Factors.FirstOrDefault(f => f.Symbol.Equals(symbol)).Power;

    private static Expression? Ratio(Term above, Term below)
    {
        Term inverse = new(Fraction.One / below.Coefficient, [.. below.Factors.Select(f => f with { Power = -f.Power })]);
        Term ratio = above.Times(inverse);
        return ratio.Factors.Any(f => f.Power < 0) ? null : Expression.Of(ratio);
    }

    /// <summary>What multiplies a power of a symbol.</summary>
    public static Expression Coefficient(Expression polynomial, Symbol symbol, int power) =>
        Expression.Sum(polynomial.Terms.Where(t => PowerOf(t, symbol) == power).Select(t => Expression.Of(t) * Expression.Of(symbol, -power)));

    private Expression Content(Expression polynomial, Symbol symbol)
    {
        Expression content = Expression.Zero;
        foreach (int power in polynomial.Terms.Select(t => PowerOf(t, symbol)).Distinct().Order())
        {
            content = Gcd(content, Coefficient(polynomial, symbol, power));
            if (content.Equals(s_one))
            {
                break;
            }
        }

        return content;
    }

    private Expression Remainder(Expression dividend, Expression divisor, Symbol symbol)
    {
        int degree = Degree(divisor, symbol);
        Expression lead = Coefficient(divisor, symbol, degree), rest = dividend;
        while (!rest.IsZero && Degree(rest, symbol) is int own && own >= degree)
        {
            Expression shifted = Product(Coefficient(rest, symbol, own), divisor) * Expression.Of(symbol, own - degree);
            rest = Product(rest, lead) - shifted;
        }

        return rest;
    }

    private void Spend(long terms)
    {
        _left -= terms + 1;
        if (_left < 0)
        {
            throw new PolynomialLimitException();
        }
    }
}
