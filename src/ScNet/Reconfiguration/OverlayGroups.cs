using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>
/// What one network asks of each phase, in terms of its own terminals: which are joined. Terminals 0 to 2
/// are reference, input and output; 3 + 2i and 4 + 2i the plates of capacitor i.
/// </summary>
/// <remarks>
/// Which terminals are joined is all that is asked, and a network that is to be laid over another need not have a
/// solution of its own: so the partition of each phase is made here, without the topology of a mode.
/// </remarks>
internal sealed class OverlayGroups
{
    public const int PortCount = 3;

    private OverlayGroups(int capacitorCount, int[][][] phases)
    {
        CapacitorCount = capacitorCount;
        Phases = phases;
    }

    public int CapacitorCount { get; }

    /// <summary>Per phase the groups of two or more joined terminals.</summary>
    public int[][][] Phases { get; }

    public static OverlayGroups Of(Converter network)
    {
        SwitchedNetwork graph = network.Network;
        int[] nodes = [SwitchedNetwork.Reference, graph.Input, graph.Output,
            .. Enumerable.Range(0, graph.CapacitorCount).SelectMany(i => new[] { graph.BranchFirst[i], graph.BranchSecond[i] })];
        return new OverlayGroups(graph.CapacitorCount, [.. Enumerable.Range(0, graph.PhaseCount).Select(phase =>
        {
            PhaseForest forest = PhaseForest.Of(graph, graph.ClosedIn(0, phase));
            return Enumerable.Range(0, nodes.Length).GroupBy(t => forest.Group[nodes[t]])
                .Select(g => g.ToArray()).Where(g => g.Length > 1).ToArray();
        })]);
    }

    /// <summary>The groups after renaming terminals.</summary>
    public int[][][] Renamed(ReadOnlySpan<int> terminals)
    {
        var renamed = new int[Phases.Length][][];
        for (int phase = 0; phase < renamed.Length; phase++)
        {
            renamed[phase] = new int[Phases[phase].Length][];
            for (int g = 0; g < renamed[phase].Length; g++)
            {
                int[] group = Phases[phase][g];
                renamed[phase][g] = new int[group.Length];
                for (int k = 0; k < group.Length; k++)
                {
                    renamed[phase][g][k] = terminals[group[k]];
                }
            }
        }

        return renamed;
    }
}
