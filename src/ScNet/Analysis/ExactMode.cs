namespace ScNet.Analysis;

/// <summary>
/// What topology alone says about a mode: everything but ohms and the flows that component values
/// decide. It serves every converter of the same topology.
/// </summary>
internal sealed class ExactMode
{
    public required IReadOnlyList<Diagnostic> Diagnostics { get; init; }

    /// <summary>The findings below exist only where this is not null.</summary>
    public IdealPoint? IdealPoint { get; init; }

    public BlockingVoltages? BlockingVoltages { get; init; }

    /// <summary>A charge flow that obeys Kirchhoff's current law and charge balance; the only one where there are no directions.</summary>
    public Quantity[] Branches { get; init; } = [];

    public Quantity[] Switches { get; init; } = [];

    /// <summary>The coefficients of the slow- and fast-switching limits that belong to that flow.</summary>
    public Quantity[] SlowCoefficients { get; init; } = [];

    public Quantity[] FastSwitchCoefficients { get; init; } = [];

    public Quantity[] FastCapacitorCoefficients { get; init; } = [];

    /// <summary>The freedom that component values settle; empty where topology does it all.</summary>
    public IReadOnlyList<FlowDirection> Directions { get; init; } = [];
}
