using System.CommandLine;
using ScNet.Design;
using ScNet.Devices;
using ScNet.Results;
using ScNet.Results.Pages;

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
        Option<string?> requirement = SharedOptions.Requirement(
            "With --load-current: adds the efficiency with all losses of the devices of this requirement's process, chosen for least loss");
        foreach (Option option in new Option[] { input, rating, capacitance, conductance, frequency, silicon, load, requirement })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.Sorting(
            command, [.. ComparisonPage.Columns(), .. ComparisonPage.Columns(hasSilicon: true, hasLoad: true, hasBudgets: true)], Columns(true, true, true));
        command.Validators.Add(result =>
        {
            if (result.GetValue(requirement) is not null && result.GetValue(load) is null)
            {
                result.AddError("Expected --load-current with --requirement: losses are those at a load.");
            }

            if (writer.SortKey(result) is { } column && Columns(true, true, true).Contains(column))
            {
                if (!Columns(true, true, false).Contains(column) && result.GetValue(requirement) is null)
                {
                    result.AddError($"The column {column} is there with --requirement only.");
                }

                if (!Columns(true, false, true).Contains(column) && result.GetValue(load) is null)
                {
                    result.AddError($"The column {column} is there with --load-current only.");
                }

                if (!Columns(false, true, true).Contains(column) && !result.GetValue(silicon))
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
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
            if (!RequirementFile.TryReadProcess(parsed.GetValue(requirement), session, out Process? process))
            {
                return Tool.Failure;
            }

            bool isSilicon = parsed.GetValue(silicon);
            double? amperes = parsed.GetValue(load);
            FileComparison[] comparisons = [.. netlists.Read(parsed)
                .Select(file => FileComparison.Of(file, conditions, isSilicon, amperes, process, error))];
            ResultRow<ComparedMode>[] rows = [.. comparisons.SelectMany(c => c.Rows)];
            ResultTable Table() => ResultTable.OfComparisons(conditions, rows, isSilicon, amperes, process is not null);
            writer.Write(parsed, Table, rows, r => ComparisonPage.Of(conditions, r, isSilicon, amperes, process));

            return comparisons.All(c => c.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    // the figures by which rows can be sorted
    private static IReadOnlyList<string> Columns(bool hasSilicon, bool hasLoad, bool hasBudgets) =>
        ResultTable.OfComparisons(new ComparisonConditions(1, 1), [], hasSilicon, hasLoad ? 1 : null, hasBudgets).Columns;
}
