using System.CommandLine;

namespace ScNet.Cli.Commands;

/// <summary>One voltage or a range of them: 4.2, or 2.8..4.2.</summary>
internal static class VoltageRange
{
    private const string Between = "..";

    /// <summary>The input voltages at which a converter runs.</summary>
    public static Option<Interval<double>> Input()
    {
        Option<Interval<double>> option = new("--input-voltage")
        {
            Description = "Input voltage, or the smallest and the largest with two dots between them, in volts (V).",
            HelpName = "V|V..V",
            Required = true,
        };
        option.CustomParser = result =>
        {
            string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
            if (Parse(text) is { } range)
            {
                return range;
            }

            result.AddError($"Expected a positive number of volts (V) after {option.Name}, such as 4.2, or a rising range such as 2.8..4.2, but got '{text}'.");
            return default;
        };
        return option;
    }

    private static Interval<double>? Parse(string text)
    {
        int dots = text.IndexOf(Between, StringComparison.Ordinal);
        string low = dots < 0 ? text : text[..dots], high = dots < 0 ? text : text[(dots + Between.Length)..];
        return SharedOptions.TryParse(low, out double minimum) && SharedOptions.TryParse(high, out double maximum) && minimum <= maximum
            ? new Interval<double>(minimum, maximum)
            : null;
    }
}
