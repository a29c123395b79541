using System.Numerics;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>
/// Arithmetic that gives up (null) before it costs too much: short texts can say huge products. The cost of an
/// operation is an upper bound, in bytes, of what it allocates, known before it is done.
/// </summary>
internal sealed class ExpressionBudget
{
    /// <summary>What all operations of one budget may cost together: 64 MB.</summary>
    internal const long Bytes = 64_000_000;

    private const int MaximumPower = 1_000_000;
    private const double BitsPerWord = 64;

    // measured: a term and its places in lists; a factor of it, merged and copied; what a coefficient that is no
    // machine integer leaves behind when it is formed, added and reduced
    private const double TermBytes = 250;
    private const double FactorBytes = 32;
    private const double MachineBits = 30;
    private const double CoefficientBytes = 500;
    private const double BytesPerBit = 2;

    private double _left = Bytes;

    /// <summary>The product; null where it costs too much.</summary>
    public Expression? Product(Expression left, Expression right) =>
        Powers(left) + Powers(right) <= MaximumPower && Spend(Pairs(Size.Of(left), Size.Of(right))) ? left * right : null;

    /// <summary>The opposite; null where it costs too much.</summary>
    public Expression? Negative(Expression operand) => Spend(operand.Terms.Length * TermBytes) ? -operand : null;

    /// <summary>A power from 0; null where it costs too much.</summary>
    public Expression? Power(Expression operand, int power)
    {
        if (operand.Terms.Length == 1)
        {
            Term term = operand.Terms[0];
            return Powers(operand) * power <= MaximumPower && Spend(Coefficient((double)Bits(term.Coefficient) * power) + (term.Factors.Length * FactorBytes))
                ? Monomial(new Fraction(BigInteger.Pow(term.Coefficient.Numerator, power), BigInteger.Pow(term.Coefficient.Denominator, power), true), term, power)
                : null;
        }

        if (Foreseen(operand, power) > _left)
        {
            return null;
        }

        Expression? product = Expression.Of(Fraction.One);
        for (int k = 0; k < power && product is not null; k++)
        {
            product = Product(product, operand);
        }

        return product;
    }

    /// <summary>One over a term; null where it costs too much.</summary>
    public Expression? Inverse(Term term) => Spend(TermBytes + (term.Factors.Length * FactorBytes))
        ? Monomial(Fraction.One / term.Coefficient, term, -1)
        : null;

    /// <summary>The sum; null where it costs too much. Like terms cost more, since their denominators multiply.</summary>
    public Expression? Sum(IReadOnlyList<Expression> parts)
    {
        if (parts.Count == 1)
        {
            return parts[0];
        }

        if (!Spend(parts.Sum(p => p.Terms.Length) * TermBytes))
        {
            return null;
        }

        List<Term> terms = [.. parts.SelectMany(p => p.Terms)];
        terms.Sort(Term.Compare);
        for (int k = 0; k < terms.Count;)
        {
            int first = k;
            do
            {
                k++;
            }
            while (k < terms.Count && terms[k].HasFactorsOf(terms[first]));

            if (k - first > 1 && !Spend((k - first) * Coefficient(MaximumSum(terms[first..k]))))
            {
                return null;
            }
        }

        return Expression.Sum(parts);
    }

    // in bits: a numerator over the product of the different denominators
    private static double MaximumSum(List<Term> like) =>
        like.Max(t => (double)BigInteger.Abs(t.Coefficient.Numerator).GetBitLength())
        + like.Select(t => t.Coefficient.Denominator).Distinct().Sum(d => (double)d.GetBitLength());

    // The products that lead to a power of a sum. The terms of the k-th are the ways to choose k of n, and no more
    // than the exponents that each symbol can have leave room for.
    private static double Foreseen(Expression operand, int power)
    {
        Size size = Size.Of(operand);
        int[] ranges = Ranges(operand);
        double cost = 0, choices = 1;
        for (int k = 1; k < power && cost <= Bytes; k++)
        {
            choices *= (size.Terms + k - 1) / k;
            double room = ranges.Aggregate(1.0, (product, range) => product * ((range * (double)k) + 1));
            Size reached = new(Math.Min(choices, room), size.Factors, k * size.Bits, size.NameLength);
            cost += Pairs(reached, size);
        }

        return cost;
    }

    // the highest exponent of each symbol less the lowest; 0 counts where a term is without the symbol
    private static int[] Ranges(Expression operand)
    {
        Dictionary<Symbol, (int Terms, int Lowest, int Highest)> ranges = [];
        foreach (Factor factor in operand.Terms.SelectMany(t => t.Factors))
        {
            (int terms, int lowest, int highest) = ranges.GetValueOrDefault(factor.Symbol, (0, factor.Power, factor.Power));
            ranges[factor.Symbol] = (terms + 1, Math.Min(lowest, factor.Power), Math.Max(highest, factor.Power));
        }

        return [.. ranges.Values.Select(r => r.Terms == operand.Terms.Length
            ? r.Highest - r.Lowest
            : Math.Max(r.Highest, 0) - Math.Min(r.Lowest, 0))];
    }

    private static Expression Monomial(Fraction coefficient, Term term, int power) => Expression.Of(new Term(
        coefficient.Reduce(), power == 0 ? [] : [.. term.Factors.Select(f => f with { Power = f.Power * power })]));

    // one term per pair, and the comparisons by which they are sorted
    private static double Pairs(Size left, Size right) => left.Terms * right.Terms
        * (TermBytes + ((left.Factors + right.Factors) * FactorBytes) + left.NameLength + right.NameLength + Coefficient(left.Bits + right.Bits));

    // a greatest common divisor takes the square of the words
    private static double Coefficient(double bits) => bits <= MachineBits ? 0 : CoefficientBytes + (bits * BytesPerBit) + (bits / BitsPerWord * (bits / BitsPerWord));

    private static long Bits(Fraction value) => (long)BigInteger.Abs(value.Numerator).GetBitLength() + (long)value.Denominator.GetBitLength();

    private static long Powers(Expression expression) =>
        expression.Terms.SelectMany(t => t.Factors).Select(f => Math.Abs((long)f.Power)).DefaultIfEmpty().Max();

    private bool Spend(double cost)
    {
        if (cost > _left)
        {
            return false;
        }

        _left -= cost;
        return true;
    }

    /// <summary>How large the terms of an expression are at most, in factors, bits of the coefficient and characters of a name.</summary>
    private readonly record struct Size(double Terms, double Factors, double Bits, double NameLength)
    {
        public static Size Of(Expression expression)
        {
            Size size = new(expression.Terms.Length, 0, 0, 0);
            foreach (Term term in expression.Terms)
            {
                size = size with
                {
                    Factors = Math.Max(size.Factors, term.Factors.Length),
                    Bits = Math.Max(size.Bits, ExpressionBudget.Bits(term.Coefficient)),
                };
                foreach (Factor factor in term.Factors)
                {
                    size = size with { NameLength = Math.Max(size.NameLength, factor.Symbol.Element.Length) };
                }
            }

            return size;
        }
    }
}
