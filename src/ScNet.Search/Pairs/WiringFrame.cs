using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>A wiring prepared for many voltages: the order in which its nodes' potentials follow from one another.</summary>
internal sealed class WiringFrame
{
    private readonly (byte Node, byte From, byte Branch, sbyte Sign)[] _steps;

    private WiringFrame(Wiring wiring)
    {
        Wiring = wiring;
        _steps = [.. BranchForest.Of(wiring).Steps().Select(s => ((byte)s.Node, (byte)s.From, (byte)s.Branch, (sbyte)s.Sign))];
    }

    /// <summary>The wiring.</summary>
    public Wiring Wiring { get; }

    /// <summary>Frames of the wirings of an orbit.</summary>
    public static WiringFrame[] Of(LoopSpaceOrbit orbit) => [.. orbit.Wirings.Select(w => new WiringFrame(w))];

    /// <summary>Writes the potential of each terminal.</summary>
    /// <param name="voltages">The branches' voltages.</param>
    /// <param name="potentials">Receives the terminals' potentials.</param>
    /// <param name="nodes">Room for the nodes'.</param>
    public void WritePotentials(ReadOnlySpan<int> voltages, Span<int> potentials, Span<int> nodes)
    {
        nodes[0] = 0;
        foreach ((byte node, byte from, byte branch, sbyte sign) in _steps)
        {
            nodes[node] = nodes[from] + (sign * voltages[branch]);
        }

        ReadOnlySpan<byte> nodeOfTerminal = Wiring.Nodes;
        for (int t = 0; t < nodeOfTerminal.Length; t++)
        {
            potentials[t] = nodes[nodeOfTerminal[t]];
        }
    }
}
