using System.CommandLine;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet overlay</c>: several networks as the modes of one converter with few switches.</summary>
internal static class OverlayCommand
{
    public static Command Create()
    {
        Command command = new("overlay", "One converter with a mode per network, on shared capacitors and as few switches as are found: prints its netlist.");
        NetlistSources netlists = NetlistSources.AddTo(command);
        Option<string> name = new("--name") { Description = "The name of the converter.", HelpName = "NAME", DefaultValueFactory = _ => "Overlay" };
        name.Validators.Add(result =>
        {
            if (result.Tokens.Any(t => t.Value.Length == 0))
            {
                result.AddError("Expected a name after --name, but got an empty one.");
            }
        });
        Option<int> seed = NumberOptions.Seed("Starts the random choices of the search, where it cannot try all: another number may find fewer switches");
        Option<double> farads = SharedOptions.Number("--farads", "F", "farads (F)", "Capacitance of every capacitor", 1);
        Option<double> ohms = SharedOptions.Number("--ohms", "OHMS", "ohms (Ω)", "On-resistance of every switch", 1);
        foreach (Option option in new Option[] { name, seed, farads, ohms })
        {
            command.Options.Add(option);
        }

        ResultOutput writer = ResultOutput.AddTo(command, "toml", "text", "json", "csv");
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            TextWriter error = session.Error;
            NetlistFile[] files = [.. netlists.Read(parsed)];
            if (files.Length == 0 || files.Any(f => !f.Reading.HasResult) || !CanBeLaid(files, error))
            {
                return Tool.Failure;
            }

            Overlay overlay = session.Follow("searched", progress => Overlay.Of(
                parsed.GetRequiredValue(name), [.. files.Select(f => f.Reading.Converter!)], parsed.GetValue(seed), progress, session.CancellationToken));
            if (!writer.Write(parsed, () => ResultTable.OfOverlay(overlay), [OverlayPage.Of(overlay)]))
            {
                session.Output.Write(NetlistWriter.ToToml(overlay.Converter.WithValues(
                    [.. overlay.Converter.Capacitors.Select(_ => parsed.GetValue(farads))], [.. overlay.Converter.Switches.Select(_ => parsed.GetValue(ohms))])));
            }

            return Tool.Success;
        });
        return command;
    }

    // every reason at once, with the file
    private static bool CanBeLaid(NetlistFile[] files, TextWriter error)
    {
        bool canBe = true;
        Converter first = files[0].Reading.Converter!;
        Dictionary<string, string> names = new(StringComparer.Ordinal);
        foreach (NetlistFile file in files)
        {
            Converter converter = file.Reading.Converter!;
            Refuse(converter.Modes.Count == 1, $"one mode, but it has {converter.Modes.Count}: write one netlist for each");
            Refuse(converter.Load == LoadKind.Stiff, $"a stiff load, but it has a current load");
            Refuse(converter.Inductors.Count == 0, $"switches and capacitors, but it has inductors");
            Refuse(converter.Capacitors.Count <= Overlay.LargestCapacitorCount, $"at most {Overlay.LargestCapacitorCount} capacitors, but it has {converter.Capacitors.Count}");
            Refuse(converter.Phases.Select(p => p.Duty).SequenceEqual(first.Phases.Select(p => p.Duty)), $"the duties of {files[0].Path}, {Duties(first)}, but it has {Duties(converter)}");
            Refuse(names.TryAdd(converter.Name, file.Path), $"a name of its own, as names become modes, but {names[converter.Name]} is '{converter.Name}' too");

            void Refuse(bool holds, FormattableString reason)
            {
                if (!holds)
                {
                    canBe = false;
                    error.WriteLine(Printable.Of($"{file.Path}: Expected, for an overlay, a network of {FormattableString.Invariant(reason)}."));
                }
            }
        }

        return canBe;
    }

    private static string Duties(Converter converter) => string.Join(", ", converter.Phases.Select(p => $"{p.Duty}"));
}
