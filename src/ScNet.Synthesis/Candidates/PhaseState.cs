using ScNet.Search;

namespace ScNet.Synthesis.Candidates;

/// <summary>A wiring with the potentials that its terminals have in it.</summary>
/// <param name="Wiring">What must be joined.</param>
/// <param name="Potentials">The potential of each terminal, in the scale of the voltages that it belongs to.</param>
internal sealed record PhaseState(Wiring Wiring, IReadOnlyList<long> Potentials)
{
    /// <summary>The nodes that need switches: a bit per terminal, those of one terminal left out.</summary>
    public IReadOnlyList<int> Blocks { get; } = BlocksOf(Wiring);

    private static int[] BlocksOf(Wiring wiring)
    {
        int[] blocks = new int[wiring.NodeCount];
        for (int t = 0; t < wiring.TerminalCount; t++)
        {
            blocks[wiring.Nodes[t]] |= 1 << t;
        }

        return [.. blocks.Where(b => (b & (b - 1)) != 0)];
    }
}
