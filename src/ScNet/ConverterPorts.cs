using ScNet.Kernel;

namespace ScNet;

/// <summary>Which of the ports of a network a converter has, and how branches are called.</summary>
internal static class ConverterPorts
{
    /// <summary>
    /// The ports in the order of the network: the output, whose voltage follows; the input, whose voltage is given; and
    /// the inductors, which hold their currents and whose average voltages are given as zero.
    /// </summary>
    public static NetworkPort[] Of(int input, int output, LoadKind load, params ReadOnlySpan<NodePair> inductors) =>
    [
        new NetworkPort(new NodePair(output, NetworkGraph.Reference), IsGiven: false, IsCurrentHeld: load == LoadKind.Current),
        new NetworkPort(new NodePair(input, NetworkGraph.Reference), IsGiven: true),
        .. Inductors(inductors),
    ];

    private static NetworkPort[] Inductors(ReadOnlySpan<NodePair> nodes)
    {
        var ports = new NetworkPort[nodes.Length];
        for (int l = 0; l < ports.Length; l++)
        {
            ports[l] = new NetworkPort(nodes[l], IsGiven: true, IsCurrentHeld: true);
        }

        return ports;
    }


    /// <summary>The name of a branch: of the capacitor or inductor, or of the port's node.</summary>
    public static string BranchName(this Converter converter, int branch) =>
        branch == converter.Network.InputBranch ? converter.InputNode
        : branch == converter.Network.OutputBranch ? converter.OutputNode
        : branch > converter.Network.InputBranch ? converter.Inductors[branch - converter.Network.FirstInductorBranch].Name
        : converter.Capacitors[branch].Name;

    extension(SwitchedNetwork network)
    {
        /// <summary>The branch of the output.</summary>
        public int OutputBranch => network.CapacitorCount;

        /// <summary>The branch of the input.</summary>
        public int InputBranch => network.FirstGivenBranch;

        /// <summary>The branch of the first inductor; the others follow.</summary>
        public int FirstInductorBranch => network.FirstGivenBranch + 1;

        /// <summary>The number of inductors.</summary>
        public int InductorCount => network.BranchCount - network.FirstGivenBranch - 1;

        /// <summary>The node of the output.</summary>
        public int Output => network.BranchFirst[network.OutputBranch];

        /// <summary>The node of the input.</summary>
        public int Input => network.BranchFirst[network.InputBranch];

        /// <summary>What the output feeds.</summary>
        public LoadKind Load => network.IsCurrentHeld(network.OutputBranch) ? LoadKind.Current : LoadKind.Stiff;
    }
}
