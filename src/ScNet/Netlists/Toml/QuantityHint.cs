using System.Globalization;
using System.Text.RegularExpressions;

namespace ScNet.Netlists.Toml;

/// <summary>What to write instead of a quantity in quotation marks: of "1n" the number 1e-9.</summary>
internal static partial class QuantityHint
{
    private const int MaximumLength = 32;

    private static readonly (string Prefix, int Exponent)[] s_prefixes =
        [("f", -15), ("p", -12), ("n", -9), ("u", -6), ("\u00B5", -6), ("\u03BC", -6), ("m", -3), ("", 0), ("k", 3), ("K", 3), ("M", 6), ("meg", 6), ("Meg", 6), ("G", 9), ("T", 12)];

    private static readonly Dictionary<string, string[]> s_units = new()
    {
        ["farads"] = ["farads", "farad", "F"],
        ["ohms"] = ["ohms", "ohm", "\u03A9", "\u2126", "R"],
        ["henries"] = ["henries", "henry", "H"],
        ["volts"] = ["volts", "volt", "V"],
        ["amperes"] = ["amperes", "ampere", "amps", "amp", "A"],
        ["coulombs"] = ["coulombs", "coulomb", "C"],
        ["watts"] = ["watts", "watt", "W"],
        ["hertz"] = ["hertz", "Hz"],
        ["seconds"] = ["seconds", "second", "s"],
        ["metres"] = ["metres", "metre", "m"],
    };

    /// <summary>A sentence of advice, with a blank before it.</summary>
    /// <param name="text">What stands in the quotation marks.</param>
    /// <param name="unit">The unit in which the key counts, in the plural.</param>
    public static string For(string text, string unit) => $" Write {NumberOf(text, unit) ?? $"the plain number of {unit}, such as 1e-9"}, without quotation marks.";

    private static string? NumberOf(string text, string unit)
    {
        Match match = text.Length > MaximumLength ? Match.Empty : Parts().Match(text.Trim());
        string word = match.Groups["rest"].Value;
        if (!match.Success || WithoutUnit(word, unit) is not { } prefix || Array.FindIndex(s_prefixes, p => p.Prefix == prefix) is not (>= 0 and var index))
        {
            return null;
        }

        int exponent = s_prefixes[index].Exponent + (match.Groups["exponent"] is { Success: true } written ? int.Parse(written.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture) : 0);
        return match.Groups["digits"].Value + (exponent == 0 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"e{exponent}"));
    }

    // what is left of "nF" or "kohms" without the unit
    private static string? WithoutUnit(string word, string unit)
    {
        string[] units = s_units.GetValueOrDefault(unit, []);
        return units.Where(u => word.EndsWith(u, u.Length > 1 ? StringComparison.OrdinalIgnoreCase : StringComparison.Ordinal))
            .Select(u => word[..^u.Length].TrimEnd()).FirstOrDefault(word);
    }

    [GeneratedRegex(@"^(?<digits>\d+(\.\d+)?)([eE](?<exponent>[+-]?\d{1,3}))?\s*(?<rest>[^\d\s.]*(\s?[^\d\s.]+)?)$", RegexOptions.CultureInvariant)]
    private static partial Regex Parts();
}
