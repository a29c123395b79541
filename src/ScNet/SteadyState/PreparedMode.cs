using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// What the steady state of a mode needs at every frequency, each part worked out on first use. The
/// impedance needs less than waveforms and sensitivities, which also read what each resistor carries.
/// </summary>
internal sealed class PreparedMode
{
    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly TopologySolution _exact;
    private readonly Lazy<PhaseModes[]> _phases;
    private readonly Lazy<ImpedanceKernel> _kernel;

    private PreparedMode(Converter converter, Mode mode, TopologySolution exact)
    {
        _converter = converter;
        _mode = mode;
        _exact = exact;
        Space = StateSpace.Of(converter);
        Flows = ResistorFlows.Of(converter, mode, exact);
        Duties = [.. converter.Phases.Select(p => p.Duty.ToDouble())];
        _phases = new(() => Modes(withResistors: true));
        _kernel = new(() => ImpedanceKernel.Of(_phases.IsValueCreated ? Phases : Modes(withResistors: false), Duties));
    }

    public StateSpace Space { get; }

    public ResistorFlows Flows { get; }

    /// <summary>The duty of each phase.</summary>
    public double[] Duties { get; }

    /// <summary>Each phase in its own coordinates, with the share of every resistor.</summary>
    public PhaseModes[] Phases => _phases.Value;

    public ImpedanceKernel Kernel => _kernel.Value;

    public static PreparedMode Of(Converter converter, Mode mode, TopologySolution exact) => new(converter, mode, exact);

    /// <summary>The same mode with other component values.</summary>
    public PreparedMode WithValuesOf(Converter converter) => new(converter, _mode, _exact);

    private PhaseModes[] Modes(bool withResistors)
    {
        var phases = new PhaseModes[Duties.Length];
        for (int phase = 0; phase < phases.Length; phase++)
        {
            phases[phase] = PhaseModes.Of(Space, _converter.Network, Flows, phase, withResistors);
        }

        return phases;
    }
}
