namespace ScNet.Analysis;

/// <summary>The edges that join the two parts into which the spanning forest falls without one of its edges.</summary>
/// <remarks>Kirchhoff's current law of the cut: Σ sign · charge (first terminal to second) = 0 over its edges.</remarks>
internal sealed class FundamentalCut
{
    public FundamentalCut(SignedEdge[] edges, int[] groups)
    {
        Edges = Array.AsReadOnly(edges);
        Groups = Array.AsReadOnly(groups);
    }

    /// <summary>The edge of the forest; it is in no other fundamental cut.</summary>
    public PhaseEdge TreeEdge => Edges[0].Edge;

    /// <summary>The edges: the forest's own first, then the others in the order of <see cref="PhaseGraph.Edges"/>. Sign 1 where an edge leads across in the direction of the forest's.</summary>
    public IReadOnlyList<SignedEdge> Edges { get; }

    /// <summary>The groups on the side away from the root of the component, ascending.</summary>
    public IReadOnlyList<int> Groups { get; }

    /// <summary>The edges with their signs: "+fly -vout".</summary>
    public override string ToString() => string.Join(' ', Edges);
}
