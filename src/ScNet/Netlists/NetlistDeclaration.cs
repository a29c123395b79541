using Fractions;

namespace ScNet.Netlists;

/// <summary>
/// A converter as the user wrote it, not yet checked: the common ground of the builder and the
/// document reader. Positions are null where there is no document.
/// </summary>
internal sealed class NetlistDeclaration
{
    public required string Name { get; init; }

    public Declared<string>? Input { get; set; }

    public Declared<string>? Output { get; set; }

    public LoadKind Load { get; set; }

    public Declared<int>? PhaseCount { get; set; }

    public Declared<Fraction[]>? Duties { get; set; }

    public Declared<Declared<string>[]>? PhaseNames { get; set; }

    public List<DeclaredCapacitor> Capacitors { get; } = [];

    public List<DeclaredSwitch> Switches { get; } = [];

    public List<DeclaredMode> Modes { get; } = [];

    /// <summary>The place of the document as a whole, for what is missing from it.</summary>
    public SourcePosition? Position { get; init; }
}

/// <summary>A value and where it was written.</summary>
internal readonly record struct Declared<T>(T Value, SourcePosition? Position = null);

internal sealed record DeclaredCapacitor(
    Declared<string> Name, string Positive, string Bottom, Declared<double> Farads, Declared<double> EsrOhms);

internal sealed record DeclaredSwitch(
    Declared<string> Name, string First, string Second, Declared<double> Ohms, Declared<DeclaredPhase[]>? On);

internal sealed record DeclaredMode(Declared<string> Name, IReadOnlyList<DeclaredClosing> Closings);

/// <summary>The phases in which a mode closes one switch.</summary>
internal sealed record DeclaredClosing(Declared<string> Switch, DeclaredPhase[] Phases);

/// <summary>A phase by number, or by name where <paramref name="Name"/> is not null.</summary>
internal readonly record struct DeclaredPhase(int Number, string? Name = null, SourcePosition? Position = null);
