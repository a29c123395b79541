using Fractions;

namespace ScNet;

/// <summary>
/// A converter as the user wrote it, not yet checked: the common ground of the builder and the
/// document reader. Positions are null where there is no document.
/// </summary>
internal sealed class NetlistDeclaration
{
    /// <summary>Every element with its name and its nodes; parasitic capacitances last.</summary>
    public IEnumerable<(Declared<string> Name, string First, string Second)> Elements =>
        Capacitors.Select(c => (c.Name, c.Positive, c.Bottom))
            .Concat(Switches.Select(s => (s.Name, s.First, s.Second)))
            .Concat(Inductors.Select(l => (l.Name, l.First, l.Second)))
            .Concat(Parasitics.Select(p => (p.Name, p.First, p.Second)));

    public required string Name { get; init; }

    public Declared<string>? Input { get; set; }

    public Declared<string>? Output { get; set; }

    public LoadKind Load { get; set; }

    public Declared<long>? PhaseCount { get; set; }

    public Declared<Declared<Fraction>[]>? Duties { get; set; }

    public Declared<Declared<string>[]>? PhaseNames { get; set; }

    public List<DeclaredCapacitor> Capacitors { get; } = [];

    public List<DeclaredSwitch> Switches { get; } = [];

    public List<DeclaredInductor> Inductors { get; } = [];

    public List<DeclaredParasitic> Parasitics { get; } = [];

    public List<DeclaredOutput> FurtherOutputs { get; } = [];

    public List<DeclaredMode> Modes { get; } = [];

    /// <summary>What the reader could not make out and has already reported: checks that rest on it are left out.</summary>
    public DeclarationGaps Gaps { get; set; }

    /// <summary>The place of the document as a whole, for what is missing from it.</summary>
    public SourcePosition? Position { get; init; }
}

/// <summary>Parts of a declaration that are not known because of a mistake that has been reported.</summary>
[Flags]
internal enum DeclarationGaps
{
    None = 0,

    /// <summary>The list of elements, or a node of one of them.</summary>
    Elements = 1,

    /// <summary>The list of switches or of inductors.</summary>
    Switches = 2,

    /// <summary>The number or the names of the phases.</summary>
    Phases = 4,

    /// <summary>The input or an output node.</summary>
    Ports = 8,

    All = Elements | Switches | Phases | Ports,
}

/// <summary>A value and where it was written.</summary>
internal readonly record struct Declared<T>(T Value, SourcePosition? Position = null);

/// <summary>A capacitor; a node that could not be read is empty.</summary>
internal sealed record DeclaredCapacitor(
    Declared<string> Name, string Positive, string Bottom, Declared<double> Farads, Declared<double> EsrOhms)
{
    public Declared<double> BottomFarads { get; init; }

    public Declared<double> TopFarads { get; init; }

    public Declared<string> Body { get; init; } = new(Converter.ReferenceNode);

    public Declared<Fraction>? Controlled { get; init; }
}

/// <summary>A switch; a node that could not be read is empty.</summary>
internal sealed record DeclaredSwitch(
    Declared<string> Name, string First, string Second, Declared<double> Ohms, Declared<DeclaredPhase[]>? On)
{
    public Declared<double>? DiodeVolts { get; init; }
}

/// <summary>An inductor; a node that could not be read is empty.</summary>
internal sealed record DeclaredInductor(
    Declared<string> Name, string First, string Second, Declared<double> Henries, Declared<double> Ohms, Declared<DeclaredPhase[]>? UntilZero);

/// <summary>A parasitic capacitance; a node that could not be read is empty.</summary>
internal sealed record DeclaredParasitic(Declared<string> Name, string First, string Second, Declared<double> Farads);

/// <summary>An output beside the main one; a node that could not be read is empty.</summary>
internal sealed record DeclaredOutput(Declared<string> Name, string Node, string Return);

internal sealed record DeclaredMode(Declared<string> Name, IReadOnlyList<DeclaredClosing> Closings);

/// <summary>The phases in which a mode closes one switch, or that the current of one inductor ends.</summary>
internal readonly record struct DeclaredClosing(Declared<string> Element, DeclaredPhase[] Phases);

/// <summary>A phase by number, or by name where <paramref name="Name"/> is not null.</summary>
internal readonly record struct DeclaredPhase(long Number, string? Name = null, SourcePosition? Position = null);
