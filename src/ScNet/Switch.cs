namespace ScNet;

/// <summary>A switch of a <see cref="Converter"/>, known by its name.</summary>
public sealed class Switch
{
    internal Switch(string name, string firstNode, string secondNode, double ohms)
    {
        Name = name;
        FirstNode = firstNode;
        SecondNode = secondNode;
        Ohms = ohms;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>The first terminal: charge that flows from here to <see cref="SecondNode"/> counts as positive, and the blocking voltage is this node's minus the other's.</summary>
    public string FirstNode { get; }

    /// <summary>The second terminal.</summary>
    public string SecondNode { get; }

    /// <summary>On-resistance in ohms (Ω).</summary>
    public double Ohms { get; }

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({FirstNode} – {SecondNode})";
}
