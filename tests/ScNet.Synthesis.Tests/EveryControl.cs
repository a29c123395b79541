using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Synthesis.Tests;

/// <summary>
/// The least number of devices of converters with one capacitor that hold at changes of ratio, by going through every one:
/// all ways to wire terminals for good, all sets of switches between what is left, and for each ratio all sets of them
/// closed in a phase, judged by the ordinary stress. Nothing of it is shared with the synthesis. What two phases join decides
/// their ratio, whatever switches join it: <see cref="EverySetOfSwitches"/> says beforehand which need not be looked at.
/// </summary>
internal static class EveryControl
{
    private static readonly string[] s_terminals = ["gnd", "vin", "vout", "p", "n"];

    /// <summary>The least devices over both ratios, all of them or without the changes; null where no converter holds.</summary>
    public static int? LeastDevices(Fraction first, Fraction second, double inputVolts, double ratingVolts, int largestStack, bool holdsAtChanges)
    {
        int? least = null;
        foreach (int[] nodes in Wirings(new int[s_terminals.Length], 1, 1))
        {
            (string, string)[] places = PlacesOf(nodes);
            foreach (int set in Enumerable.Range(1, (1 << places.Length) - 1).OrderBy(s => int.PopCount(s)))
            {
                if (int.PopCount(set) >= least)
                {
                    break;
                }

                (string, string)[] switches = [.. places.Where((_, p) => (set >> p & 1) == 1)];
                int[][] firsts = [.. Closings(nodes, switches, first)];
                int[][] seconds = firsts.Length == 0 ? [] : [.. Closings(nodes, switches, second)];
                foreach (int? devices in from f in firsts from s in seconds select Devices(nodes, switches, f, s, inputVolts, ratingVolts, largestStack, holdsAtChanges))
                {
                    least = devices < least || least is null ? devices ?? least : least;
                }
            }
        }

        return least;
    }

    /// <summary>
    /// Every converter with so many switches at most that makes some ratios, a mode each, in the order of the ratios: with every set of its switches closed in
    /// either phase that does. A switch that no mode closes is left out.
    /// </summary>
    public static IEnumerable<Converter> Converters(IReadOnlyList<Fraction> ratios, int mostSwitches)
    {
        foreach (int[] nodes in Wirings(new int[s_terminals.Length], 1, 1))
        {
            (string, string)[] places = PlacesOf(nodes);
            foreach (int set in Enumerable.Range(1, (1 << places.Length) - 1).Where(s => int.PopCount(s) <= mostSwitches))
            {
                (string, string)[] switches = [.. places.Where((_, p) => (set >> p & 1) == 1)];
                IEnumerable<int[][]> modes = [[]];
                foreach (Fraction ratio in ratios)
                {
                    int[][] closings = [.. Closings(nodes, switches, ratio)];
                    modes = [.. from earlier in modes from closing in closings select (int[][])[.. earlier, closing]];
                }

                foreach (int[][] closings in modes.Where(m => m.SelectMany(c => c).Aggregate(0, (all, c) => all | c) == (1 << switches.Length) - 1))
                {
                    yield return Made(nodes, switches, closings)!;
                }
            }
        }
    }

    private static (string, string)[] PlacesOf(int[] nodes) => [..
        from b in Enumerable.Range(0, nodes.Max() + 1)
        from a in Enumerable.Range(0, b)
        where !IsShort(nodes, a, b)
        select (NameOf(nodes, a), NameOf(nodes, b))];

    private static IEnumerable<int[]> Wirings(int[] nodes, int terminal, int used)
    {
        if (terminal == nodes.Length)
        {
            yield return [.. nodes];
            yield break;
        }

        for (int node = 0; node <= used; node++)
        {
            nodes[terminal] = node;
            if ((terminal > 2 || node != 0) && (terminal != 4 || nodes[3] != node))
            {
                foreach (int[] wiring in Wirings(nodes, terminal + 1, Math.Max(used, node + 1)))
                {
                    yield return wiring;
                }
            }
        }
    }

    private static bool IsShort(int[] nodes, int a, int b)
    {
        bool Joins(int first, int second) => (nodes[first] == a && nodes[second] == b) || (nodes[first] == b && nodes[second] == a);
        return Joins(0, 1) || Joins(0, 2) || Joins(3, 4);
    }

    private static string NameOf(int[] nodes, int node) => s_terminals[Array.IndexOf(nodes, node)];

    // the sets of switches closed in both phases that make a ratio, with every node tied and no voltage open or zero
    private static IEnumerable<int[]> Closings(int[] nodes, (string, string)[] switches, Fraction ratio)
    {
        int[][] joined = [.. Enumerable.Range(0, 1 << switches.Length).Select(closed => Joined(nodes, switches.Where((_, s) => (closed >> s & 1) == 1)))];
        for (int a = 0; a < joined.Length; a++)
        {
            for (int b = 0; b <= a; b++)
            {
                if (EverySetOfSwitches.One.Value.RatioOf(joined[a], joined[b]) != ratio)
                {
                    continue;
                }

                Converter? converter = Made(nodes, switches, [[a, b]]);
                if (converter is not null
                    && ConverterAnalysis.Of(converter).Modes[0].Analysis is { } mode
                    && mode.Ratio.TryGetFraction(out Fraction made) && made == ratio
                    && mode.IdealPoint.CapacitorVoltages.All(v => v.TryGetFraction(out Fraction volts) && !volts.IsZero)
                    && mode.BlockingVoltages.Switches.All(s => s.All(v => v.IsDetermined)))
                {
                    yield return [a, b];
                }
            }
        }
    }

    private static int[] Joined(int[] nodes, IEnumerable<(string First, string Second)> closed)
    {
        int[] joined = [.. nodes];
        foreach ((string first, string second) in closed)
        {
            EverySetOfSwitches.Join(joined, joined[Array.IndexOf(s_terminals, first)], joined[Array.IndexOf(s_terminals, second)]);
        }

        return joined;
    }

    private static int? Devices(
        int[] nodes, (string, string)[] switches, int[] first, int[] second, double inputVolts, double ratingVolts, int largestStack, bool holdsAtChanges)
    {
        ConverterStress stress = ConverterStress.Of(ConverterAnalysis.Of(Made(nodes, switches, [first, second])!), Intervals.Point(inputVolts));
        int devices = 0;
        for (int s = 0; s < switches.Length; s++)
        {
            double volts = Math.Max(Peak(stress.Switches[s]), holdsAtChanges ? Peak(stress.SwitchesAtChanges[s]) : 0);
            int own = Math.Max(1, (int)Math.Ceiling((volts / ratingVolts) - 1e-9));
            if (own > largestStack)
            {
                return null;
            }

            devices += own;
        }

        return devices;
    }

    private static double Peak(SwitchStress stress) => Math.Abs(stress.Peak?.Volts ?? 0);

    private static Converter? Made(int[] nodes, (string First, string Second)[] switches, int[][] modes)
    {
        string Node(int terminal) => NameOf(nodes, nodes[terminal]) is var name && name == "gnd" ? Converter.ReferenceNode : name;
        ConverterBuilder builder = Converter.Create("every").Input(Node(1)).Output(Node(2)).Phases(2).Capacitor("c", Node(3), Node(4));
        for (int s = 0; s < switches.Length; s++)
        {
            builder.Switch($"s{s}", switches[s].First, switches[s].Second);
        }

        for (int m = 0; m < modes.Length; m++)
        {
            builder.Mode($"m{m}", [.. switches
                .Select((_, s) => ($"s{s}", PhaseSet.Of([.. Enumerable.Range(1, 2).Where(phase => (modes[m][phase - 1] >> s & 1) == 1)])))
                .Where(s => s.Item2.Count > 0)]);
        }

        return builder.TryBuild(out Converter? converter, out _) ? converter : null;
    }
}
