namespace ScNet.SteadyState.Conduction;

/// <summary>An operating point of a mode whose phases inductor currents may end.</summary>
public sealed class ConductionPoint
{
    internal ConductionPoint(Converter converter, Mode mode, OperatingPoint point, ConductionSolution solution)
    {
        ConductionPeriod period = solution.Period;
        double seconds = solution.PhaseSeconds.Sum();
        IsDiscontinuous = period.Network.Stretches.Any(s => s.IsAfterEvent);
        ConductingShares = new([.. solution.ConductingSeconds.Select(s => s / seconds)], converter.Phases.Names);
        Steady = new PeriodicSteadyState(converter, mode, null, point, period.Solver, period.Figures);
        Steady.Diodes = NameIndex.ListOf(converter.Name, "diode", [.. period.Network.Diodes.Select(s => Operate(s, period, seconds))], d => d.Switch.Name);
    }

    /// <summary>The operating point; its frequency is the one found where a voltage was wanted.</summary>
    public OperatingPoint Point => Steady.Point;

    /// <summary>Whether an inductor's current ends a phase before its time, so that it rests for a part of the period.</summary>
    public bool IsDiscontinuous { get; }

    /// <summary>The share of the period for which each phase lasts until a current ends it: its duty where none does. By name or position of the phase.</summary>
    public NamedList<double> ConductingShares { get; }

    /// <summary>Average output voltage per volt of input, at this load.</summary>
    public double Ratio => Steady.AverageOutputVoltageVolts / Point.InputVoltageVolts;

    /// <summary>The average output voltage in volts (V).</summary>
    public double AverageOutputVoltageVolts => Steady.AverageOutputVoltageVolts;

    /// <summary>
    /// The periodic solution with every phase ending when it does: powers, currents, ripple and losses of the elements, and
    /// waveforms. Its impedance and its voltage without load are those with these times kept.
    /// </summary>
    public PeriodicSteadyState Steady { get; }

    /// <summary>The body diodes that conduct; by name of the switch.</summary>
    public NamedList<DiodeOperation> Diodes => Steady.Diodes;

    /// <summary>The losses in watts (W): in all resistances, and in the diodes; input less output power.</summary>
    public double DissipationWatts => Steady.DissipationWatts;

    /// <summary>The kind of conduction, the ratio and the operating point.</summary>
    public override string ToString() =>
        $"{Steady.Converter.Name}, mode {Steady.Mode}, {(IsDiscontinuous ? "discontinuous" : "continuous")} conduction, {Point}: {UnitText.Of(AverageOutputVoltageVolts, "V")} output";

    private DiodeOperation Operate(int index, ConductionPeriod period, double seconds)
    {
        Switch @switch = Steady.Converter.Switches[index];
        int resistor = period.Network.DiodeResistor(index);
        double charge = 0, peak = 0;
        for (int k = 0; k < period.Network.Stretches.Length; k++)
        {
            if (Steady.Signals.SwitchCurrent(k, resistor) is { } reverse)
            {
                charge -= reverse.Mean() * Steady.Signals.Durations[k];
                peak = Math.Max(peak, -reverse.Extremes().Least);
            }
        }

        return new(@switch, charge / seconds, peak, @switch.DiodeVolts!.Value * charge / seconds);
    }
}
