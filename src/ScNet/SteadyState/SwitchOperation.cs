namespace ScNet.SteadyState;

/// <summary>What one switch does over a period at an operating point.</summary>
public sealed class SwitchOperation
{
    internal SwitchOperation(Switch @switch, double rms, double peak, double dissipation, VoltageRange? blocking, VoltageRange? known)
    {
        Switch = @switch;
        RmsCurrentAmperes = rms;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
        Blocking = blocking;
        BlockingWhereDetermined = known;
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
    /// The range of the voltage across the open switch, ripple and load drop included, first terminal minus
    /// second; null where the switch is never open, or where in some phase in which it is nothing fixes that
    /// voltage: a side floats, or hangs on a capacitor whose own voltage is not determined.
    /// </summary>
    public VoltageRange? Blocking { get; }

    /// <summary>
    /// As <see cref="Blocking"/>, over those phases only in which the switch is open and its voltage is
    /// determined; null where there is none. In a dead time almost everything floats.
    /// </summary>
    public VoltageRange? BlockingWhereDetermined { get; }

    /// <summary>Currents, loss and blocking voltages.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}, blocks {Blocking?.ToString() ?? "?"}";
}
