using System.CommandLine;
using ScNet.Cli.Rendering;
using ScNet.Results;
using ScNet.SteadyState;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet operate</c>: the periodic steady state of every mode at one operating point.</summary>
internal static class OperateCommand
{
    public static Command Create()
    {
        Argument<string[]> files = SharedOptions.Files();
        Option<double> input = SharedOptions.Number("--input-voltage", "V", "volts (V)", "Input voltage");
        Option<double> load = SharedOptions.SignedNumber("--load-current", "A", "amperes (A)", "Average current out of the output node into the load");
        Option<double> frequency = SharedOptions.Number("--frequency", "HZ", "hertz (Hz)", "Switching frequency");
        Option<double?> deadTime = SharedOptions.OptionalNumber(
            "--dead-time", "SECONDS", "seconds (s)", "How long all switches are open at the end of each phase (none where left out)");
        Option<string> mode = SharedOptions.Mode();
        Option<string> format = SharedOptions.Format("text", "json", "csv");
        Command command = new("operate", "Voltages, currents, ripple and losses of every mode at an operating point.")
        {
            files, input, load, frequency, deadTime, mode, format,
        };
        command.SetAction(parsed =>
        {
            OperatingConditions conditions = new(
                new OperatingPoint(parsed.GetValue(input), parsed.GetValue(load), parsed.GetValue(frequency)), parsed.GetValue(deadTime));
            TextWriter output = parsed.InvocationConfiguration.Output, error = parsed.InvocationConfiguration.Error;
            FileOperation[] operations = [.. parsed.GetRequiredValue(files)
                .Select(path => FileOperation.Of(NetlistFile.Read(path, error), conditions, parsed.GetValue(mode), error))];
            IEnumerable<ResultRow<PeriodicSteadyState>> rows = operations.SelectMany(o => o.Rows);
            switch (parsed.GetValue(format))
            {
                case "json":
                    output.WriteLine(ResultTable.OfOperation(conditions.Point, conditions.DeadTimeSeconds ?? 0, rows).ToJson());
                    break;
                case "csv":
                    output.Write(ResultTable.OfOperation(conditions.Point, conditions.DeadTimeSeconds ?? 0, rows).ToCsv());
                    break;
                default:
                    OperationText.Write(output, conditions, rows);
                    break;
            }

            return operations.All(o => o.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
