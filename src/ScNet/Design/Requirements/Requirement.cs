using ScNet.Devices;

namespace ScNet.Design.Requirements;

/// <summary>What a converter must do, and what it may be made of.</summary>
public sealed record Requirement
{
    /// <summary>The name, for people.</summary>
    public required string Name { get; init; }

    /// <summary>Range of the input voltage in volts (V).</summary>
    public required Interval<double> InputVolts { get; init; }

    /// <summary>The discharge curve by falling state of charge, from full to empty; empty: every voltage of the range counts alike.</summary>
    public IReadOnlyList<DischargePoint> Discharge { get; init => field = [.. value]; } = [];

    /// <summary>Charge of the full cell in coulombs (C); null where life is not asked for.</summary>
    public double? CellCoulombs { get; init; }

    /// <summary>Resistance of the source in ohms (Ω).</summary>
    public double SourceOhms { get; init; }

    /// <summary>The output voltages in volts (V) that must be held, rising; both ends for a range.</summary>
    public required IReadOnlyList<double> OutputVolts { get; init => field = [.. value]; }

    /// <summary>What the load draws and for which share of the time; at least one.</summary>
    public required IReadOnlyList<LoadShare> Loads { get; init => field = [.. value]; }

    /// <summary>Peak-to-peak ripple in volts (V) that is allowed at the output; null where none is told.</summary>
    public double? RippleVolts { get; init; }

    /// <summary>What it may be made of.</summary>
    public required Process Process { get; init; }

    /// <summary>Area in square metres (m²) for capacitors, switches and inductors on the chip together; null where each kind has its own.</summary>
    public double? AreaSquareMetres { get; init; }

    /// <summary>Area in square metres (m²) for capacitors alone; null where the total is shared freely.</summary>
    public double? CapacitorAreaSquareMetres { get; init; }

    /// <summary>Area in square metres (m²) for switches alone; null where the total is shared freely.</summary>
    public double? SwitchAreaSquareMetres { get; init; }

    /// <summary>Range of the switching frequency in hertz (Hz): below the floor cycles are skipped, the ceiling is not passed.</summary>
    public required Interval<double> FrequencyHz { get; init; }

    /// <summary>The candidates by file or family; empty for all that are known.</summary>
    public IReadOnlyList<CandidateRequest> Candidates { get; init => field = [.. value]; } = [];

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
