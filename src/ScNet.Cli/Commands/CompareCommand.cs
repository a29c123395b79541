using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Cli.Rendering;
using ScNet.Design;
using ScNet.Results;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet compare</c>: the modes of all files side by side on common ground.</summary>
internal static class CompareCommand
{
    public static Command Create()
    {
        Command command = new("compare", "All modes of all files side by side, at equal totals and against a voltage rating.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<double> input = SharedOptions.Number("--input-voltage", "V", "volts (V)", "Input voltage");
        Option<double> rating = SharedOptions.Number("--rating", "V", "volts (V)", "Voltage that each switch and capacitor withstands");
        Option<double> capacitance = SharedOptions.Number(
            "--total-capacitance", "F", "farads (F)", "Sum of all capacitances", ComparisonConditions.DefaultTotalCapacitanceFarads);
        Option<double> conductance = SharedOptions.Number(
            "--total-conductance", "S", "siemens (S)", "Sum of all switch conductances", ComparisonConditions.DefaultTotalConductanceSiemens);
        Option<double> frequency = SharedOptions.Number(
            "--frequency", "HZ", "hertz (Hz)", "Switching frequency of the slow-switching limit", ComparisonConditions.DefaultFrequencyHz);
        Option<bool> silicon = new("--silicon")
        {
            Description = "Adds the limits at equal silicon: elements over the rating are stacked in series, and the area is the same for all.",
        };
        Option<double?> load = SharedOptions.OptionalSignedNumber(
            "--load-current", "A", "amperes (A)", "Adds output voltage and efficiency of every mode at this average current out of the output node");
        Option<string?> sort = Sort();
        Option<string> format = SharedOptions.Format("text", "json", "csv");
        foreach (Option option in new Option[] { input, rating, capacitance, conductance, frequency, silicon, load, sort, format })
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (result.GetValue(sort) is { } column && ResultTable.ComparisonColumns(hasSilicon: true, hasLoad: true).Contains(column))
            {
                if (!ResultTable.ComparisonColumns(hasSilicon: true).Contains(column) && result.GetValue(load) is null)
                {
                    result.AddError($"The column {column} is there with --load-current only.");
                }

                if (!ResultTable.ComparisonColumns(hasSilicon: false, hasLoad: true).Contains(column) && !result.GetValue(silicon))
                {
                    result.AddError($"The column {column} is there with --silicon only.");
                }
            }
        });
        command.SetAction(parsed =>
        {
            ComparisonConditions conditions = new(
                parsed.GetValue(input),
                parsed.GetValue(rating),
                parsed.GetValue(capacitance),
                parsed.GetValue(conductance),
                parsed.GetValue(frequency));
            TextWriter error = parsed.InvocationConfiguration.Error;
            bool isSilicon = parsed.GetValue(silicon);
            double? amperes = parsed.GetValue(load);
            FileComparison[] comparisons = [.. netlists.Read(parsed)
                .Select(file => FileComparison.Of(file, conditions, isSilicon, amperes, error))];
            IReadOnlyList<ResultRow<ComparedMode>> rows = [.. comparisons.SelectMany(c => c.Rows)];
            if (parsed.GetValue(sort) is { } column)
            {
                rows = ResultTable.SortedComparisons(rows, column);
            }

            TextWriter output = parsed.InvocationConfiguration.Output;
            switch (parsed.GetValue(format))
            {
                case "json":
                    output.WriteLine(ResultTable.OfComparisons(conditions, rows, isSilicon, amperes).ToJson());
                    break;
                case "csv":
                    output.Write(ResultTable.OfComparisons(conditions, rows, isSilicon, amperes).ToCsv());
                    break;
                default:
                    ComparisonText.Write(output, conditions, isSilicon, amperes, comparisons, rows);
                    break;
            }

            return comparisons.All(c => c.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static Option<string?> Sort()
    {
        Option<string?> sort = new("--sort")
        {
            Description = "Sorts the rows by a column of the CSV output, the smallest first (the highest efficiency), those without a value last.",
            HelpName = "COLUMN",
        };
        sort.Validators.Add(result =>
        {
            IReadOnlyList<string> columns = ResultTable.ComparisonColumns(hasSilicon: true, hasLoad: true);
            foreach (Token token in result.Tokens.Where(t => !columns.Contains(t.Value)))
            {
                result.AddError($"Expected one of {string.Join(", ", columns)} after --sort, but got '{token.Value}'.");
            }
        });
        return sort;
    }
}
