using ScNet.Analysis;
using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// What the steady state of an independent part needs at every frequency, worked out on first use. The
/// impedance needs less than waveforms and sensitivities, which also read what each resistor carries.
/// </summary>
internal sealed class PreparedPart
{
    private readonly Converter _converter;
    private readonly FullTopology _topology;
    private readonly SteadyStateSize _size;
    private readonly Lazy<StateSpace> _space;
    private readonly Lazy<PhaseModes[]> _phases;
    private readonly Lazy<ImpedanceKernel> _kernel;

    private PreparedPart(Converter converter, FullTopology topology, double[] duties, SteadyStateSize size)
    {
        _converter = converter;
        _topology = topology;
        _size = size;
        Duties = duties;
        Flows = ResistorFlows.Of(converter, topology);
        _phases = new(() => Modes(withResistors: true));
        _space = new(() => StateSpace.Of(converter));
        _kernel = new(Prepare);
    }

    public StateSpace Space => _space.Value;

    public ResistorFlows Flows { get; }

    /// <summary>The duty of each phase.</summary>
    public double[] Duties { get; }

    /// <summary>Each phase in its own coordinates, with the share of every resistor.</summary>
    public PhaseModes[] Phases => _phases.Value;

    public ImpedanceKernel Kernel => _kernel.Value;

    /// <summary>Prepares a part.</summary>
    /// <param name="converter">The part with its component values, parasitic capacitances as capacitors.</param>
    /// <param name="topology">Its topology.</param>
    /// <param name="duties">The duty of each phase.</param>
    /// <param name="size">What bounds its size.</param>
    public static PreparedPart Of(Converter converter, FullTopology topology, double[] duties, SteadyStateSize size) =>
        new(converter, topology, duties, size);

    /// <summary>The amount of each direction at a period in seconds.</summary>
    /// <param name="periodSeconds">The period in seconds.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public double[] Amounts(double periodSeconds, bool reversed)
    {
        var amounts = new double[Flows.Directions.Count];
        Kernel.Amounts(periodSeconds, amounts, reversed);
        return amounts;
    }

    /// <summary>The amount of each direction that one volt at the input drives in open circuit, in coulombs.</summary>
    /// <param name="periodSeconds">The period in seconds.</param>
    /// <param name="reversed">Whether the phases follow one another in the opposite order (the adjoint network).</param>
    public double[] InputAmounts(double periodSeconds, bool reversed)
    {
        var amounts = new double[Flows.Directions.Count];
        if (Flows.DirectionInputs.AsSpan().ContainsAnyExcept(0))
        {
            Kernel.InputAmounts(periodSeconds, amounts, reversed);
        }

        return amounts;
    }

    /// <summary>Whether a phase is a set of chains.</summary>
    public bool IsChain(int phase) => Chains(phase) is not null;

    // Where phases do not need one another's states, those that are chains never make up the dense rows.
    private ImpedanceKernel Prepare()
    {
        int directions = Flows.Directions.Count;
        if (_phases.IsValueCreated || !PhaseSkew.IsNone(Duties.Length, directions))
        {
            PhaseModes[] phases = _phases.IsValueCreated ? Phases : Modes(withResistors: false);
            return Kernel([.. phases.Select(p => p.Terms)], Skew(phases, directions));
        }

        return Kernel([.. Enumerable.Range(0, Duties.Length).Select(Terms)], _ => PhaseSkew.None(directions));

        ImpedanceKernel Kernel(PhaseTerms[] terms, Func<DenseRows, (double[] Square, double[] Particular)> skew) =>
            ImpedanceKernel.Of(ImpedanceTerms.Of(terms, Flows.ParticularInput, Flows.DirectionInputs, Duties, skew), _topology.Topology.IsTied);
    }

    private Func<DenseRows, (double[] Square, double[] Particular)> Skew(PhaseModes[] phases, int directions) =>
        PhaseSkew.IsNone(Duties.Length, directions) ? _ => PhaseSkew.None(directions) : charges => PhaseSkew.Of(phases, Duties, charges);

    private LoopChains? Chains(int phase) => LoopChains.TryOf(_converter, _topology.Forests[phase], Flows, phase);

    private PhaseTerms Terms(int phase)
    {
        if (Chains(phase) is { } chains && PhaseTerms.TryOf(chains, Flows, phase) is { } terms)
        {
            return terms;
        }

        // also where rounding forbids the chains that were counted on
        _size.Require(new PartSize(_converter, _topology).Dense(phase));
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
