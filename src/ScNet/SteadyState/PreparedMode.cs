using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// What the steady state of a mode needs at every frequency, each part worked out on first use. The
/// impedance needs less than waveforms and sensitivities, which also read what each resistor carries.
/// </summary>
internal sealed class PreparedMode
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly TopologySolution _topology;
    private readonly Lazy<StateSpace> _space;
    private readonly Lazy<PhaseModes[]> _phases;
    private readonly Lazy<ImpedanceKernel> _kernel;

    private PreparedMode(Converter converter, Mode mode, TopologySolution topology)
    {
        _converter = converter;
        _mode = mode;
        _topology = topology;
        Size = new SteadyStateSize(converter, mode, topology);
        Size.RequireFlows();
        Flows = ResistorFlows.Of(converter, mode, topology);
        Duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        _phases = new(() => Modes(withResistors: true));
        _space = new(() => StateSpace.Of(converter));
        _kernel = new(Prepare);
    }

    public StateSpace Space => _space.Value;

    public ResistorFlows Flows { get; }

    private SteadyStateSize Size { get; }

    /// <summary>The duty of each phase.</summary>
    public double[] Duties { get; }

    /// <summary>Each phase in its own coordinates, with the share of every resistor.</summary>
    public PhaseModes[] Phases => _phases.Value;

    public ImpedanceKernel Kernel => _kernel.Value;

    public static PreparedMode Of(Converter converter, Mode mode, TopologySolution topology) => new(converter, mode, topology);

    /// <summary>The same mode with other component values.</summary>
    public PreparedMode WithValuesOf(Converter converter) => new(converter, _mode, _topology);

    /// <summary>Refuses what every element would need, waveforms or derivatives, if it is too large.</summary>
    /// <exception cref="ScNetException">It is too large.</exception>
    public void RequireElements() => Size.RequireElements(IsChain);

    // Where phases do not need one another's states, those that are chains never make up the dense rows.
    private ImpedanceKernel Prepare()
    {
        int directions = Flows.Directions.Count;
        Size.RequireImpedance(IsChain, keepsStates: !PhaseSkew.IsNone(Duties.Length, directions));
        if (_phases.IsValueCreated || !PhaseSkew.IsNone(Duties.Length, directions))
        {
            PhaseModes[] phases = _phases.IsValueCreated ? Phases : Modes(withResistors: false);
            return ImpedanceKernel.Of([.. phases.Select(p => p.Terms)], directions, Duties, _topology.IsTied, Skew(phases, directions));
        }

        return ImpedanceKernel.Of([.. Enumerable.Range(0, Duties.Length).Select(Terms)], directions, Duties, _topology.IsTied, _ => PhaseSkew.None(directions));
    }

    private Func<DenseRows, (double[] Square, double[] Particular)> Skew(PhaseModes[] phases, int directions) =>
        PhaseSkew.IsNone(Duties.Length, directions) ? _ => PhaseSkew.None(directions) : charges => PhaseSkew.Of(phases, Duties, charges);

    private LoopChains? Chains(int phase) => LoopChains.TryOf(_converter, _topology.Forests[phase], Flows, phase);

    private bool IsChain(int phase) => Chains(phase) is not null;

    private PhaseTerms Terms(int phase)
    {
        if (Chains(phase) is { } chains && PhaseTerms.TryOf(chains, Flows, phase) is { } terms)
        {
            return terms;
        }

        // also where rounding forbids the chains that were counted on
        Size.RequireDense(phase);
        return PhaseModes.Of(Space, _converter, _topology.Forests[phase], Flows, phase, withResistors: false).Terms;
    }

    private PhaseModes[] Modes(bool withResistors)
    {
        var phases = new PhaseModes[Duties.Length];
        for (int phase = 0; phase < phases.Length; phase++)
        {
            phases[phase] = PhaseModes.Of(Space, _converter, _topology.Forests[phase], Flows, phase, withResistors);
        }

        return phases;
    }
}
