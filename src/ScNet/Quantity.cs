using System.Globalization;
using System.Numerics;
using Fractions;

namespace ScNet;

/// <summary>
/// One value of a solution, with its three possible outcomes: an exact fraction where the topology
/// fixes it, a number where component values decide, undetermined where nothing does.
/// </summary>
/// <remarks>
/// Charges are per unit of charge delivered to the load in one period, voltages per volt of input.
/// The default value is undetermined. Equality is by kind and value.
/// </remarks>
public readonly struct Quantity : IEquatable<Quantity>, IFormattable
{
    private const long NumericMark = -1;

    // exact: _numerator / _denominator with _denominator > 0, or a boxed Fraction in _large;
    // numeric: the bits of the double in _numerator and NumericMark in _denominator
    private readonly long _numerator;
    private readonly long _denominator;
    private readonly object? _large;

    private Quantity(long numerator, long denominator, object? large)
    {
        _numerator = numerator;
        _denominator = denominator;
        _large = large;
    }

    /// <summary>The value that nothing determines; the same as <c>default</c>.</summary>
    public static Quantity Undetermined => default;

    /// <summary>Exactly zero.</summary>
    public static Quantity Zero => new(0, 1, null);

    /// <summary>What decided this value.</summary>
    internal QuantityKind Kind => _large is not null || _denominator > 0 ? QuantityKind.Exact
        : _denominator == NumericMark ? QuantityKind.Numeric : QuantityKind.Undetermined;

    /// <summary>Whether there is a value at all.</summary>
    public bool IsDetermined => Kind != QuantityKind.Undetermined;

    /// <summary>Whether the value is an exact fraction.</summary>
    public bool IsExact => Kind == QuantityKind.Exact;

    /// <summary>-1, 0 or 1 as the value, which must be determined, is negative, zero or positive.</summary>
    internal int Sign => _large is Fraction large ? large.Numerator.Sign
        : _denominator > 0 ? Math.Sign(_numerator) : Math.Sign(ToDouble());

    /// <summary>An exact quantity of the given value, reduced.</summary>
    /// <exception cref="ArgumentException">The fraction is infinite or not a number.</exception>
    public static Quantity Exact(Fraction value)
    {
        if (value.Denominator.IsZero)
        {
            throw new ArgumentException("Expected a finite fraction.", nameof(value));
        }

        Fraction reduced = value.Reduce();
        return IsSmall(reduced.Numerator) && IsSmall(reduced.Denominator)
            ? new Quantity((long)reduced.Numerator, (long)reduced.Denominator, null)
            : new Quantity(0, 0, reduced);
    }

    /// <summary>The exact quantity <paramref name="numerator"/> / <paramref name="denominator"/>, reduced.</summary>
    /// <exception cref="ArgumentException">The denominator is zero.</exception>
    public static Quantity Exact(long numerator, long denominator = 1) =>
        Exact(new Fraction(new BigInteger(numerator), new BigInteger(denominator), true));

    /// <summary>A quantity that component values decide.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public static Quantity Numeric(double value) => double.IsFinite(value)
        ? new Quantity(BitConverter.DoubleToInt64Bits(value), NumericMark, null)
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected a finite number.");

    /// <summary>The exact quantity of an already reduced fraction with a positive denominator.</summary>
    internal static Quantity OfReduced(long numerator, long denominator) => new(numerator, denominator, null);

    /// <summary>The exact fraction.</summary>
    /// <exception cref="InvalidOperationException">The value is numeric or undetermined.</exception>
    public Fraction ToFraction() => TryGetFraction(out Fraction value)
        ? value
        : throw new InvalidOperationException($"Expected an exact quantity, but this one is {Kind}.");

    /// <summary>Gives the exact fraction, or returns false where the value is numeric or undetermined.</summary>
    public bool TryGetFraction(out Fraction value)
    {
        value = _large is Fraction large ? large
            : _denominator > 0 ? new Fraction(_numerator, _denominator, false) : default;
        return IsExact;
    }

    /// <summary>Gives the value as a double, or returns false where it is undetermined.</summary>
    public bool TryGetDouble(out double value)
    {
        value = IsDetermined ? ToDouble() : 0;
        return IsDetermined;
    }

    /// <summary>Gives -1, 0 or 1 as the value is negative, zero or positive, or returns false where it is undetermined.</summary>
    public bool TryGetSign(out int sign)
    {
        sign = IsDetermined ? Sign : 0;
        return IsDetermined;
    }

    /// <summary>The value as a double, correctly rounded up to one unit in the last place.</summary>
    /// <exception cref="InvalidOperationException">The value is undetermined.</exception>
    public double ToDouble() => Kind switch
    {
        QuantityKind.Exact => _large is Fraction large ? Divide(large.Numerator, large.Denominator) : (double)_numerator / _denominator,
        QuantityKind.Numeric => BitConverter.Int64BitsToDouble(_numerator),
        _ => throw new InvalidOperationException("An undetermined quantity has no value."),
    };

    /// <summary>The quantity with the opposite sign; undetermined stays undetermined.</summary>
    public static Quantity operator -(Quantity quantity) => quantity.Kind switch
    {
        QuantityKind.Exact when quantity._large is null && quantity._numerator != long.MinValue =>
            new Quantity(-quantity._numerator, quantity._denominator, null),
        QuantityKind.Exact => Exact(-quantity.ToFraction()),
        QuantityKind.Numeric => Numeric(-quantity.ToDouble()),
        _ => quantity,
    };

    /// <summary>The quantity with the opposite sign; undetermined stays undetermined.</summary>
    public static Quantity Negate(Quantity quantity) => -quantity;

    /// <summary>The magnitude; undetermined stays undetermined.</summary>
    public Quantity Abs() => IsDetermined && Sign < 0 ? -this : this;

    /// <summary>An exact quantity.</summary>
    public static implicit operator Quantity(Fraction value) => Exact(value);

    /// <summary>An exact whole quantity.</summary>
    public static implicit operator Quantity(int value) => OfReduced(value, 1);

    /// <summary>An exact quantity.</summary>
    public static Quantity FromFraction(Fraction value) => Exact(value);

    /// <summary>An exact whole quantity.</summary>
    public static Quantity FromInt32(int value) => OfReduced(value, 1);

    /// <inheritdoc/>
    public bool Equals(Quantity other) => Kind == other.Kind && (_large, other._large) switch
    {
        (null, null) => _numerator == other._numerator && _denominator == other._denominator,
        (Fraction left, Fraction right) => left.Equals(right),
        _ => false,
    };

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Quantity other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(_numerator, _denominator, _large);

    /// <summary>Equality by kind and value.</summary>
    public static bool operator ==(Quantity left, Quantity right) => left.Equals(right);

    /// <summary>Inequality by kind or value.</summary>
    public static bool operator !=(Quantity left, Quantity right) => !left.Equals(right);

    /// <summary>"1/3" for an exact fraction, six significant digits for a number, "?" where undetermined.</summary>
    public override string ToString() => ToString(null, null);

    /// <summary>As <see cref="ToString()"/>, with a format for numbers ("G6" by default), always in the invariant culture.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) => Kind switch
    {
        QuantityKind.Exact when _large is Fraction large => large.Denominator.IsOne
            ? large.Numerator.ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{large.Numerator}/{large.Denominator}"),
        QuantityKind.Exact when _denominator == 1 => _numerator.ToString(CultureInfo.InvariantCulture),
        QuantityKind.Exact => string.Create(CultureInfo.InvariantCulture, $"{_numerator}/{_denominator}"),
        QuantityKind.Numeric => ToDouble().ToString(format ?? "G6", CultureInfo.InvariantCulture),
        _ => "?",
    };

    // A quotient of 64 bits before the conversion, so that huge terms neither overflow nor lose digits.
    private static double Divide(BigInteger numerator, BigInteger denominator)
    {
        int shift = (int)(denominator.GetBitLength() - BigInteger.Abs(numerator).GetBitLength()) + 64;
        BigInteger quotient = shift >= 0 ? (numerator << shift) / denominator : numerator / (denominator << -shift);
        return Math.ScaleB((double)quotient, -shift);
    }

    private static bool IsSmall(BigInteger value) => value >= long.MinValue && value <= long.MaxValue;
}
