using ScNet.Devices;

namespace ScNet.Design.Requirements;

/// <summary>What a converter must do, and what it may be made of. Immutable.</summary>
/// <remarks>
/// Every initialiser checks its own value and throws an <see cref="ArgumentException"/>; what does not agree with one another is
/// in <see cref="Contradictions"/>. <see cref="RequirementReader"/>, which reads one from a document, leaves none.
/// </remarks>
public sealed record Requirement
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init => field = Guard.Named(value, nameof(Name)); }

    /// <summary>Range of the input voltage in volts (V), above 0.</summary>
    public required Interval<double> InputVolts { get; init => field = Positive(value, nameof(InputVolts)); }

    /// <summary>
    /// The discharge curve by falling state of charge, from full to empty, at least two points within the input range; empty: every
    /// voltage of the range counts alike.
    /// </summary>
    public IReadOnlyList<DischargePoint> Discharge { get; init => field = Kept<DischargePoint>(Guard.Copy(value, nameof(Discharge)), RequirementRules.Discharge(value, default), nameof(Discharge)); } = [];

    /// <summary>Charge of the full cell in coulombs (C); null where life is not asked for.</summary>
    public double? CellCoulombs { get; init => field = Positive(value, nameof(CellCoulombs)); }

    /// <summary>Resistance of the source in ohms (Ω).</summary>
    public double SourceOhms { get; init => field = Guard.InRange(value, allowZero: true, nameof(SourceOhms)); }

    /// <summary>The output voltages in volts (V) that must be held, rising; both ends for a range.</summary>
    public required IReadOnlyList<double> OutputVolts { get; init => field = Kept<double>(Guard.Copy(value, nameof(OutputVolts)), RequirementRules.Outputs(value, isRange: false), nameof(OutputVolts)); }

    /// <summary>Whether every voltage between the two of <see cref="OutputVolts"/> must be held, and not those alone.</summary>
    public bool OutputIsRange { get; init; }

    /// <summary>What the load draws and for which share of the time; at least one, of different names.</summary>
    public required IReadOnlyList<LoadShare> Loads { get; init => field = Kept<LoadShare>(Guard.Copy(value, nameof(Loads)), RequirementRules.Shares(value), nameof(Loads)); }

    /// <summary>Range of the load current in amperes (A) over which the output must be held; undetermined: that of <see cref="Loads"/>.</summary>
    public Interval<double> LoadRangeAmperes { get; init => field = value.IsDetermined ? Positive(value, nameof(LoadRangeAmperes)) : value; }

    /// <summary>Peak-to-peak ripple in volts (V) that is allowed at the output; null where none is told.</summary>
    public double? RippleVolts { get; init => field = Positive(value, nameof(RippleVolts)); }

    /// <summary>Capacitance in farads (F) that holds the output up beside the converter's own: the load's, and a part beside the chip. It decides the ripple alone.</summary>
    public double OutputFarads { get; init => field = Guard.InRange(value, allowZero: true, nameof(OutputFarads)); }

    /// <summary>What it may be made of.</summary>
    public required Process Process { get; init; }

    /// <summary>Area in square metres (m²) for capacitors, switches and inductors on the chip together; null where each kind has its own.</summary>
    public double? AreaSquareMetres { get; init => field = Positive(value, nameof(AreaSquareMetres)); }

    /// <summary>Area in square metres (m²) for capacitors alone; null where the total is shared freely.</summary>
    public double? CapacitorAreaSquareMetres { get; init => field = Positive(value, nameof(CapacitorAreaSquareMetres)); }

    /// <summary>Area in square metres (m²) for switches alone; null where the total is shared freely.</summary>
    public double? SwitchAreaSquareMetres { get; init => field = Positive(value, nameof(SwitchAreaSquareMetres)); }

    /// <summary>Range of the switching frequency in hertz (Hz): below the floor cycles are skipped, the ceiling is not passed.</summary>
    public required Interval<double> FrequencyHz { get; init => field = Positive(value, nameof(FrequencyHz)); }

    /// <summary>The candidates by file or family; empty for all that are known.</summary>
    public IReadOnlyList<CandidateRequest> Candidates { get; init => field = Guard.Copy(value, nameof(Candidates)); } = [];

    /// <summary>What in it does not agree with the rest: a curve or load outside of its range, an output that is not asked for, areas beyond the total.</summary>
    public IReadOnlyList<Diagnostic> Contradictions =>
    [
        .. new[]
        {
            RequirementRules.Discharge(Discharge, InputVolts),
            RequirementRules.Outputs(OutputVolts, OutputIsRange),
            RequirementRules.Currents(Loads, LoadRangeAmperes),
            RequirementRules.OutputsOfLoads(Loads, OutputVolts, OutputIsRange),
            RequirementRules.Areas(AreaSquareMetres, CapacitorAreaSquareMetres, SwitchAreaSquareMetres),
        }.OfType<RuleFault>().Select(f => new Diagnostic(DiagnosticSeverity.Error, f.Code, f.Message)),
    ];

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    private static double? Positive(double? value, string name) => value is { } number ? Guard.InRange(number, allowZero: false, name) : null;

    private static Interval<double> Positive(Interval<double> value, string name) =>
        value.IsDetermined && Guard.InRange(value.Minimum!.Value, allowZero: false, name) <= Guard.InRange(value.Maximum!.Value, allowZero: false, name)
            ? value
            : throw new ArgumentException("Expected a range with two ends.", name);

    private static IReadOnlyList<T> Kept<T>(IReadOnlyList<T> value, RuleFault? fault, string name) =>
        fault is { } broken ? throw new ArgumentException(broken.Message, name) : value;
}
