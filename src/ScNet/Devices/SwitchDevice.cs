using Fractions;

namespace ScNet.Devices;

/// <summary>A switch device of a process: what it withstands, and what a width of it costs.</summary>
/// <remarks>
/// Charges, active area and conductance are in proportion to the width. Every value counts as the decimal
/// written, so that rating and voltage compare exactly.
/// </remarks>
public sealed record SwitchDevice
{
    /// <summary>The forward voltage in volts (V) of a body diode of which nothing is told; common practice, no source.</summary>
    internal const double DefaultBodyDiodeVolts = 0.7;

    /// <summary>The name, for people.</summary>
    public required string Name { get; init => field = Guard.Named(value, nameof(Name)); }

    /// <summary>Where the values come from; "invented" for a demonstration.</summary>
    public required string Source { get; init => field = Guard.Named(value, nameof(Source)); }

    /// <summary>Whether the gate turns it on above or below its source.</summary>
    public DevicePolarity Polarity { get; init; }

    /// <summary>The drain-source voltage in volts (V) that it withstands, either way round.</summary>
    public required double RatedVolts { get; init => field = Positive(value, nameof(RatedVolts)); }

    /// <summary>The gate-source voltage in volts (V) at which it has its on-resistance; above the threshold.</summary>
    public required double GateDriveVolts { get; init => field = AboveThreshold(Positive(value, nameof(GateDriveVolts)), ThresholdVolts, value); }

    /// <summary>The gate-source voltage in volts (V) that it withstands.</summary>
    public required double GateRatedVolts { get; init => field = Positive(value, nameof(GateRatedVolts)); }

    /// <summary>On-resistance times width in ohm-micrometres (Ω·µm), at the gate-drive voltage.</summary>
    public required double OnResistanceOhmMicrometres { get; init => field = Positive(value, nameof(OnResistanceOhmMicrometres)); }

    /// <summary>Gate charge per width in coulombs per micrometre (C/µm), for one swing of the gate-drive voltage.</summary>
    public required double GateChargeCoulombsPerMicrometre { get; init => field = Positive(value, nameof(GateChargeCoulombsPerMicrometre)); }

    /// <summary>Junction charge per width in coulombs per micrometre (C/µm), for one swing of the rated voltage.</summary>
    public required double JunctionChargeCoulombsPerMicrometre { get; init => field = Positive(value, nameof(JunctionChargeCoulombsPerMicrometre)); }

    /// <summary>Active area per width in square metres per micrometre (m²/µm).</summary>
    public required double AreaSquareMetresPerMicrometre { get; init => field = Positive(value, nameof(AreaSquareMetresPerMicrometre)); }

    /// <summary>Factor on the area of each device of a stack, without a unit: above 1 for wells of their own, below 1 for diffusions that they share.</summary>
    public double StackAreaFactor { get; init => field = Positive(value, nameof(StackAreaFactor)); } = 1;

    /// <summary>Spacing in metres (m) that a device keeps to its neighbours; one of active area A takes (√A + spacing)².</summary>
    public double GuardMetres { get; init => field = Guard.InRange(value, allowZero: true, nameof(GuardMetres)); }

    /// <summary>Threshold of the gate-source voltage in volts (V), for corners; zero where it is not told.</summary>
    public double ThresholdVolts { get; init => field = AboveThreshold(GateDriveVolts, Guard.InRange(value, allowZero: true, nameof(ThresholdVolts)), value); }

    /// <summary>Leakage of the open device per width in amperes per micrometre (A/µm), at the rated voltage.</summary>
    public double LeakageAmperesPerMicrometre { get; init => field = Guard.InRange(value, allowZero: true, nameof(LeakageAmperesPerMicrometre)); }

    /// <summary>Forward voltage of the body diode in volts (V).</summary>
    public double BodyDiodeVolts { get; init => field = Positive(value, nameof(BodyDiodeVolts)); } = DefaultBodyDiodeVolts;

    /// <summary>
    /// Charge per width in coulombs per micrometre (C/µm) that a body diode has stored when a dead time ends, and that flows back as the
    /// switch blocks; zero where it is not told. It grows with current and temperature: take it for the current at which it matters.
    /// </summary>
    public double RecoveryCoulombsPerMicrometre { get; init => field = Guard.InRange(value, allowZero: true, nameof(RecoveryCoulombsPerMicrometre)); }

    internal Fraction ExactRating => ExactDecimal.Of(RatedVolts);

    internal Fraction ExactDrive => ExactDecimal.Of(GateDriveVolts);

    internal Fraction ExactGateRating => ExactDecimal.Of(GateRatedVolts);

    /// <summary>The name and the rating.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} ({RatedVolts:G6} V)");

    /// <summary>Whether it still turns on at a corner.</summary>
    internal bool TurnsOnAt(Corner corner) => ThresholdVolts * corner.ThresholdFactor < GateDriveVolts;

    /// <summary>What it is at a corner. On-resistance goes with 1/(drive − threshold); charges go with the capacitances.</summary>
    internal SwitchDevice At(Corner corner) => this with
    {
        OnResistanceOhmMicrometres = OnResistanceOhmMicrometres * corner.ResistanceFactor
            * ((GateDriveVolts - ThresholdVolts) / (GateDriveVolts - (ThresholdVolts * corner.ThresholdFactor))),
        GateChargeCoulombsPerMicrometre = GateChargeCoulombsPerMicrometre * corner.CapacitanceFactor,
        JunctionChargeCoulombsPerMicrometre = JunctionChargeCoulombsPerMicrometre * corner.CapacitanceFactor,
        ThresholdVolts = ThresholdVolts * corner.ThresholdFactor,
    };

    internal static double Positive(double value, string name) => Guard.InRange(value, allowZero: false, name);

    // whichever of the two is set last checks: zero is not told yet
    private static double AboveThreshold(double driveVolts, double thresholdVolts, double value) =>
        driveVolts == 0 || thresholdVolts < driveVolts
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"Expected a threshold below the gate-drive voltage, but got {thresholdVolts} V and {driveVolts} V."), nameof(value));
}
