using System.Globalization;
using System.Numerics;
using Fractions;

namespace ScNet.Derivations;

/// <summary>
/// A value as it stands on paper. Whole numbers, fractions and numbers convert by themselves, and so does
/// text: "1/3", "-2", "0.25" (exactly 1/4), or "?" for a value that is said to be undetermined.
/// </summary>
/// <remarks>A double is compared within the tolerance of the derivation, everything else exactly.</remarks>
[ShownAsText("It is a number or a question mark.")]
public readonly struct StatedValue : IEquatable<StatedValue>
{
    /// <summary>The most characters of a value that is read: its cost grows with their square.</summary>
    internal const int MaximumLength = 10_000;

    // far beyond any circuit, but sums and squares of it are still numbers
    private const double Largest = 1e100;

    private StatedValue(Quantity value) => Value = !value.IsDetermined || Math.Abs(value.ToDouble()) <= Largest
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, "Expected a magnitude of 1e100 at most.");

    /// <summary>The value; undetermined for "?".</summary>
    public Quantity Value { get; }

    /// <summary>Reads "1/3", "-2", "0.25" or "?", in the invariant culture.</summary>
    /// <exception cref="ArgumentException">The text is none of these, or its magnitude exceeds 1e100.</exception>
    public static StatedValue FromString(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TryRead(text.Trim(), out Quantity value)
            ? new StatedValue(value)
            : throw new ArgumentException($"Expected a fraction such as \"1/3\", a number such as \"-2\" or \"0.25\", or \"?\", but got \"{text}\".", nameof(text));
    }

    /// <summary>A whole number.</summary>
    public static StatedValue FromInt32(int value) => new(value);

    /// <summary>A fraction.</summary>
    /// <exception cref="ArgumentException">The fraction is infinite, not a number, or its magnitude exceeds 1e100.</exception>
    public static StatedValue FromFraction(Fraction value) => new(Quantity.Exact(value));

    /// <summary>A number, compared within the tolerance.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is not finite, or its magnitude exceeds 1e100.</exception>
    public static StatedValue FromDouble(double value) => new(Quantity.Numeric(value));

    /// <summary>A value of any kind.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The magnitude exceeds 1e100.</exception>
    public static StatedValue FromQuantity(Quantity value) => new(value);

    /// <inheritdoc cref="FromString"/>
    public static implicit operator StatedValue(string text) => FromString(text);

    /// <summary>A whole number.</summary>
    public static implicit operator StatedValue(int value) => FromInt32(value);

    /// <inheritdoc cref="FromFraction"/>
    public static implicit operator StatedValue(Fraction value) => FromFraction(value);

    /// <inheritdoc cref="FromDouble"/>
    public static implicit operator StatedValue(double value) => FromDouble(value);

    /// <summary>A value of any kind.</summary>
    public static implicit operator StatedValue(Quantity value) => FromQuantity(value);

    /// <summary>Whether both are of the same kind and value.</summary>
    public static bool operator ==(StatedValue left, StatedValue right) => left.Equals(right);

    /// <summary>Whether they differ in kind or value.</summary>
    public static bool operator !=(StatedValue left, StatedValue right) => !left.Equals(right);

    /// <inheritdoc/>
    public bool Equals(StatedValue other) => Value == other.Value;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is StatedValue other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => Value.GetHashCode();

    /// <summary>"1/3", a number with six significant digits, or "?".</summary>
    public override string ToString() => Value.ToString();

    /// <summary>The value of a text of any magnitude and of at most <see cref="MaximumLength"/> characters; false where it is none.</summary>
    internal static bool TryRead(string text, out Quantity value)
    {
        value = Quantity.Undetermined;
        if (text == "?")
        {
            return true;
        }

        // a parser of numbers takes U+0000 behind one for the end of the text
        if (text.Length > MaximumLength || text.Contains('\0', StringComparison.Ordinal))
        {
            return false;
        }

        int bar = text.IndexOf('/', StringComparison.Ordinal);
        if (TryReadWhole(bar < 0 ? text : text[..bar], out BigInteger numerator))
        {
            BigInteger denominator = BigInteger.One;
            bool isFraction = bar < 0 || (TryReadWhole(text[(bar + 1)..], out denominator) && !denominator.IsZero);
            value = isFraction ? Quantity.Exact(new Fraction(numerator, denominator, true)) : value;
            return isFraction;
        }

        bool isDecimal = ExactDecimal.TryParse(text, out Fraction exact);
        value = isDecimal ? Quantity.Exact(exact) : value;
        return isDecimal;
    }

    private static bool TryReadWhole(string text, out BigInteger value) =>
        BigInteger.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out value);
}
