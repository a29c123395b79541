namespace ScNet.SteadyState;

/// <summary>What one switch does over a period at an operating point.</summary>
public sealed class SwitchOperation
{
    internal SwitchOperation(Switch @switch, double rms, double peak, double dissipation, Interval<double> blocking, Interval<double> known)
    {
        Switch = @switch;
        RmsCurrentAmperes = rms;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
        BlockingVolts = blocking;
        BlockingWhereDeterminedVolts = known;
    }

    /// <summary>The switch.</summary>
    public Switch Switch { get; }

    /// <summary>Root-mean-square current over the period in amperes (A).</summary>
    public double RmsCurrentAmperes { get; }

    /// <summary>The current of the largest magnitude in amperes (A), positive from the first terminal to the second.</summary>
    public double PeakCurrentAmperes { get; }

    /// <summary>Power lost in the on-resistance in watts (W).</summary>
    public double DissipationWatts { get; }

    /// <summary>
    /// The interval in volts (V) of the voltage across the open switch, ripple and load drop included, first terminal
    /// minus second; undetermined where the switch is never open, or where in some phase in which it is nothing fixes
    /// that voltage: a side floats, or is connected to a capacitor whose own voltage is not determined.
    /// </summary>
    public Interval<double> BlockingVolts { get; }

    /// <summary>
    /// As <see cref="BlockingVolts"/>, over those phases only in which the switch is open and its voltage is
    /// determined; undetermined where there is none. In a dead time almost everything floats.
    /// </summary>
    public Interval<double> BlockingWhereDeterminedVolts { get; }

    /// <summary>Currents, loss and blocking voltages.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}, blocks {BlockingVolts.ToString("V")}";
}
