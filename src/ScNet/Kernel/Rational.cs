using System.Numerics;
using Fractions;

namespace ScNet.Kernel;

/// <summary>
/// A reduced fraction of integers of one type, with a positive denominator. Operations on machine
/// integers throw <see cref="OverflowException"/> where the result does not fit; the caller then
/// starts again with big integers.
/// </summary>
internal readonly struct Rational<T> : IEquatable<Rational<T>>
    where T : struct, IBinaryInteger<T>
{
    // stored less one, so that the default value is zero
    private readonly T _denominatorLessOne;

    private Rational(T numerator, T denominator)
    {
        Numerator = numerator;
        _denominatorLessOne = denominator - T.One;
    }

    public T Numerator { get; }

    public T Denominator => _denominatorLessOne + T.One;

    public bool IsZero => T.IsZero(Numerator);

    public static Rational<T> Zero => default;

    public static Rational<T> One => new(T.One, T.One);

    public static Rational<T> Of(T value) => new(value, T.One);

    public static Rational<T> Of(T numerator, T denominator)
    {
        T divisor = Integers.Gcd(numerator, denominator);
        if (T.IsNegative(denominator))
        {
            divisor = checked(-divisor);
        }

        return divisor == T.One ? new(numerator, denominator) : new(checked(numerator / divisor), checked(denominator / divisor));
    }

    public static Rational<T> Of(Fraction value) => new(
        T.CreateChecked(value.Numerator), T.CreateChecked(value.Denominator));

    public static Rational<T> operator +(Rational<T> left, Rational<T> right)
    {
        if (left.IsZero)
        {
            return right;
        }

        if (right.IsZero)
        {
            return left;
        }

        T a = left.Denominator, b = right.Denominator;
        return a == b
            ? a == T.One ? Of(checked(left.Numerator + right.Numerator)) : Of(checked(left.Numerator + right.Numerator), a)
            : Of(checked((left.Numerator * b) + (right.Numerator * a)), checked(a * b));
    }

    public static Rational<T> operator -(Rational<T> value) => new(checked(-value.Numerator), value.Denominator);

    public static Rational<T> operator -(Rational<T> left, Rational<T> right) => left + (-right);

    /// <summary>The square; a reduced fraction has a reduced square, so nothing is left to divide.</summary>
    public Rational<T> Squared() => new(checked(Numerator * Numerator), checked(Denominator * Denominator));

    public static Rational<T> operator *(Rational<T> left, Rational<T> right)
    {
        if (left.IsZero || right.IsZero)
        {
            return Zero;
        }

        // cross-reduction keeps the products as small as they can be
        T a = left.Denominator, b = right.Denominator;
        T first = b == T.One ? T.One : Integers.Gcd(left.Numerator, b);
        T second = a == T.One ? T.One : Integers.Gcd(right.Numerator, a);
        return new(
            checked((left.Numerator / first) * (right.Numerator / second)),
            checked((a / second) * (b / first)));
    }

    public static Rational<T> operator *(Rational<T> left, T right) => right == T.One ? left : left * Of(right);

    public static Rational<T> operator /(Rational<T> left, T right) => right == T.One ? left : left * Of(T.One, right);

    /// <summary>The same value over integers of any size.</summary>
    public Rational<BigInteger> Widened() => new(BigInteger.CreateChecked(Numerator), BigInteger.CreateChecked(Denominator));

    public bool Equals(Rational<T> other) => Numerator == other.Numerator && _denominatorLessOne == other._denominatorLessOne;

    public override bool Equals(object? obj) => obj is Rational<T> other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, _denominatorLessOne);

    public override string ToString() => $"{Numerator}/{Denominator}";
}
