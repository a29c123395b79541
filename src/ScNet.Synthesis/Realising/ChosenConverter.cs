using System.Globalization;
using ScNet.Search;
using ScNet.Synthesis.Candidates;
using ScNet.Synthesis.Solving;

namespace ScNet.Synthesis.Realising;

/// <summary>A choice as a converter with a mode per ratio.</summary>
internal static class ChosenConverter
{
    /// <summary>The converter; a mode bears its ratio as name.</summary>
    /// <remarks>
    /// In each phase the switches whose ends are at one potential are closed, but none that would close a mesh of
    /// switches: that joins what the networks ask for, and puts capacitors to work that they leave idle. Where the choice
    /// says what is closed, as changes of ratio make a difference, no more is.
    /// </remarks>
    public static Converter Of(string name, SynthesisRequest request, Choice choice)
    {
        int terminals = Terminals.Count(request.CapacitorCount);
        Pieces nodes = new(terminals);
        foreach (SwitchPlace wire in choice.Places.Where(choice.IsWire))
        {
            nodes.Join(wire.First, wire.Second);
        }

        SwitchPlace[] switches = [.. choice.Places.Where(p => !choice.IsWire(p)).OrderBy(p => p.First).ThenBy(p => p.Second)];
        string NodeOf(int terminal) => Terminals.NameOf(nodes.Of(terminal));
        ConverterBuilder builder = Converter.Create(name).Input(NodeOf(Terminals.Input)).Output(NodeOf(Terminals.Output)).Phases(2);
        for (int c = 0; c < request.CapacitorCount; c++)
        {
            builder.Capacitor(Numbered("c", c), NodeOf(Terminals.PositivePlate(c)), NodeOf(Terminals.BottomPlate(c)));
        }

        for (int s = 0; s < switches.Length; s++)
        {
            builder.Switch(Numbered("s", s), NodeOf(switches[s].First), NodeOf(switches[s].Second));
        }

        for (int m = 0; m < choice.Modes.Count; m++)
        {
            bool[][] closed = [.. choice.Modes[m].Select((state, j) => choice.Closings is { } closings
                ? Array.ConvertAll(switches, s => closings.Closed[m][j].Contains(s))
                : Closed(state, switches, nodes, terminals))];
            builder.Mode(NameOf(request.Ratios[m]), [.. switches
                .Select((_, s) => (Numbered("s", s), PhaseSet.Of([.. Enumerable.Range(1, 2).Where(phase => closed[phase - 1][s])])))
                .Where(s => s.Item2.Count > 0)]);
        }

        return builder.Build();
    }

    /// <summary>The name of the mode that makes a ratio.</summary>
    public static string NameOf(WantedRatio wanted) => Quantity.Exact(wanted.Ratio).ToString();

    private static bool[] Closed(PhaseState state, SwitchPlace[] switches, Pieces nodes, int terminals)
    {
        Pieces joined = new(terminals);
        return [.. switches.Select(s =>
            state.Potentials[s.First] == state.Potentials[s.Second] && joined.Join(nodes.Of(s.First), nodes.Of(s.Second)))];
    }

    private static string Numbered(string letter, int position) => string.Create(CultureInfo.InvariantCulture, $"{letter}{position + 1}");
}
