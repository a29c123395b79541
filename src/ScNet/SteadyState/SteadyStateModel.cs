using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>
/// The exact steady state of a mode, prepared once and asked at any number of frequencies and operating
/// points: what depends on component values but on neither is worked out on first use and shared by
/// impedance, periodic solution and sensitivities.
/// </summary>
/// <remarks>Safe on many threads. Cost of the parts: docs/performance.md. Derivation: docs/theory/output-impedance.md.</remarks>
public sealed class SteadyStateModel
{
    private readonly ModeAnalysis _analysis;
    private readonly Lazy<PreparedMode> _prepared;
    private readonly Lazy<OutputImpedance> _impedance;
    private readonly Lazy<TwoPort> _twoPort;
    private readonly Lazy<MultiPort> _multiPort;

    private SteadyStateModel(ModeAnalysis analysis, Func<PreparedMode> prepare)
    {
        _analysis = analysis;
        _prepared = new(prepare);
        _ = analysis.Converter.Inductors.Count > 0 ? null : _prepared.Value;
        _impedance = new(() => analysis.Converter.Inductors.Count > 0
            ? new OutputImpedance(_analysis, period => TwoPort.At(1 / period).Ohms, f => TwoPort.At(f))
            : new OutputImpedance(_analysis, Prepared.WithImpedance().Ohms, f => TwoPort.At(f)));
        _twoPort = new(() => new TwoPort(_analysis, () => new ModalTwoPort(_analysis, Prepared.WithImpedance())));
        _multiPort = new(() => new MultiPort(_analysis, TwoPort));
    }

    /// <summary>The converter.</summary>
    public Converter Converter => _analysis.Converter;

    /// <summary>The mode.</summary>
    public Mode Mode => _analysis.Mode;

    /// <summary>The output impedance at any frequency.</summary>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public OutputImpedance Impedance => _impedance.Value;

    /// <summary>Ratio, impedance, current ratio and input conductance at any frequency.</summary>
    /// <exception cref="ScNetException">The network has no periodic state: <see cref="DiagnosticCodes.NoPeriodicState"/>; or it is too large.</exception>
    public TwoPort TwoPort => _twoPort.Value;

    /// <summary>What the input and all outputs see of one another at any frequency: the two-port with further outputs.</summary>
    /// <exception cref="ScNetException">The network has no periodic state: <see cref="DiagnosticCodes.NoPeriodicState"/>; or it is too large.</exception>
    public MultiPort MultiPort => _multiPort.Value;

    /// <summary>The symmetric decompositions of a network without inductors.</summary>
    /// <exception cref="ScNetException">It has inductors.</exception>
    internal PreparedMode Prepared => _prepared.Value;

    /// <summary>Prepares one analysed mode.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static SteadyStateModel Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new SteadyStateModel(analysis, () => PreparedMode.Of(analysis.Converter, analysis.Topology));
    }

    /// <summary>The same mode with the component values of another converter of the same topology.</summary>
    /// <param name="converter">A converter made from this one's by <see cref="Converter.WithValues"/>.</param>
    /// <exception cref="ArgumentException">The converter has another topology.</exception>
    public SteadyStateModel WithValuesOf(Converter converter)
    {
        ModeAnalysis analysis = _analysis.WithValuesOf(converter);
        return new SteadyStateModel(analysis, () => Prepared.WithValuesOf(converter));
    }

    /// <summary>The exact impedance at a frequency beside the published estimates.</summary>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not from 1e-60 to 1e60 Hz.</exception>
    public ImpedancePoint At(double frequencyHz) => Impedance.At(frequencyHz);

    /// <summary>The periodic steady state at an operating point.</summary>
    /// <param name="point">The operating point.</param>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public PeriodicSteadyState At(OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        if (Converter.Inductors.Count > 0)
        {
            PeriodSolver solver = TwoPort.Exponential!.Solver;
            return new PeriodicSteadyState(_analysis, solver, TwoPort.Exponential.FineAt(point.FrequencyHz), point);
        }

        Prepared.RequireElements();
        return new PeriodicSteadyState(_analysis, Prepared, point);
    }

    /// <summary>The derivatives of the output impedance by every component value at a frequency.</summary>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public ImpedanceSensitivity SensitivityAt(double frequencyHz)
    {
        double period = 1 / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        Prepared.RequireElements();
        return new ImpedanceSensitivity(
            new SensitivitySolution(Prepared, period), Converter, () => ExponentialTwoPort.Of(Converter, Mode).OhmsByDuty(frequencyHz));
    }

    /// <summary>The derivatives of the whole two-port by every component value, parasitic capacitances included, at a frequency.</summary>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public TwoPortSensitivity TwoPortSensitivityAt(double frequencyHz)
    {
        double period = 1 / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz));
        if (TwoPort.Exponential is { } inductive)
        {
            return inductive.SensitivityAt(frequencyHz);
        }

        Prepared.RequireElements();
        return new TwoPortSensitivity(Prepared, Converter, period, () => ExponentialTwoPort.Of(Converter, Mode).SensitivityAt(frequencyHz).ByDuty);
    }

    /// <summary>The mode and its limits.</summary>
    public override string ToString() => Impedance.ToString();
}
