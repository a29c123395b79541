using Fractions;
using ScNet.Analysis;
using ScNet.Search;

namespace ScNet.Synthesis.Tests;

/// <summary>
/// The least number of switches by going through every set of them: all ways to wire terminals for good, all sets of
/// switches between what is left, all sets of them closed in a phase, judged by the ordinary analysis of a converter.
/// Nothing of it is shared with the synthesis.
/// </summary>
internal sealed class EverySetOfSwitches
{
    private readonly int _terminals;
    private readonly List<int[]> _wirings = [];
    private readonly Dictionary<int, int> _positions = [];
    private readonly Fraction?[,] _ratios;

    private EverySetOfSwitches(int capacitors)
    {
        _terminals = 3 + (2 * capacitors);
        AddWirings(new int[_terminals], 1, 1);
        int[] whole = [.. Enumerable.Range(0, _wirings.Count).Where(w => IsInOnePiece(_wirings[w]))];
        _ratios = new Fraction?[_wirings.Count, _wirings.Count];
        Dictionary<(int, int), Fraction?> known = [];
        int[][] moved = [.. CapacitorMap.All(capacitors).Select(m => _wirings.Select((_, w) => Moved(w, m)).ToArray())];
        foreach (int first in whole)
        {
            foreach (int second in whole)
            {
                // of pairs that differ in the names of capacitors or phases only, one is analysed
                (int, int) kind = moved.Min(m => (Math.Min(m[first], m[second]), Math.Max(m[first], m[second])));
                if (!known.TryGetValue(kind, out Fraction? ratio))
                {
                    known.Add(kind, ratio = RatioOf(_wirings[first], _wirings[second], capacitors));
                }

                _ratios[first, second] = ratio;
            }
        }
    }

    /// <summary>Of one capacitor.</summary>
    public static Lazy<EverySetOfSwitches> One { get; } = new(() => new EverySetOfSwitches(1));

    /// <summary>Of two capacitors.</summary>
    public static Lazy<EverySetOfSwitches> Two { get; } = new(() => new EverySetOfSwitches(2));

    /// <summary>The ratio of the terminals in nodes of two phases; null where it or a capacitor's voltage is open or zero, or a node is tied to nothing.</summary>
    public Fraction? RatioOf(ReadOnlySpan<int> first, ReadOnlySpan<int> second) =>
        _positions.TryGetValue(Code(first), out int f) && _positions.TryGetValue(Code(second), out int s) ? _ratios[f, s] : null;

    /// <summary>Joins two nodes of the terminals to the first of them.</summary>
    public static void Join(Span<int> nodes, int first, int second)
    {
        foreach (ref int node in nodes)
        {
            node = node == second ? first : node;
        }
    }

    /// <summary>The least number of switches that makes all of some ratios, up to a limit; null where more are needed.</summary>
    public int? Least(Fraction[] ratios, int limit)
    {
        // phases that take part in some of the ratios, and in which
        int[,] makes = new int[_wirings.Count, _wirings.Count];
        bool[] isUseful = new bool[_wirings.Count];
        for (int first = 0; first < _wirings.Count; first++)
        {
            for (int second = 0; second < _wirings.Count; second++)
            {
                int position = _ratios[first, second] is { } ratio ? Array.IndexOf(ratios, ratio) : -1;
                makes[first, second] = position < 0 ? 0 : 1 << position;
                isUseful[first] |= position >= 0;
            }
        }

        for (int count = 1; count <= limit; count++)
        {
            if (_wirings.Any(wires => IsEnough(wires, count, makes, isUseful, (1 << ratios.Length) - 1)))
            {
                return count;
            }
        }

        return null;
    }

    private bool IsEnough(int[] wires, int count, int[,] makes, bool[] isUseful, int all)
    {
        int nodes = wires.Max() + 1;
        List<(int First, int Second)> places = [];
        for (int second = 1; second < nodes; second++)
        {
            for (int first = 0; first < second; first++)
            {
                int[] joined = [.. wires];
                Join(joined, first, second);
                if (_positions.ContainsKey(Code(joined)))
                {
                    places.Add((first, second));
                }
            }
        }

        return Subsets(places, count).Any(set => Made(wires, set, makes, isUseful) == all);
    }

    private int Made(int[] wires, (int First, int Second)[] switches, int[,] makes, bool[] isUseful)
    {
        HashSet<int> phases = [];
        Span<int> joined = stackalloc int[(1 << switches.Length) * _terminals];
        wires.CopyTo(joined);
        for (int closed = 0; closed < 1 << switches.Length; closed++)
        {
            Span<int> nodes = joined.Slice(closed * _terminals, _terminals);
            if (closed > 0)
            {
                // the set without its last switch came before
                int last = int.TrailingZeroCount(closed);
                joined.Slice((closed & (closed - 1)) * _terminals, _terminals).CopyTo(nodes);
                (int first, int second) = switches[last];
                Join(nodes, nodes[Array.IndexOf(wires, first)], nodes[Array.IndexOf(wires, second)]);
            }

            if (_positions.TryGetValue(Code(nodes), out int phase) && isUseful[phase])
            {
                phases.Add(phase);
            }
        }

        int made = 0;
        foreach (int first in phases)
        {
            foreach (int second in phases)
            {
                made |= makes[first, second];
            }
        }

        return made;
    }

    private static IEnumerable<(int, int)[]> Subsets(List<(int, int)> places, int count)
    {
        int[] chosen = [.. Enumerable.Range(0, count)];
        while (count <= places.Count)
        {
            yield return [.. chosen.Select(c => places[c])];
            int last = count - 1;
            while (last >= 0 && chosen[last] == places.Count - count + last)
            {
                last--;
            }

            if (last < 0)
            {
                yield break;
            }

            chosen[last]++;
            for (int next = last + 1; next < count; next++)
            {
                chosen[next] = chosen[next - 1] + 1;
            }
        }
    }

    // the same for the same terminals in one node, however nodes are numbered
    private static int Code(ReadOnlySpan<int> nodes)
    {
        int code = 0, used = 0;
        Span<int> names = stackalloc int[nodes.Length];
        for (int t = 0; t < nodes.Length; t++)
        {
            int earlier = nodes.IndexOf(nodes[t]);
            names[t] = earlier < t ? names[earlier] : used++;
            code = (code << 3) | names[t];
        }

        return code;
    }

    private void AddWirings(int[] nodes, int terminal, int used)
    {
        if (terminal == nodes.Length)
        {
            _positions.Add(Code(nodes), _wirings.Count);
            _wirings.Add([.. nodes]);
            return;
        }

        for (int node = 0; node <= used; node++)
        {
            nodes[terminal] = node;
            if ((terminal > 2 || node != 0) && (terminal < 4 || (terminal & 1) == 1 || nodes[terminal - 1] != node))
            {
                AddWirings(nodes, terminal + 1, Math.Max(used, node + 1));
            }
        }
    }

    private int Moved(int wiring, CapacitorMap map)
    {
        int[] moved = new int[_terminals];
        for (int t = 0; t < _terminals; t++)
        {
            moved[map.Terminal(t)] = _wirings[wiring][t];
        }

        return _positions[Code(moved)];
    }

    // the input, the output and capacitors lead to every node
    private static bool IsInOnePiece(int[] nodes)
    {
        HashSet<int> reached = [nodes[0], nodes[1], nodes[2]];
        for (int pass = 0; pass < nodes.Length; pass++)
        {
            for (int plate = 3; plate < nodes.Length; plate += 2)
            {
                if (reached.Contains(nodes[plate]) || reached.Contains(nodes[plate + 1]))
                {
                    reached.UnionWith([nodes[plate], nodes[plate + 1]]);
                }
            }
        }

        return reached.Count == nodes.Max() + 1;
    }

    // null where the ratio or a capacitor's voltage is open or zero
    private static Fraction? RatioOf(int[] first, int[] second, int capacitors)
    {
        ConverterBuilder builder = Converter.Create("pair").Input("t1").Output("t2").Phases(2);
        for (int c = 0; c < capacitors; c++)
        {
            builder.Capacitor($"c{c}", $"t{3 + (2 * c)}", $"t{4 + (2 * c)}");
        }

        string Node(int terminal) => terminal == 0 ? Converter.ReferenceNode : $"t{terminal}";
        for (int phase = 1; phase <= 2; phase++)
        {
            int[] nodes = phase == 1 ? first : second;
            for (int t = 1; t < nodes.Length; t++)
            {
                int earlier = Array.LastIndexOf(nodes, nodes[t], t - 1);
                if (earlier >= 0)
                {
                    builder.Switch($"s{phase}.{t}", Node(earlier), Node(t), PhaseSet.Of(phase));
                }
            }
        }

        return builder.TryBuild(out Converter? converter, out _)
            && ConverterAnalysis.Of(converter).Modes[0].Analysis is { } mode
            && mode.Ratio.TryGetFraction(out Fraction ratio)
            && mode.IdealPoint.CapacitorVoltages.All(v => v.TryGetFraction(out Fraction volts) && !volts.IsZero)
                ? ratio
                : null;
    }
}
