using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace ScNet.Cli.Commands;

/// <summary>Arguments and options that more than one command has.</summary>
internal static class SharedOptions
{
    // the range of values that the library takes
    private const double MinimumValue = 1e-60;
    private const double MaximumValue = 1e60;

    /// <summary>The netlist documents to work on; that there is one is for <see cref="NetlistSources"/> to see.</summary>
    public static Argument<string[]> Files(bool isSingle)
    {
        Argument<string[]> files = new("FILE")
        {
            Description = isSingle ? "A netlist document (TOML); - is standard input." : "Netlist documents (TOML), worked on in the order given; - is standard input.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        files.Validators.Add(RefuseOptions);
        return files;
    }

    /// <summary>Documents to work on that are no netlists, at least one.</summary>
    public static Argument<string[]> Documents(string name, string description)
    {
        Argument<string[]> files = new(name) { Description = $"{description}; - is standard input.", Arity = ArgumentArity.OneOrMore };
        files.Validators.Add(RefuseOptions);
        return files;
    }

    /// <summary>The only document to work on where that is not a netlist.</summary>
    public static Argument<string> Document(string name, string description)
    {
        Argument<string> file = new(name) { Description = $"{description} (TOML); - is standard input." };
        file.Validators.Add(RefuseOptions);
        return file;
    }

    /// <summary>A folder to work on.</summary>
    public static Argument<string> Folder(string name, string description)
    {
        Argument<string> folder = new(name) { Description = description };
        folder.Validators.Add(RefuseOptions);
        return folder;
    }

    /// <summary>An option that names a file or folder to write: no empty name.</summary>
    public static Option<T> Named<T>(Option<T> option)
    {
        option.Validators.Add(result =>
        {
            if (result.Tokens.Any(t => t.Value.Length == 0))
            {
                result.AddError($"Expected a name after {option.Name}, but got an empty one.");
            }
        });
        return option;
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
        format.CompletionSources.Add(formats);
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
        Option<double> option = Parsed(
            name,
            helpName,
            $"{description}, in {unit}.",
            required: defaultValue is null,
            (string text, out double value) => TryParse(text, out value) ? null : PositiveExpected(name, unit, text));
        if (defaultValue is { } number)
        {
            option.DefaultValueFactory = _ => number;
        }

        return option;
    }

    /// <summary>A positive number that may be left out.</summary>
    public static Option<double?> OptionalNumber(string name, string helpName, string unit, string description) =>
        Parsed<double?>(name, helpName, $"{description}, in {unit}.", required: false, (string text, out double? value) =>
        {
            bool isNumber = TryParse(text, out double number);
            value = number;
            return isNumber ? null : PositiveExpected(name, unit, text);
        });

    /// <summary>What an optional number is given as; null where it is left out or no number, which is told of the option itself.</summary>
    public static double? Given(CommandResult result, Option<double?> option) =>
        result.GetResult(option)?.Tokens is [.., { } last] && TryParse(last.Value, out double number) ? number : null;

    /// <summary>A number of either sign, or zero.</summary>
    public static Option<double> SignedNumber(string name, string helpName, string unit, string description) =>
        Parsed(name, helpName, $"{description}, in {unit}.", required: true, (string text, out double value) =>
            TryParseSigned(text, out value) ? null : SignedExpected(name, unit, text));

    /// <summary>A number of either sign, or zero, that may be left out.</summary>
    public static Option<double?> OptionalSignedNumber(string name, string helpName, string unit, string description) =>
        Parsed<double?>(name, helpName, $"{description}, in {unit}.", required: false, (string text, out double? value) =>
        {
            bool isNumber = TryParseSigned(text, out double number);
            value = number;
            return isNumber ? null : SignedExpected(name, unit, text);
        });

    /// <summary>Only the mode of a name.</summary>
    public static Option<string> Mode() => new("--mode") { Description = "Only the mode of this name.", HelpName = "NAME" };

    /// <summary>A requirement document whose process tells what devices there are.</summary>
    public static Option<string?> Requirement(string purpose) => new("--requirement") { Description = $"{purpose}; - is standard input.", HelpName = "FILE" };

    /// <summary>Switching frequencies and ranges of them, separated by commas; null where the option is not given.</summary>
    public static Option<double[]> Frequencies(string purpose, bool required)
    {
        Option<double[]> option = new("--frequency")
        {
            Description = $"Switching frequencies, in hertz (Hz), separated by commas; 1e5..1e8 stands for {FrequencyList.PointsPerDecade} points per decade, "
                + $"1e5..1e8:31 for 31 points{purpose}.",
            HelpName = "HZ,HZ|HZ..HZ[:POINTS]",
            Required = required,
        };
        option.CustomParser = result =>
            FrequencyList.Parse(result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty, option.Name, result.AddError);
        return option;
    }

    /// <summary>A positive number within the range that the library takes, with a decimal point in every culture.</summary>
    public static bool TryParse(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
        && value is >= MinimumValue and <= MaximumValue;

    /// <summary>Zero, or a number of either sign within the range that the library takes, with a decimal point in every culture.</summary>
    public static bool TryParseSigned(string text, out double value) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
        && (value == 0 || Math.Abs(value) is >= MinimumValue and <= MaximumValue);

    private static string SignedExpected(string name, string unit, string text) =>
        $"Expected a number of {unit} after {name}, such as 0.25, 0 or -1e-3 (zero, or 1e-60 to 1e60 of either sign), but got '{text}'.";

    // Gives the value, and a message where the text is wrong.
    private delegate string? Parser<T>(string text, out T value);

    private static Option<T> Parsed<T>(string name, string helpName, string description, bool required, Parser<T> parse) => new(name)
    {
        Description = description,
        HelpName = helpName,
        Required = required,
        CustomParser = result =>
        {
            if (parse(result.Tokens.Count > 0 ? result.Tokens[^1].Value : string.Empty, out T value) is { } message)
            {
                result.AddError(message);
            }

            return value;
        },
    };

    private static string PositiveExpected(string name, string unit, string text) =>
        $"Expected a positive number of {unit} after {name}, such as 2.5 or 1e-6 (from 1e-60 to 1e60), but got '{text}'.";

    // No file has an empty name, and the parser would take a misspelt option for one more file.
    private static void RefuseOptions(ArgumentResult result)
    {
        foreach (string text in result.Tokens.Select(t => t.Value))
        {
            if (text.Length == 0)
            {
                result.AddError("Expected the name of a file, but got an empty one.");
            }
            else if (text.StartsWith('-') && text != ToolSession.InputName)
            {
                result.AddError($"There is no option '{text}' here. If it is a file, write ./{text}.");
            }
        }
    }
}
