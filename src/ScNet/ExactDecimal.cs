using System.Globalization;
using System.Numerics;
using Fractions;

namespace ScNet;

/// <summary>Decimal numbers as the exact fractions they were written as: 0.3 is 3/10.</summary>
internal static class ExactDecimal
{
    /// <summary>The most characters a number may have: no double needs more than 24, and an exact one must stay handy.</summary>
    public const int MaximumLength = 64;

    /// <summary>The exact value of a decimal with optional sign, fraction and exponent, in the invariant culture.</summary>
    /// <returns>False where the text is too long, not a finite double, or too small to be one.</returns>
    public static bool TryParse(string text, out Fraction value)
    {
        value = Fraction.Zero;
        if (text.Length > MaximumLength
            || HasEnd(text)
            || !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double rounded)
            || !double.IsFinite(rounded))
        {
            return false;
        }

        // the double bounds the exponent before it is expanded to a power of ten
        if (rounded == 0)
        {
            return !text.AsSpan(0, MantissaLength(text)).ContainsAnyInRange('1', '9');
        }

        value = Fraction.FromString(text, NumberStyles.Float, CultureInfo.InvariantCulture);
        return true;
    }

    /// <summary>The exact value of a fraction of two whole numbers, such as "2/15".</summary>
    /// <returns>False where the text is something else, too long, or the denominator is zero.</returns>
    public static bool TryParseRatio(string text, out Fraction value)
    {
        value = Fraction.Zero;
        int slash = text.IndexOf('/', StringComparison.Ordinal);
        if (slash < 0 || text[0] == '+' || text.Length > 2 * MaximumLength || HasEnd(text)
            || !BigInteger.TryParse(text.AsSpan(0, slash), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out BigInteger numerator)
            || !BigInteger.TryParse(text.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture, out BigInteger denominator)
            || denominator.IsZero)
        {
            return false;
        }

        value = new Fraction(numerator, denominator);
        return true;
    }

    /// <summary>The shortest decimal that reads back as the same double: what the user wrote.</summary>
    /// <exception cref="ArgumentException">The value is not finite.</exception>
    public static Fraction Of(double value) =>
        double.IsFinite(value) && TryParse(value.ToString("R", CultureInfo.InvariantCulture), out Fraction exact)
            ? exact
            : throw new ArgumentException(FormattableString.Invariant($"Expected a finite number, but got {value}."), nameof(value));

    // parsers of numbers take any U+0000 behind one for the end of the text
    private static bool HasEnd(string text) => text.Contains('\0', StringComparison.Ordinal);

    private static int MantissaLength(string text)
    {
        int exponent = text.AsSpan().IndexOfAny('e', 'E');
        return exponent < 0 ? text.Length : exponent;
    }
}
