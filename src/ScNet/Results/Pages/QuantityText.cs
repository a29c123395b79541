using System.Globalization;

namespace ScNet.Results.Pages;

/// <summary>Quantities for people.</summary>
internal static class QuantityText
{
    // a fraction longer than this says less to a reader than its decimal
    private const int LongestFraction = 9;

    /// <summary>An exact fraction with its decimal, "1/3 (0.3333)"; a whole number, a number or "?" as it is.</summary>
    public static string WithDecimal(Quantity value)
    {
        string text = value.ToString();
        return value.IsExact && text.Contains('/', StringComparison.Ordinal) ? $"{text} ({Decimal(value)})" : text;
    }

    /// <summary>As <see cref="WithDecimal"/>, but only the decimal where the fraction is long.</summary>
    public static string Short(Quantity value) =>
        (value.IsDetermined && !value.IsExact) || value.ToString().Length > LongestFraction ? Decimal(value) : WithDecimal(value);

    /// <summary>Four significant digits; "?" where the value is undetermined.</summary>
    public static string Decimal(Quantity value) => !value.IsDetermined ? value.ToString() : value.ToDouble().ToString("G4", CultureInfo.InvariantCulture);
}
