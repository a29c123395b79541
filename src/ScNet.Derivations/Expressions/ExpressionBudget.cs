using System.Numerics;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>Arithmetic that gives up (null) once it has cost too much: short texts can say huge products.</summary>
internal sealed class ExpressionBudget
{
    private const int MostPower = 1_000_000;
    private const long BitsPerWord = 64;
    private long _left = 5_000_000;

    public Expression? Product(Expression left, Expression right)
    {
        double cost = 0;
        foreach (Term a in left.Terms)
        {
            foreach (Term b in right.Terms)
            {
                cost += 1 + a.Factors.Count + b.Factors.Count + Square(Bits(a.Coefficient) + Bits(b.Coefficient));
                if (cost > _left)
                {
                    return null;
                }
            }
        }

        return Spend(cost) && Powers(left) + Powers(right) <= MostPower ? left * right : null;
    }

    public Expression? Power(Expression operand, int power)
    {
        if (operand.Terms.Count == 1)
        {
            Term term = operand.Terms[0];
            return Powers(operand) * power <= MostPower && Spend(term.Factors.Count + Square(Bits(term.Coefficient) * power))
                ? Monomial(new Fraction(BigInteger.Pow(term.Coefficient.Numerator, power), BigInteger.Pow(term.Coefficient.Denominator, power), true), term, power)
                : null;
        }

        Expression? product = Expression.Of(Fraction.One);
        for (int k = 0; k < power && product is not null; k++)
        {
            product = Product(product, operand);
        }

        return product;
    }

    public Expression? Inverse(Term term) => Spend(1 + term.Factors.Count)
        ? Monomial(Fraction.One / term.Coefficient, term, -1)
        : null;

    /// <summary>The sum. Only like terms cost more than sorting, since their denominators multiply.</summary>
    public Expression? Sum(IReadOnlyList<Expression> parts)
    {
        if (parts.Count == 1)
        {
            return parts[0];
        }

        List<Term> terms = [.. parts.SelectMany(p => p.Terms)];
        terms.Sort(Term.Compare);
        for (int k = 0; k < terms.Count;)
        {
            int first = k;
            HashSet<BigInteger> denominators = [];
            long most = 0;
            for (; k < terms.Count && terms[k].HasFactorsOf(terms[first]); k++)
            {
                denominators.Add(terms[k].Coefficient.Denominator);
                most = Math.Max(most, (long)BigInteger.Abs(terms[k].Coefficient.Numerator).GetBitLength());
            }

            if (!Spend((k - first) * (1 + Square(most + denominators.Sum(d => (long)d.GetBitLength())))))
            {
                return null;
            }
        }

        return Expression.Sum(parts);
    }

    private static Expression Monomial(Fraction coefficient, Term term, int power) => term.Factors.Aggregate(
        Expression.Of(coefficient), (product, factor) => product * Expression.Of(factor.Symbol, factor.Power * power));

    private static long Bits(Fraction value) => (long)BigInteger.Abs(value.Numerator).GetBitLength() + (long)value.Denominator.GetBitLength();

    private static double Square(long bits) => (double)(bits / BitsPerWord) * (bits / BitsPerWord);

    private static long Powers(Expression expression) =>
        expression.Terms.SelectMany(t => t.Factors).Select(f => Math.Abs((long)f.Power)).DefaultIfEmpty().Max();

    private bool Spend(double cost)
    {
        if (cost > _left)
        {
            return false;
        }

        _left -= (long)cost;
        return true;
    }
}
