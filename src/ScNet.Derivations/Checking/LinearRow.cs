using System.Numerics;
using Fractions;

namespace ScNet.Derivations.Checking;

/// <summary>A statement or a law as a linear equation over whole numbers: exactly one of the two is not null.</summary>
internal sealed class LinearRow
{
    private LinearRow(Statement? statement, Equation? equation, (int Unknown, Fraction Coefficient)[] terms, Fraction constant)
    {
        Statement = statement;
        Equation = equation;
        BigInteger common = terms.Select(t => t.Coefficient.Denominator).Append(constant.Denominator)
            .Aggregate(BigInteger.One, (a, b) => a * b / BigInteger.GreatestCommonDivisor(a, b));
        Terms = [.. terms.Select(t => (t.Unknown, t.Coefficient.Numerator * (common / t.Coefficient.Denominator)))];
        Constant = constant.Numerator * (common / constant.Denominator);
    }

    public Statement? Statement { get; }

    public Equation? Equation { get; }

    public (int Unknown, BigInteger Coefficient)[] Terms { get; }

    public BigInteger Constant { get; }

    public static LinearRow Of(Equation equation) => new(null, equation, equation.Terms, equation.Constant);

    public static LinearRow Of(Statement statement, int unknown) =>
        new(statement, null, [(unknown, Fraction.One)], statement.Value.Value.ToFraction());
}
