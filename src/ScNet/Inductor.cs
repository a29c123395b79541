namespace ScNet;

/// <summary>An inductor of a <see cref="Converter"/>, known by its name.</summary>
public sealed class Inductor
{
    internal Inductor(string name, string firstNode, string secondNode, double henries, double ohms)
    {
        Name = name;
        FirstNode = firstNode;
        SecondNode = secondNode;
        Henries = henries;
        Ohms = ohms;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>The first terminal: a current that flows from here to <see cref="SecondNode"/> counts as positive, and its voltage is this node's minus the other's.</summary>
    public string FirstNode { get; }

    /// <summary>The second terminal.</summary>
    public string SecondNode { get; }

    /// <summary>Inductance in henries (H).</summary>
    public double Henries { get; }

    /// <summary>Winding resistance in ohms (Ω); 0 for an ideal inductor.</summary>
    public double Ohms { get; }

    internal Inductor With(double henries, double ohms) => new(Name, FirstNode, SecondNode, henries, ohms);

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({FirstNode} – {SecondNode})";
}
