using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace ScNet.Cli.Commands;

/// <summary>Arguments and options that more than one command has.</summary>
internal static class SharedOptions
{
    // the range of values that the library takes
    private const double SmallestValue = 1e-60;
    private const double LargestValue = 1e60;

    /// <summary>The netlist documents to work on, one or more.</summary>
    public static Argument<string[]> Files()
    {
        Argument<string[]> files = new("FILE")
        {
            Description = "Netlist documents (TOML), worked on in the order given.",
            Arity = ArgumentArity.OneOrMore,
        };
        files.Validators.Add(RefuseOptions);
        return files;
    }

    /// <summary>The form of the output; the first one given is the default.</summary>
    public static Option<string> Format(params string[] formats)
    {
        Option<string> format = new("--format")
        {
            Description = "The form of the output.",
            HelpName = string.Join('|', formats),
            DefaultValueFactory = _ => formats[0],
        };
        format.Validators.Add(result =>
        {
            foreach (Token token in result.Tokens.Where(t => !formats.Contains(t.Value)))
            {
                result.AddError($"Expected {string.Join(" or ", formats)} after --format, but got '{token.Value}'.");
            }
        });
        return format;
    }

    /// <summary>A positive number, written with a point whatever the machine's culture.</summary>
    public static Option<double> Number(string name, string helpName, string unit, string description, double? defaultValue = null)
    {
        Option<double> option = new(name)
        {
            Description = $"{description}, in {unit}.",
            HelpName = helpName,
            Required = defaultValue is null,
            CustomParser = result =>
            {
                string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
                if (TryParse(text, out double value))
                {
                    return value;
                }

                result.AddError($"Expected a positive number of {unit} after {name}, such as 2.5 or 1e-6 (from 1e-60 to 1e60), but got '{text}'.");
                return 1;
            },
        };
        if (defaultValue is { } number)
        {
            option.DefaultValueFactory = _ => number;
        }

        return option;
    }

    /// <summary>Switching frequencies, separated by commas; empty where the option is not given.</summary>
    public static Option<double[]> Frequencies() => new("--frequency")
    {
        Description = "Switching frequencies, in hertz (Hz), separated by commas: gives the exact output impedance at each.",
        HelpName = "HZ,HZ",
        CustomParser = result =>
        {
            string text = result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty;
            List<double> frequencies = [];
            foreach (string part in text.Split(','))
            {
                if (TryParse(part, out double value))
                {
                    frequencies.Add(value);
                }
                else
                {
                    result.AddError($"Expected positive numbers of hertz (Hz) after --frequency, such as 1e6,1e7 (from 1e-60 to 1e60), but got '{part}'.");
                }
            }

            return [.. frequencies];
        },
    };

    private static bool TryParse(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
        && value is >= SmallestValue and <= LargestValue;

    // No file has an empty name, and the parser would take a misspelt option for one more file.
    private static void RefuseOptions(ArgumentResult result)
    {
        foreach (string text in result.Tokens.Select(t => t.Value))
        {
            if (text.Length == 0)
            {
                result.AddError("Expected the name of a file, but got an empty one.");
            }
            else if (text.StartsWith('-'))
            {
                result.AddError($"There is no option '{text}' here. If it is a file, write ./{text}.");
            }
        }
    }
}
