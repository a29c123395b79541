using System.Globalization;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Requirements;
using ScNet.Results.Pages;

namespace ScNet.Cli.Rendering;

/// <summary>A ranked choice for people: the order, why, what was rejected, and the winner in detail.</summary>
internal static class ChoiceText
{
    private const double SquareMillimetre = 1e-6;

    public static void Write(TextWriter output, RankedChoice choice, ChoiceSensitivity? sensitivity)
    {
        Requirement requirement = choice.Requirement;
        output.WriteLine(Printable.Of(requirement.Name));
        output.WriteLine($"{Range(requirement.InputVolts, "V")} in, {string.Join(", ", requirement.OutputVolts.Select(v => EngineeringNumber.Of(v, "V")))} out; {string.Join(", ", requirement.Loads.Select(Load))}");
        output.WriteLine(Printable.Of($"process {requirement.Process.Name}; {Areas(requirement)}; {Range(requirement.FrequencyHz, "Hz")}"));
        WriteOrder(output, choice);
        WriteReasons(output, "Why", choice.Ranked.Select(r => ($"{r.Rank}. {r.Candidate.Name}", r.Reasons)));
        WriteReasons(output, "Rejected", choice.Rejected.Select(r => (r.Candidate.Name, r.Reasons)));
        if (!choice.IsComplete)
        {
            output.WriteLine();
            output.WriteLine(Printable.Of($"Stopped before these were worked out: {string.Join("; ", choice.Left)}"));
        }

        if (choice.Winner is { } winner)
        {
            WriteBudget(output, winner);
            WriteModes(output, winner);
            WriteSizes(output, winner);
        }

        if (sensitivity is not null)
        {
            WriteSensitivity(output, sensitivity);
        }
    }

    private static void WriteOrder(TextWriter output, RankedChoice choice)
    {
        output.WriteLine();
        if (choice.Ranked.Count == 0)
        {
            output.WriteLine("No candidate does what is required.");
            return;
        }

        bool hasLife = choice.Ranked[0].LifeHours is not null;
        TextTable table = new TextTable(string.Empty).Figures(string.Empty).Words("candidate").Words("kind")
            .Figures(hasLife ? ["life"] : Array.Empty<string>()).Figures("efficiency").Figures("loss").Figures(choice.Requirement.Loads.Select(l => l.Name)).Figures("area");
        foreach (RankedCandidate ranked in choice.Ranked)
        {
            table.Row([
                ranked.Rank.ToString(CultureInfo.InvariantCulture), ranked.Candidate.Name, KindOf(ranked.Candidate.Kind),
                .. ranked.LifeHours is { } hours ? [Hours(hours)] : Array.Empty<string>(),
                Percent(ranked.Efficiency), EngineeringNumber.Of(ranked.LossWatts, "W"),
                .. ranked.Loads.Select(l => Percent(l.Efficiency)),
                Area(ranked.AreaSquareMetres),
            ]);
        }

        table.Write(output);
        output.WriteLine();
        output.WriteLine("efficiency, loss   of the energy over discharge and time; under the name of each state of the load, the efficiency in it");
    }

    private static void WriteReasons(TextWriter output, string title, IEnumerable<(string Name, IReadOnlyList<string> Reasons)> candidates)
    {
        bool isFirst = true;
        foreach ((string name, IReadOnlyList<string> reasons) in candidates)
        {
            if (isFirst)
            {
                output.WriteLine();
                output.WriteLine(title);
                isFirst = false;
            }

            output.WriteLine(Printable.Of($"  {name}"));
            foreach (string reason in reasons)
            {
                output.WriteLine(Printable.Of($"      {reason}"));
            }
        }
    }

    private static void WriteBudget(TextWriter output, RankedCandidate winner)
    {
        LossKind[] kinds = [.. Enum.GetValues<LossKind>().Where(k => winner.Loads.Any(l => l.WattsOf(k) > 0))];
        output.WriteLine();
        output.WriteLine(Printable.Of($"{winner.Candidate.Name}: power in each state of the load, on average over the discharge"));
        TextTable table = new TextTable("  ").Words("state").Figures("time").Figures("output").Figures(kinds.Select(LossText.NameOf)).Figures("efficiency");
        foreach (LoadBudget load in winner.Loads)
        {
            table.Row([
                load.Load.Name, Percent(load.Load.Share), EngineeringNumber.Of(load.OutputWatts, "W"),
                .. kinds.Select(k => EngineeringNumber.Of(load.WattsOf(k), "W")),
                Percent(load.Efficiency),
            ]);
        }

        table.Write(output);
    }

    private static void WriteModes(TextWriter output, RankedCandidate winner)
    {
        if (winner.Modes.Count > 1)
        {
            output.WriteLine();
            output.WriteLine("  Share of the time in each mode");
            TextTable table = new TextTable("  ").Words("mode").Figures("time");
            for (int m = 0; m < winner.Modes.Count; m++)
            {
                table.Row([winner.Modes[m].Name, Percent(winner.SharesOfModes[m])]);
            }

            table.Write(output);
        }
    }

    private static void WriteSizes(TextWriter output, RankedCandidate winner)
    {
        if (winner.Sized is not { } sized)
        {
            return;
        }

        output.WriteLine();
        output.WriteLine(winner.RelativeGap is { } gap
            ? string.Create(CultureInfo.InvariantCulture, $"  Sizes; no sizes near by, of the same kinds, lose less by more than {gap:G1} of the loss")
            : "  Sizes");
        TextTable table = new TextTable("  ").Words("element").Words("made of").Figures("in series").Figures("value").Figures("each").Figures("area");
        for (int i = 0; i < sized.Capacitors.Count; i++)
        {
            table.Row([
                sized.Converter.Capacitors[i].Name, sized.Capacitors[i].Device.Name, Count(sized.Capacitors[i].Count), EngineeringNumber.Of(sized.Converter.Capacitors[i].Farads, "F"),
                SquareMicrometres(sized.Capacitors[i].AreaOfEachSquareMetres), Area(sized.Capacitors[i].AreaSquareMetres),
            ]);
        }

        for (int i = 0; i < sized.Switches.Count; i++)
        {
            table.Row([
                sized.Converter.Switches[i].Name, sized.Switches[i].Device.Name, Count(sized.Switches[i].Count), EngineeringNumber.Of(sized.Converter.Switches[i].Ohms, "Ω"),
                string.Create(CultureInfo.InvariantCulture, $"{sized.Switches[i].WidthOfEachMicrometres:G4} µm wide"), Area(sized.Switches[i].AreaSquareMetres),
            ]);
        }

        for (int i = 0; i < sized.Inductors.Count; i++)
        {
            table.Row([
                sized.Converter.Inductors[i].Name, sized.Inductors[i].Name, "1", EngineeringNumber.Of(sized.Converter.Inductors[i].Henries, "H"),
                EngineeringNumber.Of(sized.Inductors[i].Ohms, "Ω"), sized.Inductors[i].IsOffChip ? "beside the chip" : Area(sized.Inductors[i].AreaSquareMetres),
            ]);
        }

        table.Write(output);
    }

    private static void WriteSensitivity(TextWriter output, ChoiceSensitivity sensitivity)
    {
        output.WriteLine();
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"What would change the winner: each assumption by itself, by factors from 1/{ChoiceSensitivity.LargestFactor:G3} to {ChoiceSensitivity.LargestFactor:G3}{(sensitivity.IsComplete ? string.Empty : "; stopped before all were tried")}"));
        TextTable table = new TextTable("  ").Words("assumption").Figures("factor").Words("winner then");
        foreach (ChangedAssumption change in sensitivity.Changes)
        {
            table.Row([
                change.Assumption,
                change.Factor is { } factor ? string.Create(CultureInfo.InvariantCulture, $"× {factor:G2}") : "-",
                change.Factor is null ? "the same" : change.Winner?.Name ?? "no candidate does what is required",
            ]);
        }

        table.Write(output);
    }

    private static string Areas(Requirement requirement) => string.Join(", ", new[]
    {
        requirement.AreaSquareMetres is { } all ? $"{Area(all)} in all" : null,
        requirement.CapacitorAreaSquareMetres is { } capacitors ? $"{Area(capacitors)} of capacitors" : null,
        requirement.SwitchAreaSquareMetres is { } switches ? $"{Area(switches)} of switches" : null,
    }.OfType<string>());

    private static string Load(LoadShare load) =>
        $"{load.Name} {EngineeringNumber.Of(load.Amperes, "A")}{(load.OutputVolts is { } volts ? $" at {EngineeringNumber.Of(volts, "V")}" : string.Empty)} for {Percent(load.Share)}";

    private static string Range(Interval<double> range, string unit) => range.IsPoint
        ? EngineeringNumber.Of(range.Minimum, unit)
        : $"{EngineeringNumber.Of(range.Minimum, unit)} to {EngineeringNumber.Of(range.Maximum, unit)}";

    private static string KindOf(CandidateKind kind) => kind switch
    {
        CandidateKind.SwitchedCapacitor => "capacitors",
        CandidateKind.Inductive => "inductor",
        CandidateKind.Hybrid => "hybrid",
        _ => "linear",
    };

    private static string Hours(double hours) => string.Create(CultureInfo.InvariantCulture, $"{hours:F1} h");

    private static string Percent(double fraction) => string.Create(CultureInfo.InvariantCulture, $"{100 * fraction:0.0#} %");

    // four digits after the point would show nothing of a switch of some µm²; a linear regulator has no sizes
    private static string Area(double squareMetres) => squareMetres switch
    {
        0 => "–",
        < SquareMillimetre / 1000 => SquareMicrometres(squareMetres),
        _ => string.Create(CultureInfo.InvariantCulture, $"{squareMetres / SquareMillimetre:0.0000} mm²"),
    };

    private static string SquareMicrometres(double squareMetres) => squareMetres < 100e-12
        ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres * 1e12:G3} µm²")
        : string.Create(CultureInfo.InvariantCulture, $"{squareMetres * 1e12:F0} µm²");

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}
