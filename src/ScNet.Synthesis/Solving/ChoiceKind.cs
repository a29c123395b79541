using System.Globalization;
using ScNet.Search;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// What is the same of choices that differ only in the names and directions of capacitors, in the order of phases, and in which
/// of several equal wires and switches stand for what is joined.
/// </summary>
internal sealed class ChoiceKind
{
    private readonly int _terminals;

    // where each pair of terminals goes, and each terminal comes from
    private readonly (int[] Pairs, int[] Sources)[] _maps;

    public ChoiceKind(int capacitors)
    {
        _terminals = Terminals.Count(capacitors);
        _maps = [.. CapacitorMap.All(capacitors).Select(map =>
        {
            int[] pairs = new int[_terminals * _terminals], sources = new int[_terminals];
            for (int b = 0; b < _terminals; b++)
            {
                sources[map.Terminal(b)] = b;
                for (int a = 0; a < b; a++)
                {
                    pairs[Pair(a, b)] = Pair(map.Terminal(a), map.Terminal(b));
                }
            }

            return (pairs, sources);
        })];
    }

    /// <summary>A text that two choices share if and only if they are of one kind; null where two switches stand between the same nodes, as one does.</summary>
    public string? Of(Choice choice)
    {
        Pieces nodes = new(_terminals);
        foreach (SwitchPlace wire in choice.Places.Where(choice.IsWire))
        {
            nodes.Join(wire.First, wire.Second);
        }

        SwitchPlace[] own = [.. choice.Places.Where(p => !choice.IsWire(p))];
        HashSet<int> switched = [.. own.Select(p => Pair(nodes.Of(p.First), nodes.Of(p.Second)))];
        if (switched.Count < own.Length)
        {
            return null;
        }

        List<int> wires = [], switches = [];
        for (int b = 0; b < _terminals; b++)
        {
            for (int a = 0; a < b; a++)
            {
                if (nodes.Of(a) == nodes.Of(b))
                {
                    wires.Add(Pair(a, b));
                }
                else if (switched.Contains(Pair(nodes.Of(a), nodes.Of(b))))
                {
                    switches.Add(Pair(a, b));
                }
            }
        }

        // pairs decide nearly always, potentials where they leave several maps
        ulong least = ulong.MaxValue, leastWires = ulong.MaxValue;
        string? text = null;
        foreach ((int[] pairs, int[] sources) in _maps)
        {
            ulong joined = Bits(switches, pairs), wired = Bits(wires, pairs);
            if (joined > least || (joined == least && wired > leastWires))
            {
                continue;
            }

            string potentials = PotentialsOf(choice, sources);
            if (joined < least || wired < leastWires || string.CompareOrdinal(potentials, text) < 0)
            {
                (least, leastWires, text) = (joined, wired, potentials);
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"{least} {leastWires} {text}");
    }

    private static string PotentialsOf(Choice choice, int[] sources) => string.Join('|', choice.Modes.Select(mode => string.Join('/', mode
        .Select(state => string.Join(' ', sources.Select(t => state.Potentials[t].ToString(CultureInfo.InvariantCulture))))
        .Order(StringComparer.Ordinal))));

    private static ulong Bits(List<int> pairs, int[] map)
    {
        ulong bits = 0;
        foreach (int pair in pairs)
        {
            bits |= 1UL << map[pair];
        }

        return bits;
    }

    private static int Pair(int a, int b) => a < b ? (b * (b - 1) / 2) + a : (a * (a - 1) / 2) + b;
}
