using ScNet.Search;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Candidates;

/// <summary>A phase's loop space under given capacitor voltages: its wirings, any of which does the same.</summary>
/// <param name="Position">Its position among the groups of the ratio.</param>
/// <param name="Space">The loop space.</param>
/// <param name="Voltages">The voltage of each branch, input first, in whole numbers without a common divisor; the input's is positive.</param>
internal sealed record StateGroup(int Position, PhaseSpace Space, IReadOnlyList<long> Voltages)
{
    /// <summary>A state per wiring.</summary>
    public IReadOnlyList<PhaseState> States { get; } = [.. Space.Wirings.Select(w => new PhaseState(w, PotentialsOf(w, Voltages)))];

    private static long[] PotentialsOf(Wiring wiring, IReadOnlyList<long> voltages)
    {
        long[] nodes = new long[wiring.NodeCount], potentials = new long[wiring.TerminalCount];
        foreach ((int node, int from, int branch, int sign) in BranchForest.Of(wiring).Steps())
        {
            nodes[node] = nodes[from] + (sign * voltages[branch]);
        }

        for (int t = 0; t < potentials.Length; t++)
        {
            potentials[t] = nodes[wiring.Nodes[t]];
        }

        return potentials;
    }
}
