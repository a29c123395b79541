namespace ScNet;

/// <summary>
/// A parasitic capacitance between two nodes, such as a junction or a wire: it takes no part in the ideal point, the
/// charge flow, the limits and the blocking voltages, and takes part in everything exact.
/// </summary>
public sealed class Parasitic
{
    internal Parasitic(string name, string firstNode, string secondNode, double farads)
    {
        Name = name;
        FirstNode = firstNode;
        SecondNode = secondNode;
        Farads = farads;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>One of its nodes.</summary>
    public string FirstNode { get; }

    /// <summary>The other node.</summary>
    public string SecondNode { get; }

    /// <summary>Capacitance in farads (F).</summary>
    public double Farads { get; }

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({FirstNode} – {SecondNode})";
}
