using MathNet.Numerics.RootFinding;
using ScNet.Analysis;

namespace ScNet.SteadyState.Conduction;

/// <summary>
/// Operating points of a mode in which an inductor's current may end a phase (<see cref="Mode.UntilZeroPhases"/>, after which
/// every switch is open), or flow on through body diodes (<see cref="Switch.DiodeVolts"/>) where all switches beside an
/// inductor are open, until it is zero or the phase ends.
/// </summary>
/// <remarks>
/// Times are found by event on the exact maps of the phases, to some 1e-14 of a phase. Where no current ends a phase,
/// conduction is continuous and the solution the ordinary one. Derivation: docs/theory/discontinuous-conduction.md. Safe on many
/// threads. Cost: some ten periods in doubled precision for each event, times the diodes that are tried.
/// </remarks>
public sealed class ConductionModel
{
    private const double PeriodTolerance = 1e-15;
    private const int StepLimit = 200;
    private const int OctaveLimit = 60;

    private ConductionModel(Converter converter, Mode mode)
    {
        Converter = converter;
        Mode = mode;
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>Prepares a mode.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes; null for the only one.</param>
    /// <exception cref="ArgumentException">The mode is not one of this converter's, or none is named and there are several.</exception>
    public static ConductionModel Of(Converter converter, Mode? mode = null)
    {
        ArgumentNullException.ThrowIfNull(converter);
        mode ??= converter.OnlyMode(nameof(mode));
        converter.RequireOwn(mode, nameof(mode));
        return new ConductionModel(converter, mode);
    }

    /// <summary>
    /// Whether operating points of a mode are a matter of this model: an inductor's current ends a phase, or nothing is wrong with
    /// the mode but that some phase leaves an inductor to the body diodes, of which there are some.
    /// </summary>
    /// <param name="outcome">What came of analysing the mode.</param>
    public static bool Serves(ModeOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return outcome.HasResult
            ? outcome.Mode.UntilZeroPhases.Any(p => p.Count > 0)
            : outcome.Diagnostics.All(d => d.Severity != DiagnosticSeverity.Error || d.Code == DiagnosticCodes.InductorInterrupted)
                && outcome.Converter.Switches.Any(s => s.DiodeVolts is not null);
    }

    /// <summary>The operating point at an input voltage, a load current and a frequency.</summary>
    /// <param name="point">The operating point.</param>
    /// <exception cref="ScNetException">There is none: <see cref="DiagnosticCodes.NoPeriodicState"/>.</exception>
    public ConductionPoint At(OperatingPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        ConductionSolver solver = new(Converter, Mode, point.InputVoltageVolts, point.LoadCurrentAmperes);
        double period = 1 / point.FrequencyHz;
        return new ConductionPoint(Converter, Mode, point, solver.Solve([.. Converter.Phases.Select(p => p.Duty.ToDouble() * period)]));
    }

    /// <summary>
    /// The operating point at which a load gets a wanted output voltage by the frequency alone: phases that no current ends last
    /// a fixed time, the others share what is left of the period in proportion to their duties.
    /// </summary>
    /// <param name="inputVoltageVolts">Input voltage in volts (V), positive.</param>
    /// <param name="loadCurrentAmperes">Average load current in amperes (A).</param>
    /// <param name="outputVoltageVolts">The average output voltage wanted, in volts (V).</param>
    /// <param name="onTimeFrequencyHz">The frequency in hertz (Hz) at which the duties of the netlist give the fixed times.</param>
    /// <returns>The operating point with the frequency found; conduction may turn out to be continuous.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    /// <exception cref="ArgumentException">No phase of the mode ends with a current, or every one does.</exception>
    /// <exception cref="ScNetException">No frequency gives this voltage: <see cref="DiagnosticCodes.NoPeriodicState"/>.</exception>
    public ConductionPoint AtOutputVoltage(double inputVoltageVolts, double loadCurrentAmperes, double outputVoltageVolts, double onTimeFrequencyHz)
    {
        OperatingPoint reference = new(inputVoltageVolts, loadCurrentAmperes, onTimeFrequencyHz);
        if (!double.IsFinite(outputVoltageVolts))
        {
            throw new ArgumentOutOfRangeException(nameof(outputVoltageVolts), outputVoltageVolts, "Expected a finite voltage.");
        }

        double[] duties = [.. Converter.Phases.Select(p => p.Duty.ToDouble())];
        bool[] ends = [.. Converter.Phases.Select(p => Mode.UntilZeroPhases.Any(set => set.Contains(p.Number)))];
        double open = duties.Where((_, j) => ends[j]).Sum(), reserved = duties.Where((_, j) => !ends[j]).Sum();
        if (open == 0 || reserved == 0)
        {
            throw new ArgumentException($"Mode '{Mode.Name}' of '{Converter.Name}' needs phases of fixed length and phases that end when an inductor's current is zero ('until_zero').");
        }

        // zero volts have no sign: a longer rest moves the output the way the load does
        double direction = outputVoltageVolts != 0 ? outputVoltageVolts : loadCurrentAmperes;

        // x is the time left of the period, in that of the netlist, as a logarithm to base 2
        ConductionSolver solver = new(Converter, Mode, reference.InputVoltageVolts, reference.LoadCurrentAmperes);
        double low = 0, high = 0, atLow = Excess(0), atHigh = atLow;
        for (int octave = 0; octave < OctaveLimit && atLow * atHigh > 0; octave++)
        {
            // a longer rest lowers what is too much
            if (Math.Sign(atLow) == Math.Sign(direction))
            {
                (low, atLow) = (high, atHigh);
                atHigh = Excess(++high);
            }
            else
            {
                (high, atHigh) = (low, atLow);
                atLow = Excess(--low);
            }
        }

        // times of the netlist that meet it to the last digit bracket nothing
        double found = low;
        if (!(atLow * atHigh <= 0) || (low < high && !Brent.TryFindRoot(Excess, low, high, PeriodTolerance, StepLimit, out found)))
        {
            throw ConductionFault.NoFrequency(Converter, Mode, outputVoltageVolts);
        }

        double[] seconds = Seconds(found);
        return new ConductionPoint(Converter, Mode, new(inputVoltageVolts, loadCurrentAmperes, 1 / seconds.Sum()), solver.Solve(seconds));

        double Excess(double x) => solver.Solve(Seconds(x)).Period.OutputVolts - outputVoltageVolts;

        double[] Seconds(double x) => [.. duties.Select((d, j) => d / onTimeFrequencyHz * (ends[j] ? Math.Pow(2, x) : 1))];
    }

    /// <summary>The converter and the mode.</summary>
    public override string ToString() => $"{Converter.Name}, mode {Mode}";
}
