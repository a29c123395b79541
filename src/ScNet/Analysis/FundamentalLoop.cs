namespace ScNet.Analysis;

/// <summary>The loop that one edge outside the spanning forest closes with the forest.</summary>
/// <remarks>Kirchhoff's voltage law of the loop: Σ sign · voltage (first terminal minus second) = 0 over its edges.</remarks>
internal sealed class FundamentalLoop
{
    public FundamentalLoop(SignedEdge[] edges) => Edges = Array.AsReadOnly(edges);

    /// <summary>The edge outside the forest; it is in no other fundamental loop.</summary>
    public PhaseEdge Chord => Edges[0].Edge;

    /// <summary>The edges in the order of a walk round the loop that starts along the chord; each once. A shorted element is a loop of its own.</summary>
    public IReadOnlyList<SignedEdge> Edges { get; }

    /// <summary>The edges with their signs in the order of the walk: "+fly -vin +vout".</summary>
    public override string ToString() => string.Join(' ', Edges);
}
