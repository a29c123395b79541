using System.Numerics;

namespace ScNet.Kernel;

/// <summary>Integer helpers over any integer type.</summary>
internal static class Integers
{
    /// <summary>The greatest common divisor, positive; of two zeros, one.</summary>
    public static T Gcd<T>(T a, T b)
        where T : struct, IBinaryInteger<T>
    {
        if (typeof(T) == typeof(BigInteger))
        {
            // the library's own routine is faster than plain remainders on long numbers
            BigInteger divisor = BigInteger.GreatestCommonDivisor((BigInteger)(object)a, (BigInteger)(object)b);
            return divisor.IsZero ? T.One : (T)(object)divisor;
        }

        a = T.Abs(a);
        b = T.Abs(b);
        while (!T.IsZero(b))
        {
            if (a == T.One || b == T.One)
            {
                return T.One;
            }

            (a, b) = (b, a % b);
        }

        return T.IsZero(a) ? T.One : a;
    }
}
