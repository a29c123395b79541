using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The topology of a mode, solved once: the spanning forest of every phase, the loops, their elimination,
/// and all that follows without component values. Every later stage reads it here; it serves every
/// converter of the same topology.
/// </summary>
/// <remarks>
/// Forests are always there; loops where no port is shorted; the solution where a load current has a path
/// in every phase; the rest where the mode has a result.
/// </remarks>
internal sealed class TopologySolution
{
    // threads that meet here find the same parts
    private IndependentParts? _parts;

    public required Mode Mode { get; init; }

    public required IReadOnlyList<Diagnostic> Diagnostics { get; init; }

    /// <summary>Per phase, from 0: the closed switches contracted, and the spanning forests.</summary>
    public required PhaseForest[] Forests { get; init; }

    /// <summary>The fundamental loops of all phases; null where a port is shorted.</summary>
    public LoopSet? Loops { get; init; }

    /// <summary>The eliminated equations of the loops; null where there are none.</summary>
    public ILoopSolution? Solution { get; init; }

    /// <summary>The voltages that averages leave; null where <see cref="Settled"/> holds them once for all.</summary>
    public IOpenVoltages? Voltages { get; init; }

    /// <summary>The voltages themselves where no component value counts; null where they depend on inductances.</summary>
    public SettledVoltages? Settled { get; init; }

    /// <summary>Whether the mode has a result; what follows exists only then.</summary>
    public bool HasResult => Settled is not null || Voltages is not null;

    /// <summary>
    /// Whether charge can balance at constant inductor currents while the output takes some; if not there is no flow, and
    /// what follows is empty.
    /// </summary>
    public bool CarriesLoad { get; init; }

    /// <summary>A charge flow that obeys Kirchhoff's current law and charge balance; the only one where there are no directions.</summary>
    public Quantity[] Branches { get; init; } = [];

    public Quantity[] Switches { get; init; } = [];

    /// <summary>The coefficients of the slow- and fast-switching limits that belong to that flow.</summary>
    public Quantity[] SlowCoefficients { get; init; } = [];

    public Quantity[] FastSwitchCoefficients { get; init; } = [];

    public Quantity[] FastCapacitorCoefficients { get; init; } = [];

    public Quantity[] FastInductorCoefficients { get; init; } = [];

    /// <summary>
    /// Whether closed switches tie the output to the input, in some phase with a stiff load, in all with a load
    /// current: then no capacitor carries charge in the slow limit, which is zero.
    /// </summary>
    public bool IsTied { get; init; }

    /// <summary>The same flow with the elements that take part only; null where there are no directions.</summary>
    public FlowDirection? Own { get; init; }

    /// <summary>The freedom that component values settle; empty where topology does it all.</summary>
    public IReadOnlyList<FlowDirection> Directions { get; init; } = [];

    /// <summary>What falls apart where the voltages of input, output and reference are given; found when first asked for.</summary>
    /// <param name="converter">A converter of this topology, with any component values.</param>
    public IndependentParts PartsOf(Converter converter) => converter.ParasiticBranches.Count > 0
        ? IndependentParts.Of(converter, Mode, this)
        : _parts ??= IndependentParts.Of(converter, Mode, this);

    /// <summary>The same with parasitic capacitances, once somebody has asked for it; see <see cref="FullTopology.Of"/>.</summary>
    public FullTopology? Full { get; set; }

    /// <summary>The same topology as one without a result.</summary>
    /// <param name="reason">Why there is none.</param>
    public TopologySolution Refused(Diagnostic reason) =>
        new() { Mode = Mode, Diagnostics = [reason, .. Diagnostics], Forests = Forests, Loops = Loops, Solution = Solution };
}
