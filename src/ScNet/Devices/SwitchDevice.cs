using Fractions;

namespace ScNet.Devices;

/// <summary>A switch device of a process: what it withstands, and what a width of it costs.</summary>
/// <remarks>
/// Charges, area and conductance are in proportion to the width. Every value counts as the decimal
/// written, so that rating and voltage compare exactly.
/// </remarks>
public sealed class SwitchDevice
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init; }

    /// <summary>Where the values come from; "invented" for a demonstration.</summary>
    public required string Source { get; init; }

    /// <summary>Whether the gate turns it on above or below its source.</summary>
    public DevicePolarity Polarity { get; init; }

    /// <summary>The drain-source voltage in volts (V) that it withstands, either way round.</summary>
    public required double RatedVolts { get; init => field = Positive(value, nameof(RatedVolts)); }

    /// <summary>The gate-source voltage in volts (V) at which it has its on-resistance.</summary>
    public required double GateDriveVolts { get; init => field = Positive(value, nameof(GateDriveVolts)); }

    /// <summary>The gate-source voltage in volts (V) that it withstands.</summary>
    public required double GateRatedVolts { get; init => field = Positive(value, nameof(GateRatedVolts)); }

    /// <summary>On-resistance times width in ohm-micrometres (Ω·µm), at the gate-drive voltage.</summary>
    public required double OnResistanceOhmMicrometres { get; init => field = Positive(value, nameof(OnResistanceOhmMicrometres)); }

    /// <summary>Gate charge per width in coulombs per micrometre (C/µm), for one swing of the gate-drive voltage.</summary>
    public required double GateChargeCoulombsPerMicrometre { get; init => field = Positive(value, nameof(GateChargeCoulombsPerMicrometre)); }

    /// <summary>Junction charge per width in coulombs per micrometre (C/µm), for one swing of the rated voltage.</summary>
    public required double JunctionChargeCoulombsPerMicrometre { get; init => field = Positive(value, nameof(JunctionChargeCoulombsPerMicrometre)); }

    /// <summary>Area per width in square metres per micrometre (m²/µm).</summary>
    public required double AreaSquareMetresPerMicrometre { get; init => field = Positive(value, nameof(AreaSquareMetresPerMicrometre)); }

    /// <summary>Threshold of the gate-source voltage in volts (V), for corners; zero where it is not told.</summary>
    public double ThresholdVolts { get; init => field = Guard.InRange(value, allowZero: true, nameof(ThresholdVolts)); }

    /// <summary>Leakage of the open device per width in amperes per micrometre (A/µm), at the rated voltage.</summary>
    public double LeakageAmperesPerMicrometre { get; init => field = Guard.InRange(value, allowZero: true, nameof(LeakageAmperesPerMicrometre)); }

    /// <summary>Forward voltage of the body diode in volts (V).</summary>
    public double BodyDiodeVolts { get; init => field = Positive(value, nameof(BodyDiodeVolts)); } = 0.7;

    internal Fraction ExactRating => ExactDecimal.Of(RatedVolts);

    internal Fraction ExactDrive => ExactDecimal.Of(GateDriveVolts);

    internal Fraction ExactGateRating => ExactDecimal.Of(GateRatedVolts);

    /// <summary>The name and the rating.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({RatedVolts:G6} V)");

    internal static double Positive(double value, string name) => Guard.InRange(value, allowZero: false, name);
}
