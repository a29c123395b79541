using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>
/// What input and output of a mode see of each other on average over a period, exactly, ripple and parasitic
/// capacitances included: V_out = ratio · V_in − ohms · I_out and I_in = currentRatio · I_out + siemens · V_in.
/// </summary>
/// <remarks>
/// Networks of resistors and capacitors use their symmetric decompositions (docs/theory/output-impedance.md), networks
/// with inductors exponentials of the state equation (docs/theory/two-port.md). Safe on many threads.
/// </remarks>
public sealed class TwoPort
{
    private readonly ITwoPortMethod _method;

    internal TwoPort(ModeAnalysis analysis, Func<ITwoPortMethod> modal)
    {
        Converter = analysis.Converter;
        Mode = analysis.Mode;
        _method = Converter.Inductors.Count > 0 ? ExponentialTwoPort.Of(Converter, Mode) : modal();
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The method for networks with inductors; null for others.</summary>
    internal ExponentialTwoPort? Exponential => _method as ExponentialTwoPort;

    /// <summary>The two-port at a switching frequency.</summary>
    /// <param name="frequencyHz">Switching frequency, one period per cycle, in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The network has no periodic state at this frequency: <see cref="DiagnosticCodes.NoPeriodicState"/>.</exception>
    public TwoPortPoint At(double frequencyHz) => _method.At(Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz)));

    /// <summary>The converter and the mode.</summary>
    public override string ToString() => $"{Converter.Name}, mode {Mode}";
}
