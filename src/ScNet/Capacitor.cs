namespace ScNet;

/// <summary>A capacitor of a <see cref="Converter"/>, known by its name.</summary>
public sealed class Capacitor
{
    internal Capacitor(string name, string positiveNode, string bottomNode, double capacitanceFarads, double esrOhms)
    {
        Name = name;
        PositiveNode = positiveNode;
        BottomNode = bottomNode;
        CapacitanceFarads = capacitanceFarads;
        EsrOhms = esrOhms;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>The node of the positive plate, the first terminal: charge that enters here counts as positive.</summary>
    public string PositiveNode { get; }

    /// <summary>The node of the bottom plate, the second terminal.</summary>
    public string BottomNode { get; }

    /// <summary>Capacitance in farads (F).</summary>
    public double CapacitanceFarads { get; }

    /// <summary>Equivalent series resistance in ohms (Ω); 0 for an ideal capacitor.</summary>
    public double EsrOhms { get; }

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({PositiveNode} – {BottomNode})";
}
