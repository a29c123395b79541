using System.Globalization;

namespace ScNet;

/// <summary>Physical values for people: four significant digits and an engineering prefix, such as "250 MΩ" or "1.2 nF".</summary>
internal static class EngineeringNumber
{
    private const int LowestExponent = -18;

    // one per factor of a thousand, from 1e-18 to 1e18
    private static readonly string[] s_prefixes = ["a", "f", "p", "n", "µ", "m", "", "k", "M", "G", "T", "P", "E"];

    /// <summary>A value with its unit; "?" where there is none, powers of ten beyond the prefixes.</summary>
    public static string Of(double? value, string unit)
    {
        if (value is not { } number || double.IsNaN(number))
        {
            return "?";
        }

        if (number == 0)
        {
            return $"0 {unit}";
        }

        if (double.IsInfinity(number))
        {
            return $"{(number < 0 ? "-" : string.Empty)}∞ {unit}";
        }

        // rounding first, so that 999.96 becomes 1 k and not 1000
        string rounded = number.ToString("E3", CultureInfo.InvariantCulture);
        int mark = rounded.IndexOf('E', StringComparison.Ordinal);
        int exponent = int.Parse(rounded.AsSpan(mark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        int thousands = (int)Math.Floor(exponent / 3.0);
        int index = thousands - (LowestExponent / 3);
        if (index < 0 || index >= s_prefixes.Length)
        {
            return $"{number.ToString("0.###E+0", CultureInfo.InvariantCulture)} {unit}";
        }

        decimal mantissa = decimal.Parse(rounded.AsSpan(0, mark), NumberStyles.Float, CultureInfo.InvariantCulture);
        for (int i = 3 * thousands; i < exponent; i++)
        {
            mantissa *= 10;
        }

        return $"{mantissa.ToString("0.###", CultureInfo.InvariantCulture)} {s_prefixes[index]}{unit}";
    }

    /// <summary>What a value of this magnitude is counted in, for several values that are to have the same prefix.</summary>
    public static (double Factor, string Prefix) PrefixOf(double magnitude)
    {
        int thousands = magnitude > 0 && double.IsFinite(magnitude) ? (int)Math.Floor((Math.Log10(magnitude) / 3) + 1e-9) : 0;
        int index = Math.Clamp(thousands - (LowestExponent / 3), 0, s_prefixes.Length - 1);
        return (Math.Pow(10, LowestExponent + (3 * index)), s_prefixes[index]);
    }
}
