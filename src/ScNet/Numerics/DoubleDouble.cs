namespace ScNet.Numerics;

/// <summary>
/// A number as the exact sum of two doubles, the second below the last place of the first: some 32 digits in the
/// range of a double.
/// </summary>
/// <remarks>
/// Sums after D. E. Knuth, The Art of Computer Programming 2, section 4.2.2; the exact product by one fused
/// operation; quotient and root by one step of Newton's from that of doubles (T. J. Dekker, Numerische Mathematik 18,
/// 1971; all from memory). The bound of rounding is that of the sum with both low parts joined.
/// </remarks>
internal readonly struct DoubleDouble : IReal<DoubleDouble>
{
    private readonly double _high;
    private readonly double _low;

    private DoubleDouble(double high, double low)
    {
        _high = high;
        _low = low;
    }

    /// <summary>Four times the square of a double's.</summary>
    public static double Rounding => 4.930380657631324e-32;

    public double Nearest => _high;

    public bool IsZero => _high == 0;

    public static DoubleDouble Of(double value) => new(value, 0);

    public static DoubleDouble Sqrt(DoubleDouble value)
    {
        if (value._high <= 0)
        {
            return value._high == 0 ? default : Of(double.NaN);
        }

        double root = Math.Sqrt(value._high);
        DoubleDouble rest = value - ExactProduct(root, root);
        return Normalised(root, rest._high / (2 * root));
    }

    public static DoubleDouble operator +(DoubleDouble left, DoubleDouble right)
    {
        (double high, double low) = ExactSum(left._high, right._high);
        (double lowHigh, double lowLow) = ExactSum(left._low, right._low);
        DoubleDouble sum = Normalised(high, low + lowHigh);
        return Normalised(sum._high, sum._low + lowLow);
    }

    public static DoubleDouble operator -(DoubleDouble left, DoubleDouble right) => left + (-right);

    public static DoubleDouble operator -(DoubleDouble value) => new(-value._high, -value._low);

    public static DoubleDouble operator *(DoubleDouble left, DoubleDouble right)
    {
        double high = left._high * right._high;
        double low = Math.FusedMultiplyAdd(left._high, right._high, -high);
        low = Math.FusedMultiplyAdd(left._high, right._low, Math.FusedMultiplyAdd(left._low, right._high, low));
        return Normalised(high, low);
    }

    public static DoubleDouble operator /(DoubleDouble left, DoubleDouble right)
    {
        double first = left._high / right._high;
        DoubleDouble rest = left - (right * Of(first));
        double second = rest._high / right._high;
        rest -= right * Of(second);
        DoubleDouble quotient = Normalised(first, second);
        return quotient + Of(rest._high / right._high);
    }

    private static (double Sum, double Error) ExactSum(double a, double b)
    {
        double sum = a + b, part = sum - a;
        return (sum, (a - (sum - part)) + (b - part));
    }

    private static DoubleDouble ExactProduct(double a, double b)
    {
        double product = a * b;
        return new(product, Math.FusedMultiplyAdd(a, b, -product));
    }

    // of a sum whose second part is not larger than the first
    private static DoubleDouble Normalised(double high, double low)
    {
        double sum = high + low;
        return new(sum, low - (sum - high));
    }
}
