using Fractions;

namespace ScNet;

/// <summary>A capacitor of a <see cref="Converter"/>, known by its name.</summary>
public sealed class Capacitor
{
    // worked out at first use; threads that meet here find the same value
    private double _elastance;

    internal Capacitor(string name, string positiveNode, string bottomNode, double farads, double esrOhms, CapacitorPlates plates, Fraction? controlled)
    {
        Name = name;
        PositiveNode = positiveNode;
        BottomNode = bottomNode;
        Farads = farads;
        EsrOhms = esrOhms;
        Plates = plates;
        Controlled = controlled;
    }

    /// <summary>The name, unique among all elements of the converter.</summary>
    public string Name { get; }

    /// <summary>The node of the positive plate, the first terminal: charge that enters here counts as positive.</summary>
    public string PositiveNode { get; }

    /// <summary>The node of the bottom plate, the second terminal.</summary>
    public string BottomNode { get; }

    /// <summary>Capacitance in farads (F).</summary>
    public double Farads { get; }

    /// <summary>One over the capacitance as the decimal written, in 1/F: of 1e-9 exactly 1e9, which the rounded double would miss.</summary>
    internal double ElastancePerFarad => _elastance > 0 ? _elastance : _elastance = Inverse(Farads);

    /// <summary>Equivalent series resistance in ohms (Ω); 0 for an ideal capacitor.</summary>
    public double EsrOhms { get; }

    /// <summary>The parasitic capacitances of the plates to the body.</summary>
    public CapacitorPlates Plates { get; }

    /// <summary>
    /// The share of the input voltage that a controller outside the netlist keeps this capacitor at; null where none does.
    /// </summary>
    public Fraction? Controlled { get; }

    /// <summary>The name and the two nodes.</summary>
    public override string ToString() => $"{Name} ({PositiveNode} – {BottomNode})";

    internal Capacitor With(double farads, double esrOhms) =>
        new(Name, PositiveNode, BottomNode, farads, esrOhms, Plates, Controlled);

    internal Capacitor With(CapacitorPlates plates) =>
        new(Name, PositiveNode, BottomNode, Farads, EsrOhms, plates, Controlled);

    private static double Inverse(double farads)
    {
        Fraction exact = ExactDecimal.Of(farads);
        return Quantity.Exact(new Fraction(exact.Denominator, exact.Numerator)).ToDouble();
    }
}
