namespace ScNet.Reporting.Drawings;

/// <summary>What is to be drawn, without any place: nets and the parts between them.</summary>
/// <param name="Nets">The nets; net 0 is the reference.</param>
/// <param name="Parts">The parts between nets.</param>
/// <param name="InputNet">The net of the source.</param>
/// <param name="OutputNet">The net of the load.</param>
internal sealed record Circuit(IReadOnlyList<CircuitNet> Nets, IReadOnlyList<CircuitPart> Parts, int InputNet, int OutputNet);

/// <summary>Nodes that are one wire in a drawing.</summary>
/// <param name="Nodes">The names of the nodes.</param>
/// <param name="Voltage">Its voltage as text; empty where none is shown.</param>
/// <param name="Level">How high it stands: potentials descend down the page.</param>
internal sealed record CircuitNet(IReadOnlyList<string> Nodes, string Voltage, double Level)
{
    /// <summary>The names joined: "vin = p".</summary>
    public string Name => string.Join(" = ", Nodes);
}

/// <summary>A part with two ends.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name; empty for a wire.</param>
/// <param name="First">The net of its first terminal.</param>
/// <param name="Second">The net of its second terminal.</param>
/// <param name="Charge">The magnitude of the charge through it as text; empty where none is shown.</param>
/// <param name="Flow">1 where the charge flows from the first terminal to the second, -1 where back, 0 where none flows or nothing is known.</param>
/// <param name="Note">A second line beside the name: the phases of a switch, the resistance or capacitance of others; mostly empty.</param>
internal sealed record CircuitPart(PartKind Kind, string Name, int First, int Second, string Charge = "", int Flow = 0, string Note = "");

/// <summary>The kinds of parts, each with a symbol of its own.</summary>
internal enum PartKind
{
    /// <summary>The input: an ideal source of voltage.</summary>
    Source,

    /// <summary>A load that takes what charge it gets at a held voltage.</summary>
    Load,

    /// <summary>A load that draws a held current.</summary>
    CurrentLoad,

    /// <summary>A capacitor.</summary>
    Capacitor,

    /// <summary>A capacitance that nobody put there: of a plate, a junction, a wire.</summary>
    Parasitic,

    /// <summary>An inductor.</summary>
    Inductor,

    /// <summary>A switch.</summary>
    Switch,

    /// <summary>A piece of wire that joins two lines of one net.</summary>
    Wire,
}
