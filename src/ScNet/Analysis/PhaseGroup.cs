namespace ScNet.Analysis;

/// <summary>Nodes that closed switches tie together: one vertex of a <see cref="PhaseGraph"/>.</summary>
public sealed class PhaseGroup
{
    internal PhaseGroup(int index, int component, string[] nodes)
    {
        Index = index;
        Component = component;
        Nodes = Array.AsReadOnly(nodes);
    }

    /// <summary>The position in <see cref="PhaseGraph.Groups"/> and the vertex of the graph; group 0 holds the reference node.</summary>
    public int Index { get; }

    /// <summary>The connected component; component 0 holds the reference node, the others float.</summary>
    public int Component { get; }

    /// <summary>Whether no chain of capacitors, ports and closed switches leads to the reference node.</summary>
    public bool Floats => Component != 0;

    /// <summary>The names of the nodes, in the order of <see cref="Converter.Nodes"/>.</summary>
    public IReadOnlyList<string> Nodes { get; }

    /// <summary>The index and the nodes: "2 {p, vin}".</summary>
    public override string ToString() => $"{Index} {{{string.Join(", ", Nodes)}}}";
}
