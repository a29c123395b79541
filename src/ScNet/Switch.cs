namespace ScNet;

/// <summary>A switch of a <see cref="Converter"/>, known by its name.</summary>
public sealed class Switch
{
    internal Switch(string name, string firstNode, string secondNode, double ohms, double? diodeVolts)
    {
        Name = name;
        FirstNode = firstNode;
        SecondNode = secondNode;
        Ohms = ohms;
        DiodeVolts = diodeVolts;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>The first terminal: charge that flows from here to <see cref="SecondNode"/> counts as positive, and the blocking voltage is this node's minus the other's.</summary>
    public string FirstNode { get; }

    /// <summary>The second terminal.</summary>
    public string SecondNode { get; }

    /// <summary>On-resistance in ohms (Ω).</summary>
    public double Ohms { get; }

    /// <summary>
    /// The forward voltage in volts (V) of the body diode, which conducts from <see cref="SecondNode"/> to
    /// <see cref="FirstNode"/> while the switch is open; null where the switch has none.
    /// </summary>
    public double? DiodeVolts { get; }

    internal Switch With(double ohms) => new(Name, FirstNode, SecondNode, ohms, DiodeVolts);

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({FirstNode} – {SecondNode})";
}
