using System.CommandLine;
using ScNet.Devices;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet gates</c>: what the gate and the body of every switch need.</summary>
internal static class GatesCommand
{
    public static Command Create()
    {
        Command command = new("gates", "Gate drive: the level that each gate needs in every phase, the nodes that give it, and those that take the body.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<Interval<double>> input = VoltageRange.Input();
        Option<string?> requirement = SharedOptions.Requirement("The requirement whose process tells what switches are made of");
        requirement.Required = true;
        Option<string> mode = SharedOptions.Mode();
        foreach (Option option in new Option[] { input, requirement, mode })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.AddTo(command);
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

            DeviceChoice devices = new(process, null);
            Interval<double> volts = parsed.GetValue(input);
            FileStress[] stresses = [.. netlists.Read(parsed)
                .Select(file => FileStress.Of(file, volts, openSwitchesLeak: true, parsed.GetValue(mode), devices, error))];
            GateNeeds[] results = [.. stresses.Select(s => s.Ratings is { } ratings
                ? GateNeeds.Of(s.File.Path, ConverterGateDrive.Of(ratings), s.Only)
                : GateNeeds.Unreadable(s.File.Path, s.File.Reading.Diagnostics))];
            writer.Write(parsed, () => ResultTable.OfGates(volts, results), results.Where(r => r.Drive is not null).Select(GatePage.Of));

            return stresses.All(s => s.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }
}
