using System.CommandLine;
using System.CommandLine.Parsing;
using ScNet.Devices;

namespace ScNet.Cli.Commands;

/// <summary>What commands that look at the voltages of elements ask for: netlists, input voltages, a mode, and what the elements are made of.</summary>
internal sealed class StressInputs
{
    private readonly NetlistSources _netlists;
    private readonly Option<Interval<double>> _input = VoltageRange.Input();
    private readonly Option<double?> _rating;
    private readonly Option<string?> _requirement;
    private readonly Option<string> _mode = SharedOptions.Mode();

    private StressInputs(Command command, string rating, string requirement)
    {
        _netlists = NetlistSources.AddTo(command);
        _rating = SharedOptions.OptionalNumber("--rating", "V", "volts (V)", rating);
        _requirement = SharedOptions.Requirement(requirement);
        foreach (Option option in new Option[] { _input, _rating, _requirement, _mode })
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (HasRequirement(result) && HasRating(result))
            {
                result.AddError("Expected --rating or --requirement, but got both.");
            }
        });
    }

    /// <summary>Gives a command the arguments and options.</summary>
    /// <param name="command">The command.</param>
    /// <param name="rating">What a rating is for.</param>
    /// <param name="requirement">What a requirement is for.</param>
    public static StressInputs AddTo(Command command, string rating, string requirement) => new(command, rating, requirement);

    /// <summary>Whether a requirement was given.</summary>
    public bool HasRequirement(CommandResult result) => result.GetResult(_requirement) is { Implicit: false };

    /// <summary>Whether a rating was given.</summary>
    public bool HasRating(CommandResult result) => result.GetResult(_rating) is { Implicit: false };

    /// <summary>The input voltages.</summary>
    public Interval<double> InputVolts(ParseResult parsed) => parsed.GetValue(_input);

    /// <summary>What the elements are made of; null where the requirement cannot be read, which is told.</summary>
    public DeviceChoice? Devices(ParseResult parsed) =>
        RequirementFile.TryReadProcess(parsed.GetValue(_requirement), ToolSession.Of(parsed), out Process? process) ? new DeviceChoice(process, parsed.GetValue(_rating)) : null;

    /// <summary>The stress of every file; what is wrong goes to standard error, and how far the work is to a terminal.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="openSwitchesLeak">Whether open switches at floating nodes leak.</param>
    /// <param name="devices">What the elements are made of.</param>
    public FileStress[] Find(ParseResult parsed, bool openSwitchesLeak, DeviceChoice devices)
    {
        ToolSession session = ToolSession.Of(parsed);
        return [.. _netlists.Read(parsed).Select(file => session.Follow("of the changes looked at", (progress, error) =>
            FileStress.Of(file, InputVolts(parsed), openSwitchesLeak, parsed.GetValue(_mode), devices, error, progress)))];
    }
}
