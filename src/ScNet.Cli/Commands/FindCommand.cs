using System.CommandLine;
using Fractions;
using ScNet.Search;
using ScNet.Search.Pages;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet find</c>: the networks of a ratio that no other beats, or that there is none, and why.</summary>
internal static class FindCommand
{
    private static readonly (string Word, NetworkMeasure Measure)[] s_objectives =
    [
        ("switch-product", NetworkMeasure.SwitchChargeVoltage), ("capacitor-product", NetworkMeasure.CapacitorChargeVoltage), ("switches", NetworkMeasure.SwitchCount),
        ("switch-voltage", NetworkMeasure.HighestSwitchVoltage), ("capacitor-voltage", NetworkMeasure.HighestCapacitorVoltage), ("swing", NetworkMeasure.PlateSwing),
        ("slow-limit", NetworkMeasure.CapacitorCharge), ("fast-limit", NetworkMeasure.SwitchCharge),
    ];

    public static Command Create()
    {
        const int most = 100_000;
        Option<Interval<Fraction>> ratio = FractionOptions.Range("--ratio", "Output over input voltage, or the smallest and the largest with two dots between them; negative where it inverts");
        Option<int> capacitors = NumberOptions.Whole("--capacitors", "The most flying capacitors: a second for 4, half a minute for 5, minutes for 6", 1, Atlas.MaximumCapacitorCount, 3);
        Option<Fraction?> switchVoltage = FractionOptions.Share("--switch-voltage", "The most that any switch may block, as a share of the input voltage");
        Option<Fraction?> capacitorVoltage = FractionOptions.Share("--capacitor-voltage", "The most that any flying capacitor may hold, as a share of the input voltage");
        Option<int> switches = NumberOptions.Whole("--switches", "The most switches", 1, most, most);
        Option<string> objective = Objective();
        Option<int> listed = NumberOptions.Whole("--list", "The most networks listed, the best by the objective", 1, most, FindPage.UsualCount);
        Option<string?> netlists = SharedOptions.Named(new Option<string?>("--netlists") { Description = "Writes the netlist of each listed network to this folder, under its name.", HelpName = "FOLDER" });
        Option<double> farads = SharedOptions.Number("--farads", "F", "farads (F)", "Capacitance of every capacitor in netlists", 1);
        Option<double> ohms = SharedOptions.Number("--ohms", "OHMS", "ohms (Ω)", "On-resistance of every switch in netlists", 1);
        Command command = new("find", "Every network of a ratio and a size that no other beats, within ratings; or that there is none, and why.")
        {
            ratio, capacitors, switchVoltage, capacitorVoltage, switches, objective, listed, netlists, farads, ohms,
        };
        Option<int> phases = PhaseOptions.AddTo(
            command, capacitors, $"The most phases: 3 for networks of two and of three, of up to {ThreePhaseAtlas.MaximumCapacitorCount} capacitors");
        ResultOutput writer = ResultOutput.Sorting(command, FindPage.Columns, FindTable.Columns, "text", "json", "csv", "toml");
        command.SetAction(parsed =>
        {
            ToolSession session = ToolSession.Of(parsed);
            AtlasQuery query = new(parsed.GetRequiredValue(ratio))
            {
                CapacitorCount = parsed.GetValue(capacitors),
                PhaseCount = parsed.GetValue(phases),
                HighestSwitchVoltage = parsed.GetValue(switchVoltage),
                HighestCapacitorVoltage = parsed.GetValue(capacitorVoltage),
                MostSwitches = parsed.GetResult(switches) is { Implicit: false } ? parsed.GetValue(switches) : null,
                Objective = s_objectives.Single(o => o.Word == parsed.GetRequiredValue(objective)).Measure,
            };
            AtlasAnswer answer = session.Follow("searched", progress => AtlasAnswer.Of(query, progress, session.CancellationToken));
            int count = parsed.GetValue(listed);
            if (!writer.Write(parsed, () => FindTable.Of(answer, count), order => [FindPage.Of(answer, count, order)]))
            {
                session.Output.Write(answer.Networks.Count > 0 ? answer.Networks[0].ToToml(parsed.GetValue(farads), parsed.GetValue(ohms)) : string.Empty);
                if (answer.Networks.Count == 0)
                {
                    session.Error.WriteLine(answer);
                }
            }

            if (parsed.GetValue(netlists) is { } folder)
            {
                Directory.CreateDirectory(folder);
                foreach (FoundNetwork found in answer.Networks.Take(count))
                {
                    AtomicFile.Write(Path.Combine(folder, $"{found.Name}.toml"), found.ToToml(parsed.GetValue(farads), parsed.GetValue(ohms)));
                }
            }

            return answer.Networks.Count > 0 ? Tool.Success : Tool.Failure;
        });
        return command;
    }

    private static Option<string> Objective()
    {
        string[] words = [.. s_objectives.Select(o => o.Word)];
        Option<string> objective = new("--objective")
        {
            Description = "What comes first: the least product of charge and voltage of all switches or of all capacitors, the fewest switches, the lowest highest voltage of a switch "
                + "or a capacitor, the least swing of the plates, the lowest slow or fast limit at equal totals.",
            HelpName = string.Join('|', words),
            DefaultValueFactory = _ => words[0],
        };
        objective.CompletionSources.Add(words);
        objective.Validators.Add(result =>
        {
            foreach (System.CommandLine.Parsing.Token token in result.Tokens.Where(t => !words.Contains(t.Value)))
            {
                result.AddError($"Expected one of {string.Join(", ", words)} after --objective, but got '{token.Value}'.");
            }
        });
        return objective;
    }
}
