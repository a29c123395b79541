using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace ScNet.Cli.Commands;

/// <summary>Options whose values are whole numbers or fractions, with a point in every culture.</summary>
internal static class NumberOptions
{
    private const int DefaultSeed = 1;

    /// <summary>What random choices start from.</summary>
    public static Option<int> Seed(string description) => Whole("--seed", $"{description}", int.MinValue, int.MaxValue, DefaultSeed);

    /// <summary>A whole number within a range.</summary>
    public static Option<int> Whole(string name, string description, int minimum, int maximum, int defaultValue)
    {
        Option<int> option = new(name) { Description = $"{description}.", HelpName = "N", DefaultValueFactory = _ => defaultValue };
        option.CustomParser = result =>
        {
            string text = Text(result);
            if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) && value >= minimum && value <= maximum)
            {
                return value;
            }

            result.AddError(string.Create(CultureInfo.InvariantCulture, $"Expected a whole number from {minimum} to {maximum} after {name}, but got '{text}'."));
            return defaultValue;
        };
        return option;
    }

    /// <summary>The most threads; 0 where the option is not given.</summary>
    public static Option<int> Threads()
    {
        Option<int> threads = new("--threads") { Description = "The most threads; as many as the machine has where it is not given. The answer is the same.", HelpName = "N" };
        threads.CustomParser = result =>
        {
            string text = Text(result);
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count) || count < 1)
            {
                result.AddError($"Expected a whole number from 1 on after --threads, but got '{text}'.");
            }

            return count;
        };
        return threads;
    }

    /// <summary>A fraction from 0 to below 1.</summary>
    public static Option<double> Fraction(string name, string description, string example, double defaultValue)
    {
        Option<double> option = new(name) { Description = description, HelpName = "FRACTION", DefaultValueFactory = _ => defaultValue };
        option.CustomParser = result =>
        {
            string text = Text(result);
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && value is >= 0 and < 1)
            {
                return value;
            }

            result.AddError($"Expected a fraction from 0 to below 1 after {name}, such as {example}, but got '{text}'.");
            return defaultValue;
        };
        return option;
    }

    private static string Text(ArgumentResult result) => result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
}
