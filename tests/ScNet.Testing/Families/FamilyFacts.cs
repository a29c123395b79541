using Fractions;

namespace ScNet.Testing.Families;

/// <summary>
/// What the literature says of one member of a family, stepping down: charges per unit of charge at the
/// low node, voltages per volt at the high node. Stepping up is the same network run backwards, per
/// unit at the other port: charges times -N, voltages times N, resistances times N².
/// </summary>
internal sealed record FamilyFacts
{
    /// <summary>High voltage over low voltage.</summary>
    public required Fraction N { get; init; }

    public required Converter StepDown { get; init; }

    public required Converter StepUp { get; init; }

    public required Converter StepDownWithCurrentLoad { get; init; }

    public required Converter StepUpWithCurrentLoad { get; init; }

    /// <summary>Charge into the first plate in phase 1 (phase 2 holds the negative), and voltage.</summary>
    public required IReadOnlyDictionary<string, (Fraction Charge, Fraction Voltage)> Capacitors { get; init; }

    /// <summary>The only closed phase, the charge in it from first to second terminal, and the voltage blocked in the other.</summary>
    public required IReadOnlyDictionary<string, (int Phase, Fraction Charge, Fraction Blocked)> Switches { get; init; }

    /// <summary>Charge that leaves the high source in phases 1 and 2.</summary>
    public required (Fraction First, Fraction Second) High { get; init; }

    /// <summary>Charge that enters the low node's load in phases 1 and 2.</summary>
    public required (Fraction First, Fraction Second) Low { get; init; }

    /// <summary>Slow-switching limit of equal capacitors, in units of 1/(f·C).</summary>
    public required Fraction SlowLimit { get; init; }

    /// <summary>Fast-switching limit of equal switches and halves of the period, in units of R.</summary>
    public required Fraction FastLimit { get; init; }

    /// <summary>
    /// What a charge, a voltage and a limit of stepping down are multiplied by; of an inverter that steps up the
    /// terminals of every element change places.
    /// </summary>
    public (Fraction Charge, Fraction Voltage, Fraction Limit) Scale(bool up) =>
        up ? (-N.Abs(), N.Abs(), N * N) : (Fraction.One, Fraction.One, Fraction.One);

    /// <summary>What the charge at a port is multiplied by: what left the source enters the load.</summary>
    public Fraction PortScale(bool up) => up ? N : Fraction.One;

    public Converter Converter(bool up) => up ? StepUp : StepDown;
}
