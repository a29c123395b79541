namespace ScNet.Kernel;

/// <summary>A network that is wired anew for every candidate of a search, on the same memory.</summary>
internal sealed class CandidateNetwork : NetworkGraph
{
    /// <inheritdoc cref="NetworkGraph.Wire"/>
    public new void Wire(
        int nodeCount, ReadOnlySpan<NodePair> capacitors, ReadOnlySpan<NetworkPort> ports, ReadOnlySpan<NodePair> switches) =>
        base.Wire(nodeCount, capacitors, ports, switches);
}
