using System.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>A real number with 640 binary places, for literal evaluations that lose dozens of digits.</summary>
internal readonly struct BigReal
{
    private const int Places = 640;

    private static readonly BigInteger s_one = BigInteger.One << Places;

    private readonly BigInteger _scaled;

    private BigReal(BigInteger scaled) => _scaled = scaled;

    public static BigReal One => new(s_one);

    public bool IsZero => _scaled.IsZero;

    /// <summary>Whether nothing but the last place or two is left.</summary>
    public bool IsDust => BigInteger.Abs(_scaled) <= 4;

    public static bool operator <(BigReal a, BigReal b) => a._scaled < b._scaled;

    public static bool operator >(BigReal a, BigReal b) => a._scaled > b._scaled;

    public static BigReal operator +(BigReal a, BigReal b) => new(a._scaled + b._scaled);

    public static BigReal operator -(BigReal a, BigReal b) => new(a._scaled - b._scaled);

    public static BigReal operator -(BigReal a) => new(-a._scaled);

    public static BigReal operator *(BigReal a, BigReal b) => new((a._scaled * b._scaled) >> Places);

    public static BigReal operator /(BigReal a, BigReal b) => new((a._scaled << Places) / b._scaled);

    /// <summary>The sum of the products of two lists, rounded down once.</summary>
    public static BigReal Dot(ReadOnlySpan<BigReal> left, ReadOnlySpan<BigReal> right)
    {
        BigInteger sum = default;
        for (int k = 0; k < left.Length; k++)
        {
            if (!left[k].IsZero && !right[k].IsZero)
            {
                sum += left[k]._scaled * right[k]._scaled;
            }
        }

        return new(sum >> Places);
    }

    public static BigReal Abs(BigReal value) => new(BigInteger.Abs(value._scaled));

    /// <summary>The number times two to a power, rounded down.</summary>
    public static BigReal Scale(BigReal value, int power) => new(power < 0 ? value._scaled >> -power : value._scaled << power);

    public static BigReal Of(Fractions.Fraction value) => new((value.Numerator << Places) / value.Denominator);

    /// <summary>Exact for doubles down to about 1e-175.</summary>
    public static implicit operator BigReal(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value);
        int exponent = (int)((bits >> 52) & 0x7FF);
        BigInteger mantissa = (bits & 0xFFFFFFFFFFFFF) | (exponent == 0 ? 0 : 1L << 52);
        int shift = Places + Math.Max(exponent, 1) - 1075;
        mantissa = shift >= 0 ? mantissa << shift : mantissa >> -shift;
        return new(bits < 0 ? -mantissa : mantissa);
    }

    public static explicit operator double(BigReal value)
    {
        BigInteger magnitude = BigInteger.Abs(value._scaled);
        int excess = (int)Math.Max(0, (long)magnitude.GetBitLength() - 64);
        return value._scaled.Sign * Math.ScaleB((double)(ulong)(magnitude >> excess), excess - Places);
    }

    /// <summary>e to the power of the argument, which is not positive: halved until the series is short, then squared.</summary>
    public static BigReal Exp(BigReal x)
    {
        int halvings = (int)Math.Max(0, (long)BigInteger.Abs(x._scaled).GetBitLength() - Places + 16);
        BigReal small = new(x._scaled >> halvings), term = new(s_one), sum = term;
        for (int n = 1; !term._scaled.IsZero && n < 200; n++)
        {
            term = new((((term._scaled * small._scaled) >> Places) / n));
            sum += term;
            if (term._scaled == BigInteger.MinusOne)
            {
                break;
            }
        }

        for (int k = 0; k < halvings; k++)
        {
            sum *= sum;
        }

        return sum;
    }
}
