using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.SteadyState;

/// <summary>What the output does when the load steps up and nothing but the converter as it runs answers for a while.</summary>
/// <remarks>
/// Before the step the mode is in its periodic steady state. From the step on the larger current flows, frequency and duties stay, and the
/// next decision of the control comes one control period later. The output waveform in between is the exact one of the network,
/// extremes inside phases included; the step is tried at the start of every phase and at <see cref="InstantsPerPhase"/> instants
/// evenly over it, and the deepest counts. Derivation: docs/theory/parts-steps-and-schedules.md.
/// </remarks>
public sealed class LoadStep
{
    /// <summary>How many instants of each phase the step is tried at.</summary>
    public const int InstantsPerPhase = 16;

    private LoadStep(PeriodicSteadyState before, double loadAfter, double controlPeriod, double droop, double least, double instant)
    {
        Before = before;
        LoadAfterAmperes = loadAfter;
        ControlPeriodSeconds = controlPeriod;
        DroopVolts = droop;
        LowestVolts = least;
        WorstInstantSeconds = instant;
    }

    /// <summary>The periodic steady state before the step.</summary>
    public PeriodicSteadyState Before { get; }

    /// <summary>The load current after the step in amperes (A).</summary>
    public double LoadAfterAmperes { get; }

    /// <summary>How long nothing reacts, in seconds (s).</summary>
    public double ControlPeriodSeconds { get; }

    /// <summary>The average output voltage before the step less the lowest one until the control reacts, in volts (V); ripple is in it.</summary>
    public double DroopVolts { get; }

    /// <summary>The lowest output voltage until the control reacts, in volts (V).</summary>
    public double LowestVolts { get; }

    /// <summary>When in the period the worst step comes, in seconds (s) from the start of phase 1.</summary>
    public double WorstInstantSeconds { get; }

    /// <summary>
    /// The average drop in volts (V) that would be left if the control never reacted: output impedance times the step. The impedance is
    /// the slope of the load line at this frequency.
    /// </summary>
    public double LoadLineDropVolts => Before.OutputImpedanceOhms * (LoadAfterAmperes - Before.Point.LoadCurrentAmperes);

    /// <summary>Solves one step.</summary>
    /// <param name="analysis">The analysis of a mode on a load current, with what holds the output up among its capacitors.</param>
    /// <param name="before">The operating point before the step.</param>
    /// <param name="loadAfterAmperes">The load current after the step in amperes (A).</param>
    /// <param name="controlPeriodSeconds">How long nothing reacts, in seconds (s).</param>
    /// <exception cref="ArgumentException">The load is stiff, so that nothing moves it; or nothing holds the output in some phase.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The load does not step up, or the time is not positive.</exception>
    /// <exception cref="ScNetException">There is no periodic state; or the network is too large.</exception>
    public static LoadStep Of(ModeAnalysis analysis, OperatingPoint before, double loadAfterAmperes, double controlPeriodSeconds)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(before);
        if (analysis.Converter.Load != LoadKind.Current)
        {
            throw new ArgumentException($"Expected a load current, but '{analysis.Converter.Name}' has a stiff load, which no step moves. Build it with the load current and its output capacitor.", nameof(analysis));
        }

        if (!(loadAfterAmperes > before.LoadCurrentAmperes && double.IsFinite(loadAfterAmperes)))
        {
            throw new ArgumentOutOfRangeException(nameof(loadAfterAmperes), loadAfterAmperes, $"Expected a load current above the one before of {before.LoadCurrentAmperes} A.");
        }

        _ = Guard.InRange(controlPeriodSeconds, allowZero: false, nameof(controlPeriodSeconds));
        ExponentialTwoPort twoPort = ExponentialTwoPort.Of(analysis.Converter, analysis.Mode);
        PeriodicSteadyState steady = new(analysis, twoPort.Solver, twoPort.FineAt(before.FrequencyHz), before);
        if (steady.OutputRippleVolts is null)
        {
            throw new ArgumentException($"Expected an output that something holds in every phase, but in some phase nothing does in '{analysis.Converter.Name}'. Add its output capacitor.", nameof(analysis));
        }

        StepResponse response = new(twoPort.Solver, (ExponentialSignals)steady.Signals, loadAfterAmperes);
        (double least, double instant) = response.Lowest(controlPeriodSeconds, InstantsPerPhase);
        return new LoadStep(steady, loadAfterAmperes, controlPeriodSeconds, steady.AverageOutputVoltageVolts - least, least, instant);
    }

    /// <summary>The step and the droop.</summary>
    public override string ToString() =>
        $"{Before.Converter.Name}, mode {Before.Mode}: {UnitText.Of(Before.Point.LoadCurrentAmperes, "A")} to {UnitText.Of(LoadAfterAmperes, "A")}, {UnitText.Of(DroopVolts, "V")} of droop within {UnitText.Of(ControlPeriodSeconds, "s")}, {UnitText.Of(LoadLineDropVolts, "V")} by the load line";
}
