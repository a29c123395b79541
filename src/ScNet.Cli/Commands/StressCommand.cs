using System.CommandLine;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet stress</c>: what every switch and capacitor must withstand, in modes and at changes between them.</summary>
internal static class StressCommand
{
    public static Command Create()
    {
        Command command = new("stress", "What every switch and capacitor must withstand: in each mode, at changes of mode, with floating nodes.");
        StressInputs inputs = StressInputs.AddTo(
            command,
            "Adds how many devices that withstand this voltage each element needs in series",
            "Adds the kind and the stack of each element, of the devices of this requirement's process");
        Option<bool> held = new("--held")
        {
            Description = "Takes floating nodes to keep what they had, as if open switches did not leak.",
        };
        command.Options.Add(held);
        ResultOutput writer = ResultOutput.Sorting(command, StressPage.Columns, ResultTable.StressColumns);
        command.SetAction(parsed =>
        {
            if (inputs.Devices(parsed) is not { } devices)
            {
                return Tool.Failure;
            }

            FileStress[] stresses = inputs.Find(parsed, !parsed.GetValue(held), devices);
            RatedStress[] results = [.. stresses.Select(s => s.Result)];
            writer.Write(
                parsed,
                () => ResultTable.OfStress(inputs.InputVolts(parsed), results, devices.IsGiven),
                results.Where(r => r.Stress is not null).Select(StressPage.Of));
            return stresses.All(s => s.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
