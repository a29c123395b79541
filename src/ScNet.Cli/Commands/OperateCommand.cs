using System.CommandLine;
using ScNet.Devices;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet operate</c>: the periodic steady state of every mode at one operating point.</summary>
internal static class OperateCommand
{
    public static Command Create()
    {
        Command command = new("operate", "Voltages, currents, ripple and losses of every mode at an operating point.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<double> input = SharedOptions.Number("--input-voltage", "V", "volts (V)", "Input voltage");
        Option<double> load = SharedOptions.SignedNumber("--load-current", "A", "amperes (A)", "Average current out of the output node into the load");
        Option<double> frequency = SharedOptions.Number("--frequency", "HZ", "hertz (Hz)", "Switching frequency");
        Option<double?> deadTime = SharedOptions.OptionalNumber(
            "--dead-time", "SECONDS", "seconds (s)", "How long all switches are open at the end of each phase (none where left out)");
        Option<string?> requirement = SharedOptions.Requirement("Adds the losses with the devices of this requirement's process, by kind and element");
        Option<string> mode = SharedOptions.Mode();
        foreach (Option option in new Option[] { input, load, frequency, deadTime, requirement, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.Sorting(command, OperationPage.Columns, ResultTable.OperationColumns);
        command.SetAction(parsed =>
        {
            OperatingConditions conditions = new(
                new OperatingPoint(parsed.GetValue(input), parsed.GetValue(load), parsed.GetValue(frequency)), parsed.GetValue(deadTime));
            ToolSession session = ToolSession.Of(parsed);
            if (!RequirementFile.TryReadProcess(parsed.GetValue(requirement), session, out Process? process))
            {
                return Tool.Failure;
            }

            FileOperation[] operations = [.. netlists.Read(parsed)
                .Select(file => session.Follow("solved", (progress, error) => FileOperation.Of(file, conditions, parsed.GetValue(mode), process, error, progress)))];
            ResultRow<OperatedMode>[] rows = [.. operations.SelectMany(o => o.Rows)];
            ResultTable Table() => ResultTable.OfOperation(conditions.Point, conditions.DeadTimeSeconds ?? 0, rows, process is not null);
            writer.Write(parsed, Table, rows, r => OperationPage.Of(conditions.Point, conditions.DeadTimeSeconds ?? 0, r));

            return operations.All(o => o.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
