using System.CommandLine;
using System.Globalization;
using ScNet.Cli.Rendering;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet reach</c>: the ratios that the switches of a netlist reach in two phases.</summary>
internal static class ReachCommand
{
    /// <param name="showsProgress">Whether the search writes how far it is on standard error.</param>
    public static Command Create(bool showsProgress)
    {
        Argument<string> file = SharedOptions.File();
        Option<bool> patterns = new("--patterns") { Description = "Adds the gate patterns: in which phases each switch is closed." };
        Option<string> format = SharedOptions.Format("text", "json", "csv");
        Command command = new("reach", "The ratios that the switches of a netlist reach in two phases, whatever its own modes are.")
        {
            file, patterns, format,
        };
        command.SetAction(parsed =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output, error = parsed.InvocationConfiguration.Error;
            NetlistFile netlist = NetlistFile.Read(parsed.GetRequiredValue(file), error);
            if (netlist.Reading.Converter is not { } converter || !IsSearchable(converter, netlist.Path, error))
            {
                return Tool.Failure;
            }

            ReachableRatios reachable = Search(converter, showsProgress ? error : null);
            switch (parsed.GetValue(format))
            {
                case "json":
                    output.WriteLine(ResultTable.OfReach(netlist.Path, converter, reachable, parsed.GetValue(patterns)).ToJson());
                    break;
                case "csv":
                    output.Write(ResultTable.OfReach(netlist.Path, converter, reachable, parsed.GetValue(patterns)).ToCsv());
                    break;
                default:
                    ReachText.Write(output, netlist.Path, converter, reachable, parsed.GetValue(patterns));
                    break;
            }

            return Tool.Success;
        });
        return command;
    }

    private static ReachableRatios Search(Converter converter, TextWriter? terminal)
    {
        if (terminal is null)
        {
            return ReachableRatios.Of(converter);
        }

        using ProgressLine progress = new(terminal);
        return ReachableRatios.Of(converter, progress);
    }

    private static bool IsSearchable(Converter converter, string path, TextWriter error)
    {
        string[] reasons =
        [
            .. Unless(converter.Phases.Count == 2, $"two phases, but it has {converter.Phases.Count}"),
            .. Unless(converter.Inductors.Count == 0, $"switches and capacitors, but it has inductors"),
            .. Unless(converter.Load == LoadKind.Stiff, $"a stiff load, but it has a current load"),
            .. Unless(converter.Switches.Count <= ReachableRatios.MaximumSwitchCount, $"at most {ReachableRatios.MaximumSwitchCount} switches, but it has {converter.Switches.Count}"),
        ];
        foreach (string reason in reasons)
        {
            error.WriteLine(Printable.Of($"{path}: Expected, for the search of reachable ratios, a converter of {reason}."));
        }

        return reasons.Length == 0;
    }

    private static string[] Unless(bool holds, FormattableString reason) => holds ? [] : [reason.ToString(CultureInfo.InvariantCulture)];
}
