using System.Globalization;
using System.Numerics;
using System.Text;
using Fractions;

namespace ScNet.Netlists.Toml;

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
            if (i + 1 < value.Length && char.IsSurrogatePair(c, value[i + 1]))
            {
                Rune pair = new(c, value[++i]);
                text.Append(Printable.Shows(pair) ? pair.ToString() : FormattableString.Invariant($"\\U{pair.Value:X8}"));
            }
            else if (char.IsSurrogate(c))
            {
                throw new ArgumentException($"Expected characters, but the name {Quoted.Name(value)} has half of one (U+{(int)c:X4}) at index {i}. Remove it.", nameof(value));
            }
            else if (c is '"' or '\\')
            {
                text.Append('\\').Append(c);
            }
            else if (!Printable.Shows(new Rune(c)))
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

    /// <summary>A positive fraction exactly: as a decimal where it has one that is short enough to be read, in quotation marks ("2/3") otherwise; null where that is too long too.</summary>
    public static string? Exact(Fraction value)
    {
        Fraction reduced = value.Reduce();
        BigInteger digits = BigInteger.DivRem(reduced.Numerator * BigInteger.Pow(10, MaximumPlaces), reduced.Denominator, out BigInteger rest);
        string all = digits.ToString(CultureInfo.InvariantCulture).PadLeft(MaximumPlaces + 1, '0');
        (string whole, string places) = (all[..^MaximumPlaces], all[^MaximumPlaces..].TrimEnd('0'));
        string decimals = $"{whole}.{(places.Length > 0 ? places : "0")}";
        string scaled = $"{(whole + places).TrimStart('0')}e-{Number(places.Length)}";
        string ratio = $"\"{reduced.Numerator.ToString(CultureInfo.InvariantCulture)}/{reduced.Denominator.ToString(CultureInfo.InvariantCulture)}\"";
        return rest.IsZero && decimals.Length <= ExactDecimal.MaximumLength ? decimals
            : rest.IsZero && scaled.Length <= ExactDecimal.MaximumLength ? scaled
            : ratio.Length <= ExactDecimal.MaximumLength ? ratio
            : null;
    }

    // 5e-324 is the smallest double, and 64 digits may stand before its exponent
    private const int MaximumPlaces = 400;
}
