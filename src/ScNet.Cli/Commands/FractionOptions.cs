using System.CommandLine;
using System.CommandLine.Parsing;
using Fractions;

namespace ScNet.Cli.Commands;

/// <summary>Options whose values are exact fractions: 2/5 or 0.4, with a point in every culture.</summary>
internal static class FractionOptions
{
    private const string Between = "..";

    /// <summary>A ratio or a range of ratios, which must be given.</summary>
    public static Option<Interval<Fraction>> Range(string name, string description)
    {
        Option<Interval<Fraction>> option = new(name) { Description = $"{description}.", HelpName = "RATIO|RATIO..RATIO", Required = true };
        option.CustomParser = result =>
        {
            string text = Text(result);
            int dots = text.IndexOf(Between, StringComparison.Ordinal);
            string low = dots < 0 ? text : text[..dots], high = dots < 0 ? text : text[(dots + Between.Length)..];
            if (TryParse(low, out Fraction minimum) && TryParse(high, out Fraction maximum) && minimum <= maximum)
            {
                return new Interval<Fraction>(minimum, maximum);
            }

            result.AddError($"Expected a ratio after {name}, such as 2/5 or 0.4, or a rising range such as 1/3..1/2, but got '{text}'.");
            return default;
        };
        return option;
    }

    /// <summary>A positive share, which may be left out.</summary>
    public static Option<Fraction?> Share(string name, string description)
    {
        Option<Fraction?> option = new(name) { Description = $"{description}.", HelpName = "SHARE" };
        option.CustomParser = result =>
        {
            string text = Text(result);
            if (TryParse(text, out Fraction share) && share.IsPositive)
            {
                return share;
            }

            result.AddError($"Expected a positive share after {name}, such as 2/5 or 0.4, but got '{text}'.");
            return null;
        };
        return option;
    }

    private static bool TryParse(string text, out Fraction value) => ExactDecimal.TryParseRatio(text, out value) || ExactDecimal.TryParse(text, out value);

    private static string Text(ArgumentResult result) => result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
}
