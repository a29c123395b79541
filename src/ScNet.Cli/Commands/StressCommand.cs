using System.CommandLine;
using ScNet.Devices;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet stress</c>: what every switch and capacitor must withstand, in modes and at changes between them.</summary>
internal static class StressCommand
{
    public static Command Create()
    {
        Command command = new("stress", "What every switch and capacitor must withstand: in each mode, at changes of mode, with floating nodes.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<Interval<double>> input = VoltageRange.Input();
        Option<double?> rating = SharedOptions.OptionalNumber("--rating", "V", "volts (V)", "Adds how many devices that withstand this voltage each element needs in series");
        Option<string?> requirement = SharedOptions.Requirement("Adds the kind and the stack of each element, of the devices of this requirement's process");
        Option<bool> held = new("--held")
        {
            Description = "Takes floating nodes to keep what they had, as if open switches did not leak.",
        };
        Option<string> mode = SharedOptions.Mode();
        foreach (Option option in new Option[] { input, rating, requirement, held, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.AddTo(command);
        command.Validators.Add(result =>
        {
            if (result.GetResult(rating) is { Implicit: false } && result.GetResult(requirement) is { Implicit: false })
            {
                result.AddError("Expected --rating or --requirement, but got both.");
            }
        });
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter output = session.Output, error = session.Error;
            Process? process = null;
            if (parsed.GetValue(requirement) is { } path)
            {
                process = RequirementFile.Read(path, session)?.Process;
                if (process is null)
                {
                    return Tool.Failure;
                }
            }

            DeviceChoice devices = new(process, parsed.GetValue(rating));
            Interval<double> volts = parsed.GetValue(input);
            FileStress[] stresses = [.. netlists.Read(parsed)
                .Select(file => FileStress.Of(file, volts, !parsed.GetValue(held), parsed.GetValue(mode), devices, error))];
            RatedStress[] results = [.. stresses.Select(s => s.Result)];
            writer.Write(parsed, () => ResultTable.OfStress(volts, results, devices.IsGiven), results.Where(r => r.Stress is not null).Select(StressPage.Of));

            return stresses.All(s => s.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
