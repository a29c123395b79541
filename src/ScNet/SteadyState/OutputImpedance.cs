using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// The exact output impedance of a mode at any switching frequency: the average-output resistance of the
/// switched resistor-capacitor network in its periodic steady state, accurate to rounding also where time
/// constants are many orders apart.
/// </summary>
/// <remarks>
/// Made once per set of component values, then evaluated at any number of frequencies. Setting up takes
/// one orthogonal decomposition per phase; a frequency costs one hyperbolic function per exponential mode
/// and allocates nothing. Derivation: docs/theory/output-impedance.md.
/// </remarks>
public sealed class OutputImpedance
{
    private readonly Func<double, double> _ohmsOfPeriod;
    private readonly Func<double, TwoPortPoint> _twoPort;
    private readonly ModeAnalysis _analysis;

    internal OutputImpedance(ModeAnalysis analysis, Func<double, double> ohmsOfPeriod, Func<double, TwoPortPoint> twoPort)
    {
        _analysis = analysis;
        _twoPort = twoPort;
        _ohmsOfPeriod = ohmsOfPeriod;
    }

    /// <summary>The converter.</summary>
    public Converter Converter => _analysis.Converter;

    /// <summary>The mode.</summary>
    public Mode Mode => _analysis.Mode;

    /// <summary>The frequency in hertz (Hz) at which both limits are equal; zero where the slow one is zero.</summary>
    public double CornerFrequencyHz => _analysis.SlowSwitchingLimit.OhmsAtOneHertz / _analysis.FastSwitchingLimit.Ohms;

    /// <summary>Prepares the impedance of one analysed mode; a <see cref="SteadyStateModel"/> shares this with its other results.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static OutputImpedance Of(ModeAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return SteadyStateModel.Of(analysis).Impedance;
    }

    /// <summary>The output impedance in ohms (Ω) at a switching frequency.</summary>
    /// <param name="frequencyHz">Switching frequency, one period per cycle, in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    public double Ohms(double frequencyHz) => _ohmsOfPeriod(1 / Guard.InRange(frequencyHz, allowZero: false, nameof(frequencyHz)));

    /// <summary>The output impedances in ohms (Ω) at many frequencies, without allocation.</summary>
    /// <param name="frequenciesHz">Switching frequencies in hertz (Hz).</param>
    /// <param name="ohms">Receives one impedance per frequency; at least as long.</param>
    /// <exception cref="ArgumentException">The second span is shorter than the first.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not finite and positive.</exception>
    public void Sweep(ReadOnlySpan<double> frequenciesHz, Span<double> ohms)
    {
        if (ohms.Length < frequenciesHz.Length)
        {
            throw new ArgumentException($"Expected room for {frequenciesHz.Length} impedances, but got {ohms.Length}.", nameof(ohms));
        }

        for (int i = 0; i < frequenciesHz.Length; i++)
        {
            ohms[i] = Ohms(frequenciesHz[i]);
        }
    }

    /// <summary>The exact impedance at a frequency beside the published estimates.</summary>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    public ImpedancePoint At(double frequencyHz) => new(
        _twoPort(frequencyHz), _analysis.SlowSwitchingLimit.Ohms(frequencyHz), _analysis.FastSwitchingLimit.Ohms);

    /// <summary>The mode and both limits.</summary>
    public override string ToString() =>
        $"{Converter.Name}, mode {Mode}: SSL {UnitText.Of(_analysis.SlowSwitchingLimit.OhmsAtOneHertz, "Ω")} at 1 Hz, FSL {UnitText.Of(_analysis.FastSwitchingLimit.Ohms, "Ω")}, equal at {UnitText.Of(CornerFrequencyHz, "Hz")}";
}
