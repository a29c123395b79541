using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>Polynomials of the duties of all phases, of which each can be written in many ways since the duties sum to 1.</summary>
/// <remarks>
/// They are worked with as polynomials of all duties but the last, where equal ones look equal. The shortest way to write one
/// is looked for among those without one of the duties, and the one whose terms all have the same degree.
/// </remarks>
internal static class FreeDuties
{
    private const int LongestHomogeneous = 200;

    /// <summary>The durations of the phases, the last one by the others.</summary>
    public static Expression[] Of(int phases)
    {
        Expression[] durations = [.. Enumerable.Range(1, phases).Select(j => Expression.Of(Symbol.DutyOf(j)))];
        durations[^1] = Complement(phases, phases);
        return durations;
    }

    /// <summary>The shortest of the ways to write a polynomial.</summary>
    public static Expression Shortest(Polynomials polynomials, Expression polynomial, int phases)
    {
        if (polynomial.Symbols.IsEmpty)
        {
            return polynomial;
        }

        List<Expression> ways = [];
        if (Homogeneous(polynomials, polynomial, phases) is { } homogeneous)
        {
            ways.Add(homogeneous);
        }

        ways.Add(polynomial);
        for (int own = 1; own < phases; own++)
        {
            if (Polynomials.Degree(polynomial, Symbol.DutyOf(own)) > 0)
            {
                ways.Add(Without(polynomials, polynomial, own, phases));
            }
        }

        return ways.MinBy(w => w.Terms.Sum(t => 1 + t.Factors.Sum(f => f.Power)))!;
    }

    private static Expression Complement(int own, int phases) => Expression.Of(Fraction.One)
        - Expression.Sum(Enumerable.Range(1, phases).Where(j => j != own).Select(j => Expression.Of(Symbol.DutyOf(j))));

    private static Expression Without(Polynomials polynomials, Expression polynomial, int own, int phases)
    {
        Symbol symbol = Symbol.DutyOf(own);
        Expression complement = Complement(own, phases), sum = Expression.Zero;
        for (int power = Polynomials.Degree(polynomial, symbol); power >= 0; power--)
        {
            sum = polynomials.Product(sum, complement) + Polynomials.Coefficient(polynomial, symbol, power);
        }

        return sum;
    }

    // what lacks in degree is made up by powers of the sum of all duties, which is 1
    private static Expression? Homogeneous(Polynomials polynomials, Expression polynomial, int phases)
    {
        Expression all = Expression.Sum(Enumerable.Range(1, phases).Select(j => Expression.Of(Symbol.DutyOf(j)))), sum = Expression.Zero;
        int degree = polynomial.Terms.Max(DegreeOf);
        for (int d = 0; d <= degree; d++)
        {
            sum = polynomials.Product(sum, all) + Expression.Sum(polynomial.Terms.Where(t => DegreeOf(t) == d).Select(Expression.Of));
            if (sum.Terms.Length > LongestHomogeneous)
            {
                return null;
            }
        }

        // a sum of all duties that is left over as a factor is 1
        while (polynomials.TryDivide(sum, all, out Expression? less))
        {
            sum = less;
        }

        return sum;
    }

    private static int DegreeOf(Term term) => term.Factors.Sum(f => f.Power);
}
