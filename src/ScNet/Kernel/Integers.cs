using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// Arithmetic over 32-bit, 64-bit and big integers. What does not fit a machine integer raises a flag that stays up; the
/// value returned then means nothing.
/// </summary>
/// <remarks>The least value of a machine integer counts as overflow too, so that every value has an opposite.</remarks>
internal static class Integers
{
    /// <summary>The greatest common divisor, positive; of two zeros, one. Neither may be the least machine integer.</summary>
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

    /// <summary>a · b.</summary>
    public static T Multiply<T>(T a, T b, ref bool hasOverflown)
        where T : struct, IBinaryInteger<T>
    {
        if (typeof(T) == typeof(int))
        {
            return Narrow<T>((long)(int)(object)a * (int)(object)b, ref hasOverflown);
        }

        if (typeof(T) != typeof(long))
        {
            return a * b;
        }

        long high = Math.BigMul((long)(object)a, (long)(object)b, out long low);
        hasOverflown |= high != low >> 63 || low == long.MinValue;
        return (T)(object)low;
    }

    /// <summary>a + b.</summary>
    public static T Add<T>(T a, T b, ref bool hasOverflown)
        where T : struct, IBinaryInteger<T>
    {
        if (typeof(T) == typeof(int))
        {
            return Narrow<T>((long)(int)(object)a + (int)(object)b, ref hasOverflown);
        }

        if (typeof(T) != typeof(long))
        {
            return a + b;
        }

        long x = (long)(object)a, y = (long)(object)b, sum = unchecked(x + y);
        hasOverflown |= ((x ^ sum) & (y ^ sum)) < 0 || sum == long.MinValue;
        return (T)(object)sum;
    }

    /// <summary>a - b.</summary>
    public static T Subtract<T>(T a, T b, ref bool hasOverflown)
        where T : struct, IBinaryInteger<T>
    {
        if (typeof(T) == typeof(int))
        {
            return Narrow<T>((long)(int)(object)a - (int)(object)b, ref hasOverflown);
        }

        if (typeof(T) != typeof(long))
        {
            return a - b;
        }

        long x = (long)(object)a, y = (long)(object)b, difference = unchecked(x - y);
        hasOverflown |= ((x ^ y) & (x ^ difference)) < 0 || difference == long.MinValue;
        return (T)(object)difference;
    }

    /// <summary>Whether a value has no opposite of its type: the least machine integer.</summary>
    public static bool IsLeast<T>(T value)
        where T : struct, IBinaryInteger<T> =>
        (typeof(T) == typeof(long) && (long)(object)value == long.MinValue) || (typeof(T) == typeof(int) && (int)(object)value == int.MinValue);

    /// <summary>Throws where an operation has not succeeded.</summary>
    /// <exception cref="OverflowException">It has not.</exception>
    public static void Demand(bool hasSucceeded)
    {
        if (!hasSucceeded)
        {
            throw new OverflowException("A machine integer does not hold the exact result.");
        }
    }

    private static T Narrow<T>(long value, ref bool hasOverflown)
    {
        hasOverflown |= value != (int)value || value == int.MinValue;
        return (T)(object)unchecked((int)value);
    }
}
