using System.CommandLine;
using System.CommandLine.Parsing;
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
        StressInputs inputs = StressInputs.AddTo(
            command,
            "With --gate-voltage: what each switch withstands, of which as many as it takes are in series (one each where left out)",
            "The requirement whose process tells what switches are made of");
        Option<double?> drive = SharedOptions.OptionalNumber(
            "--gate-voltage", "V", "volts (V)", "Instead of --requirement: the gate-source voltage that turns every switch on");
        Option<double?> gateRating = SharedOptions.OptionalNumber(
            "--gate-rating", "V", "volts (V)", "With --gate-voltage: the gate-source voltage that a gate withstands (any where left out)");
        Option<string[]> pType = new("--p-type")
        {
            Description = "With --gate-voltage: the switches that are p-type, separated by commas; all others are n-type.",
            HelpName = "SWITCH,SWITCH",
        };
        foreach (Option option in new Option[] { drive, gateRating, pType })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.Sorting(command, GatePage.Columns, ResultTable.GateColumns);
        command.Validators.Add(result => Check(result, inputs, drive, gateRating, pType));
        command.SetAction(parsed =>
        {
            if (inputs.Devices(parsed) is not { } devices)
            {
                return Tool.Failure;
            }

            if (parsed.GetValue(drive) is { } volts)
            {
                devices = devices with { Gate = new GateChoice(volts, parsed.GetValue(gateRating), Names(parsed.GetValue(pType))) };
            }

            FileStress[] stresses = inputs.Find(parsed, openSwitchesLeak: true, devices);
            GateNeeds[] results = [.. stresses.Select(s => s.Ratings is { } ratings
                ? GateNeeds.Of(s.File.Path, ConverterGateDrive.Of(ratings), s.Only)
                : GateNeeds.Unreadable(s.File.Path, s.File.Reading.Diagnostics))];
            writer.Write(parsed, () => ResultTable.OfGates(inputs.InputVolts(parsed), results), results.Where(r => r.Drive is not null).Select(GatePage.Of));
            return stresses.All(s => s.IsComplete) ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static void Check(CommandResult result, StressInputs inputs, Option<double?> drive, Option<double?> gateRating, Option<string[]> pType)
    {
        bool hasDrive = result.GetResult(drive) is not null;
        if (hasDrive == inputs.HasRequirement(result))
        {
            result.AddError(hasDrive
                ? "Expected --gate-voltage or --requirement, but got both."
                : "A gate lies above its source by the voltage that turns the switch on: expected --gate-voltage V, such as --gate-voltage 1.8, or --requirement FILE, whose process tells it.");
        }

        bool hasOthers = result.GetResult(gateRating) is not null || result.GetResult(pType) is not null || inputs.HasRating(result);
        if (hasOthers && !hasDrive && !inputs.HasRequirement(result))
        {
            return;
        }

        if (hasOthers && !hasDrive)
        {
            result.AddError("--rating, --gate-rating and --p-type belong to --gate-voltage: with --requirement the kinds of its process tell them.");
        }

        if (SharedOptions.Given(result, drive) is { } volts && SharedOptions.Given(result, gateRating) < volts)
        {
            result.AddError("Expected a --gate-rating of at least the --gate-voltage: no gate would withstand what turns it on.");
        }
    }

    private static string[] Names(string[]? lists) => [.. (lists ?? []).SelectMany(l => l.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];
}
