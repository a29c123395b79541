using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Cli.Rendering;
using ScNet.Design;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet compare</c>: the modes of all files side by side on common ground.</summary>
internal static class CompareCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Files();
        Option<double> input = SharedOptions.Number("--input-voltage", "V", "volts (V)", "Input voltage");
        Option<double> rating = SharedOptions.Number("--rating", "V", "volts (V)", "Voltage that each switch and capacitor stands");
        Option<double> capacitance = SharedOptions.Number(
            "--total-capacitance", "F", "farads (F)", "Sum of all capacitances", ComparisonConditions.DefaultTotalCapacitanceFarads);
        Option<double> conductance = SharedOptions.Number(
            "--total-conductance", "S", "siemens (S)", "Sum of all switch conductances", ComparisonConditions.DefaultTotalConductanceSiemens);
        Option<double> frequency = SharedOptions.Number(
            "--frequency", "HZ", "hertz (Hz)", "Switching frequency of the slow-switching limit", ComparisonConditions.DefaultFrequencyHz);
        Option<string?> sort = Sort();
        Option<string> format = SharedOptions.Format("text", "json", "csv");
        Command command = new("compare", "All modes of all files side by side, at equal totals and against a voltage rating.")
        {
            files, input, rating, capacitance, conductance, frequency, sort, format,
        };
        command.SetAction(parsed =>
        {
            ComparisonConditions conditions = new(
                parsed.GetValue(input),
                parsed.GetValue(rating),
                parsed.GetValue(capacitance),
                parsed.GetValue(conductance),
                parsed.GetValue(frequency));
            TextWriter error = parsed.InvocationConfiguration.Error;
            FileComparison[] comparisons = [.. parsed.GetRequiredValue(files)
                .Select(path => FileComparison.Of(NetlistFile.Read(path, error), conditions, error))];
            Write(parsed.GetValue(format), parsed.InvocationConfiguration.Output, conditions, comparisons, parsed.GetValue(sort));
            return comparisons.All(c => c.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static Option<string?> Sort()
    {
        Option<string?> sort = new("--sort")
        {
            Description = "Sorts the rows by a column of the CSV output, the smallest first, those without a value last.",
            HelpName = "COLUMN",
        };
        sort.Validators.Add(result =>
        {
            foreach (Token token in result.Tokens.Where(t => ComparisonColumns.All.All(c => c.Header != t.Value)))
            {
                result.AddError($"Expected one of {string.Join(", ", ComparisonColumns.All.Select(c => c.Header))} after --sort, but got '{token.Value}'.");
            }
        });
        return sort;
    }

    private static void Write(
        string? format, TextWriter output, ComparisonConditions conditions, FileComparison[] comparisons, string? column)
    {
        ComparisonRow[] rows = ComparisonRows.Of(comparisons, column);
        switch (format)
        {
            case "json":
                ComparisonJson.Write(output, conditions, rows);
                break;
            case "csv":
                ComparisonCsv.Write(output, rows);
                break;
            default:
                ComparisonText.Write(output, conditions, comparisons, rows);
                break;
        }
    }
}
