using System.Numerics;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Design;

/// <summary>Linear equations in fractions.</summary>
internal static class ExactSpace
{
    /// <summary>The values at which equations hold; null where they contradict each other.</summary>
    /// <param name="unknowns">The number of unknowns.</param>
    /// <param name="equations">A coefficient per unknown, then a constant; each sum is to be zero.</param>
    public static VoltageSpace<BigInteger>? Where(int unknowns, IReadOnlyList<Rational<BigInteger>[]> equations)
    {
        List<Rational<BigInteger>[]> free = [];
        for (int k = 0; k < unknowns; k++)
        {
            var one = new Rational<BigInteger>[unknowns];
            one[k] = Rational<BigInteger>.One;
            free.Add(one);
        }

        return new VoltageSpace<BigInteger>(new Rational<BigInteger>[unknowns], free).Where(equations);
    }

    /// <summary>The sum of products of three.</summary>
    public static Rational<BigInteger> Product(
        ReadOnlySpan<Rational<BigInteger>> left, ReadOnlySpan<Rational<BigInteger>> right, ReadOnlySpan<Rational<BigInteger>> weights)
    {
        Rational<BigInteger> sum = Rational<BigInteger>.Zero;
        for (int i = 0; i < left.Length; i++)
        {
            if (!left[i].IsZero && !right[i].IsZero)
            {
                sum += left[i] * right[i] * weights[i];
            }
        }

        return sum;
    }
}
