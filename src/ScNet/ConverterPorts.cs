using ScNet.Kernel;

namespace ScNet;

/// <summary>Which of the ports of a network a converter has, and how branches are called.</summary>
internal static class ConverterPorts
{
    /// <summary>The ports in the order of the network: the output, whose voltage follows, and the input, whose voltage is given.</summary>
    public static NetworkPort[] Of(int input, int output, LoadKind load) =>
    [
        new NetworkPort(new NodePair(output, NetworkGraph.Reference), IsGiven: false, IsCurrentHeld: load == LoadKind.Current),
        new NetworkPort(new NodePair(input, NetworkGraph.Reference), IsGiven: true),
    ];

    /// <summary>The name of a branch: of the capacitor, or of the port's node.</summary>
    public static string BranchName(this Converter converter, int branch) =>
        branch == converter.Network.InputBranch ? converter.InputNode
        : branch == converter.Network.OutputBranch ? converter.OutputNode
        : converter.Capacitors[branch].Name;

    extension(SwitchedNetwork network)
    {
        /// <summary>The branch of the output.</summary>
        public int OutputBranch => network.CapacitorCount;

        /// <summary>The branch of the input.</summary>
        public int InputBranch => network.FirstGivenBranch;

        /// <summary>The node of the output.</summary>
        public int Output => network.BranchFirst[network.OutputBranch];

        /// <summary>The node of the input.</summary>
        public int Input => network.BranchFirst[network.InputBranch];

        /// <summary>What the output feeds.</summary>
        public LoadKind Load => network.IsCurrentHeld(network.OutputBranch) ? LoadKind.Current : LoadKind.Stiff;
    }
}
