using System.Numerics;
using Fractions;

namespace ScNet.Kernel;

/// <summary>
/// A reduced fraction of integers of one type, with a positive denominator. The named operations raise a
/// flag where a machine integer does not hold the result, which then means nothing; the operators throw an
/// <see cref="OverflowException"/>. The caller starts again with big integers.
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

    /// <summary>The fraction of two integers, neither of them the least machine integer.</summary>
    public static Rational<T> Of(T numerator, T denominator)
    {
        T divisor = Integers.Gcd(numerator, denominator);
        divisor = T.IsNegative(denominator) ? -divisor : divisor;
        return divisor == T.One ? new(numerator, denominator) : new(numerator / divisor, denominator / divisor);
    }

    public static Rational<T> Of(Fraction value) => new(
        T.CreateChecked(value.Numerator), T.CreateChecked(value.Denominator));

    public static Rational<T> Add(Rational<T> left, Rational<T> right, ref bool hasOverflown)
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
        if (a == b)
        {
            T sum = Integers.Add(left.Numerator, right.Numerator, ref hasOverflown);
            return a == T.One ? Of(sum) : Reduced(sum, a, hasOverflown);
        }

        return Reduced(
            Integers.Add(Integers.Multiply(left.Numerator, b, ref hasOverflown), Integers.Multiply(right.Numerator, a, ref hasOverflown), ref hasOverflown),
            Integers.Multiply(a, b, ref hasOverflown),
            hasOverflown);
    }

    public static Rational<T> Multiply(Rational<T> left, Rational<T> right, ref bool hasOverflown)
    {
        if (left.IsZero || right.IsZero)
        {
            return Zero;
        }

        // cross-reduction keeps the products as small as they can be
        T a = left.Denominator, b = right.Denominator;
        T first = b == T.One ? T.One : Integers.Gcd(left.Numerator, b);
        T second = a == T.One ? T.One : Integers.Gcd(right.Numerator, a);
        return first == T.One && second == T.One
            ? new(Integers.Multiply(left.Numerator, right.Numerator, ref hasOverflown), a == T.One ? b : b == T.One ? a : Integers.Multiply(a, b, ref hasOverflown))
            : new(
                Integers.Multiply(left.Numerator / first, right.Numerator / second, ref hasOverflown),
                Integers.Multiply(a / second, b / first, ref hasOverflown));
    }

    public static Rational<T> Multiply(Rational<T> left, T right, ref bool hasOverflown) =>
        right == T.One ? left
        : right == -T.One ? -left
        : left.Denominator == T.One ? Of(Integers.Multiply(left.Numerator, right, ref hasOverflown))
        : Multiply(left, Of(right), ref hasOverflown);

    public static Rational<T> Divide(Rational<T> left, T right, ref bool hasOverflown) =>
        right == T.One ? left
        : right == -T.One ? -left
        : Multiply(left, Of(T.One, right), ref hasOverflown);

    public static Rational<T> operator +(Rational<T> left, Rational<T> right)
    {
        bool hasOverflown = false;
        return Checked(Add(left, right, ref hasOverflown), hasOverflown);
    }

    public static Rational<T> operator -(Rational<T> value) => new(checked(-value.Numerator), value.Denominator);

    public static Rational<T> operator -(Rational<T> left, Rational<T> right) => left + (-right);

    public static Rational<T> operator *(Rational<T> left, Rational<T> right)
    {
        bool hasOverflown = false;
        return Checked(Multiply(left, right, ref hasOverflown), hasOverflown);
    }

    public static Rational<T> operator *(Rational<T> left, T right)
    {
        bool hasOverflown = false;
        return Checked(Multiply(left, right, ref hasOverflown), hasOverflown);
    }

    public static Rational<T> operator /(Rational<T> left, T right)
    {
        bool hasOverflown = false;
        return Checked(Divide(left, right, ref hasOverflown), hasOverflown);
    }

    /// <summary>The square; a reduced fraction has a reduced square, so nothing is left to divide.</summary>
    public Rational<T> Squared()
    {
        bool hasOverflown = false;
        return Checked(
            new(Integers.Multiply(Numerator, Numerator, ref hasOverflown), Integers.Multiply(Denominator, Denominator, ref hasOverflown)), hasOverflown);
    }

    /// <summary>The same value over integers of any size.</summary>
    public Rational<BigInteger> Widened() => new(BigInteger.CreateChecked(Numerator), BigInteger.CreateChecked(Denominator));

    public bool Equals(Rational<T> other) => Numerator == other.Numerator && _denominatorLessOne == other._denominatorLessOne;

    public override bool Equals(object? obj) => obj is Rational<T> other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(Numerator, _denominatorLessOne);

    public override string ToString() => $"{Numerator}/{Denominator}";

    private static Rational<T> Reduced(T numerator, T denominator, bool hasOverflown) =>
        hasOverflown ? Zero : Of(numerator, denominator);

    private static Rational<T> Checked(Rational<T> value, bool hasOverflown)
    {
        Integers.Demand(!hasOverflown);
        return value;
    }
}
