using System.CommandLine;
using System.Globalization;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet reach</c>: the ratios that the switches of a netlist reach in two phases.</summary>
internal static class ReachCommand
{
    public static Command Create()
    {
        Command command = new("reach", "The ratios that the switches of a netlist reach in two phases, whatever its own modes are.");
        NetlistSources netlists = NetlistSources.AddTo(command, isSingle: true);
        Option<bool> patterns = new("--patterns") { Description = "Adds the gate patterns: in which phases each switch is closed." };
        command.Options.Add(patterns);
        ResultOutput writer = ResultOutput.Sorting(command, ReachPage.Columns, ResultTable.ReachColumns);
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
            if (netlists.Read(parsed).SingleOrDefault() is not { } netlist || netlist.Reading.Converter is not { } converter || !IsSearchable(converter, netlist.Path, error))
            {
                return Tool.Failure;
            }

            ReachableRatios reachable = session.Follow("searched", progress => ReachableRatios.Of(converter, progress));
            ResultTable Table() => ResultTable.OfReach(netlist.Path, converter, reachable, parsed.GetValue(patterns));
            writer.Write(parsed, Table, order => [ReachPage.Of(converter, reachable, parsed.GetValue(patterns), netlist.Path, order)]);

            return Tool.Success;
        });
        return command;
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
