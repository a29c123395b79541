using System.Globalization;
using System.Numerics;
using System.Text;
using Fractions;

namespace ScNet.Netlists.Documents;

/// <summary>Values and keys as TOML 1.0 writes them.</summary>
internal static class TomlLiteral
{
    /// <summary>A key: bare where it may be, in quotation marks otherwise.</summary>
    public static string Key(string name) =>
        name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '_' or '-') ? name : Text(name);

    /// <summary>A basic string: on one line, with whatever does not show written as \uXXXX.</summary>
    /// <exception cref="ArgumentException">The text has half of a surrogate pair, which is no character.</exception>
    public static string Text(string value)
    {
        StringBuilder text = new(value.Length + 2);
        text.Append('"');
        for (int i = 0; i < value.Length; i++)
        {
            char c = value[i];
            if (char.IsHighSurrogate(c) && i + 1 < value.Length && char.IsLowSurrogate(value[i + 1]))
            {
                text.Append(c).Append(value[++i]);
            }
            else if (char.IsSurrogate(c))
            {
                throw new ArgumentException($"Expected characters, but the name {Quoted.Name(value)} has half of one (U+{(int)c:X4}) at index {i}. Remove it.", nameof(value));
            }
            else if (c is '"' or '\\')
            {
                text.Append('\\').Append(c);
            }
            else if (IsInvisible(c))
            {
                text.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}");
            }
            else
            {
                text.Append(c);
            }
        }

        return text.Append('"').ToString();
    }

    /// <summary>A whole number.</summary>
    public static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>The shortest number that reads back as the same finite double: "2.0", "0.25", "1e-9".</summary>
    public static string Number(double value)
    {
        string digits = value.ToString("R", CultureInfo.InvariantCulture);
        int mark = digits.IndexOf('E', StringComparison.Ordinal);
        return mark >= 0 ? $"{digits[..mark]}e{Number(int.Parse(digits.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture))}"
            : digits.Contains('.', StringComparison.Ordinal) ? digits
            : digits + ".0";
    }

    /// <summary>A positive fraction as the decimal of exactly its value; null where it has none that is short enough to be read.</summary>
    public static string? Exact(Fraction value)
    {
        Fraction reduced = value.Reduce();
        (int twos, int fives, BigInteger remainder) = Factors(reduced.Denominator);
        if (!remainder.IsOne || Math.Max(twos, fives) > MostPlaces)
        {
            return null;
        }

        int places = Math.Max(twos, fives);
        BigInteger digits = reduced.Numerator * BigInteger.Pow(2, places - twos) * BigInteger.Pow(5, places - fives);
        string text = digits.ToString(CultureInfo.InvariantCulture);
        string padded = text.PadLeft(places + 1, '0');
        string plain = places == 0 ? text + ".0" : $"{padded[..^places]}.{padded[^places..]}";
        string shorter = plain.Length <= ExactDecimal.MaximumLength ? plain : $"{text}e-{Number(places)}";
        return shorter.Length <= ExactDecimal.MaximumLength ? shorter : null;
    }

    // 5e-324 is the smallest double, and 64 digits may stand before its exponent
    private const int MostPlaces = 400;

    private static (int Twos, int Fives, BigInteger Remainder) Factors(BigInteger number)
    {
        int twos = 0, fives = 0;
        for (; twos <= MostPlaces && number.IsEven; twos++)
        {
            number /= 2;
        }

        for (; fives <= MostPlaces && (number % 5).IsZero; fives++)
        {
            number /= 5;
        }

        return (twos, fives, number);
    }

    private static bool IsInvisible(char c) => CharUnicodeInfo.GetUnicodeCategory(c)
        is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
}
