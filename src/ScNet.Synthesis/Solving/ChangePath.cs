using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Solving;

/// <summary>
/// A way from one end of a switch to the other over closed places, right after a change of ratio: the switch stands the
/// sum of the voltages along it, whatever the capacitors hold.
/// </summary>
/// <param name="Switch">The position of the switch among all places.</param>
/// <param name="Share">What each branch's voltage counts in the sum.</param>
/// <param name="Joined">The positions of the places that must be closed for it.</param>
/// <param name="Shortcuts">The positions of places that cut it short where they are wires.</param>
internal sealed record ChangePath(int Switch, IReadOnlyList<int> Share, IReadOnlyList<int> Joined, IReadOnlyList<int> Shortcuts)
{
    /// <summary>A text that two ways have in common only where they are the same.</summary>
    public string Key { get; } = $"{Switch}:{string.Join(' ', Share)}:{string.Join(' ', Joined)}:{string.Join(' ', Shortcuts)}";

    /// <summary>The voltage along it in volts, first end of the switch less second, with the voltages of a ratio's network.</summary>
    public Fraction Volts(IReadOnlyList<long> voltages, Fraction inputVolts)
    {
        long sum = 0;
        for (int branch = 0; branch < voltages.Count; branch++)
        {
            sum += Share[branch] * voltages[branch];
        }

        return new Fraction(sum, voltages[LoopSpace.InputColumn]) * inputVolts;
    }

    /// <summary>Every way between the ends of every switch.</summary>
    /// <param name="capacitors">The number of flying capacitors.</param>
    /// <param name="places">All places.</param>
    /// <param name="switches">The positions of those with a switch.</param>
    /// <param name="wires">The positions of those that are wires.</param>
    /// <param name="closed">The positions of closed switches.</param>
    public static IEnumerable<ChangePath> All(int capacitors, IReadOnlyList<SwitchPlace> places, IReadOnlyList<int> switches, IReadOnlyList<int> wires, IReadOnlyList<int> closed)
    {
        HeldPieces pieces = HeldPieces.Of(capacitors, wires.Select(w => places[w]));
        foreach (int @switch in switches)
        {
            (int first, int second) = (places[@switch].First, places[@switch].Second);
            foreach ((int[] share, HashSet<int> visited, int[] used) in From(pieces, pieces.Piece(first), pieces.Piece(second), places, closed, new int[capacitors + LoopSpace.FirstCapacitorColumn], [], []))
            {
                // u(first) - u(second) is what the offsets of both say, less how the pieces stand to one another
                int[] sum = [.. share.Select((s, b) => pieces.Offset(first)[b] - pieces.Offset(second)[b] - s)];
                bool IsVisited(int terminal) => visited.Contains(pieces.Piece(terminal));
                yield return new ChangePath(
                    @switch,
                    Array.AsReadOnly(sum),
                    Array.AsReadOnly<int>([.. used.Concat(wires.Where(w => IsVisited(places[w].First))).Order()]),
                    Array.AsReadOnly<int>([.. Enumerable.Range(0, places.Count).Where(p => p != @switch && !used.Contains(p)
                        && pieces.Piece(places[p].First) != pieces.Piece(places[p].Second) && (IsVisited(places[p].First) || IsVisited(places[p].Second)))]));
            }
        }
    }

    // the ways to a piece that pass no piece twice: how it stands to the first one, the pieces on the way, the places
    private static IEnumerable<(int[] Share, HashSet<int> Visited, int[] Used)> From(
        HeldPieces pieces, int at, int to, IReadOnlyList<SwitchPlace> places, IReadOnlyList<int> closed, int[] share, HashSet<int> visited, int[] used)
    {
        visited = [.. visited, at];
        if (at == to)
        {
            yield return (share, visited, used);
            yield break;
        }

        foreach (int place in closed)
        {
            (int near, int far) = (places[place].First, places[place].Second);
            if (pieces.Piece(near) != at)
            {
                (near, far) = (far, near);
            }

            if (pieces.Piece(near) != at || visited.Contains(pieces.Piece(far)))
            {
                continue;
            }

            int[] next = [.. share.Select((s, b) => s + pieces.Offset(near)[b] - pieces.Offset(far)[b])];
            foreach ((int[] Share, HashSet<int> Visited, int[] Used) way in From(pieces, pieces.Piece(far), to, places, closed, next, visited, [.. used, place]))
            {
                yield return way;
            }
        }
    }
}
