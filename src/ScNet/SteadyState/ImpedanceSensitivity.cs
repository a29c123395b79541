using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// The derivatives of the exact output impedance by every component value, duty and frequency: analytic,
/// from the solution and that of the network with its phases in the opposite order.
/// </summary>
/// <remarks>
/// Derivation: docs/theory/output-impedance.md, "Sensitivities". Cost: per element and phase, the square
/// of the number of exponential modes.
/// </remarks>
public sealed class ImpedanceSensitivity
{
    private readonly Lazy<PerPhase<double>> _byDuty;

    internal ImpedanceSensitivity(SensitivitySolution solution, Converter converter, Func<PerPhase<double>> byDutyOfLoad)
    {
        FrequencyHz = 1 / solution.Period;
        Ohms = solution.Ohms;
        ByCapacitanceOhmsPerFarad = new([.. converter.Capacitors.Select((_, i) => solution.ByCapacitance(i))], converter.Capacitors.Names);
        ByEsr = new([.. converter.Capacitors.Select((_, i) => solution.ByEsr(i))], converter.Capacitors.Names);
        ByOnResistance = new([.. converter.Switches.Select((_, s) => solution.ByOnResistance(s))], converter.Switches.Names);
        _byDuty = new(() => converter.Load == LoadKind.Stiff
            ? new PerPhase<double>([.. converter.Phases.Select((_, j) => solution.ByDuty(j))], converter.Phases.Names)
            : byDutyOfLoad());
        ByFrequencyOhmsPerHertz = -solution.Period * solution.Period * solution.ByPeriod();
    }

    /// <summary>Switching frequency in hertz (Hz).</summary>
    public double FrequencyHz { get; }

    /// <summary>The output impedance itself in ohms (Ω).</summary>
    public double Ohms { get; }

    /// <summary>Ohms per farad (Ω/F) of each capacitance; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<double> ByCapacitanceOhmsPerFarad { get; }

    /// <summary>Ohms per ohm of each capacitor's series resistance, also where that is zero; by name or by position as in <see cref="Converter.Capacitors"/>.</summary>
    public NamedList<double> ByEsr { get; }

    /// <summary>Ohms per ohm of each on-resistance; by name or by position as in <see cref="Converter.Switches"/>.</summary>
    public NamedList<double> ByOnResistance { get; }

    /// <summary>
    /// Ohms (Ω) per unit of each phase's duty at constant period, the other duties unchanged; to shorten one
    /// phase for another, take the difference. Found when first asked for; with a current load, whose charge in a phase moves
    /// with the duty as well, from the state equation (docs/theory/two-port.md).
    /// </summary>
    public PerPhase<double> ByDutyOhms => _byDuty.Value;

    /// <summary>Ohms per hertz (Ω/Hz) of the switching frequency at constant duties.</summary>
    public double ByFrequencyOhmsPerHertz { get; }

    /// <summary>Finds the sensitivities of one analysed mode at a frequency.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">Switching frequency in hertz (Hz).</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is not positive, or not from 1e-60 to 1e60 Hz.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static ImpedanceSensitivity Of(ModeAnalysis analysis, double frequencyHz)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return SteadyStateModel.Of(analysis).SensitivityAt(frequencyHz);
    }

    /// <summary>The impedance and where its slopes are to be found.</summary>
    public override string ToString() =>
        $"{UnitText.Of(Ohms, "Ω")} at {UnitText.Of(FrequencyHz, "Hz")}, {UnitText.Of(ByFrequencyOhmsPerHertz, "Ω/Hz")} by frequency, by {UnitText.Count(ByCapacitanceOhmsPerFarad.Count, "capacitance", "capacitances")} and {UnitText.Count(ByOnResistance.Count, "on-resistance", "on-resistances")}";
}
