using QuikGraph;

namespace ScNet.Analysis;

/// <summary>
/// A branch of held voltage between two groups of a <see cref="PhaseGraph"/>, known by its element and
/// not by its ends: parallel edges and edges from a group to itself are routine.
/// </summary>
public sealed class PhaseEdge : IEdge<int>
{
    internal PhaseEdge(PhaseEdgeKind kind, string name, int? index, int source, int target)
    {
        Kind = kind;
        Name = name;
        Index = index;
        Source = source;
        Target = target;
    }

    /// <summary>What the edge is.</summary>
    internal PhaseEdgeKind Kind { get; }

    /// <summary>The name of the capacitor; of a port, the name of its node.</summary>
    public string Name { get; }

    /// <summary>The position in <see cref="Converter.Capacitors"/>; null where the edge is a port.</summary>
    public int? Index { get; }

    /// <summary>The group of the first terminal: a capacitor's positive plate, a port's node.</summary>
    public int Source { get; }

    /// <summary>The group of the second terminal: a capacitor's bottom plate; of a port, the reference.</summary>
    public int Target { get; }

    /// <summary>Whether closed switches short the element: both its ends are in one group.</summary>
    public bool IsShorted => Source == Target;

    /// <summary>The name and the two groups: "fly (2 – 0)".</summary>
    public override string ToString() => $"{Name} ({Source} – {Target})";
}
