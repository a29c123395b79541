namespace ScNet.SteadyState;

/// <summary>What one capacitor does over a period at an operating point.</summary>
public sealed class CapacitorOperation
{
    internal CapacitorOperation(Capacitor capacitor, double? average, double ripple, double rms, double peak, double dissipation)
    {
        Capacitor = capacitor;
        AverageVoltageVolts = average;
        RippleVolts = ripple;
        RmsCurrentAmperes = rms;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
    }

    /// <summary>The capacitor.</summary>
    public Capacitor Capacitor { get; }

    /// <summary>Average voltage over the period in volts (V), positive plate minus bottom plate; null where nothing fixes it.</summary>
    public double? AverageVoltageVolts { get; }

    /// <summary>Voltage ripple, peak to peak over the period, in volts (V), at the capacitance itself.</summary>
    public double RippleVolts { get; }

    /// <summary>Root-mean-square current over the period in amperes (A).</summary>
    public double RmsCurrentAmperes { get; }

    /// <summary>The current of the largest magnitude in amperes (A), positive into the first terminal.</summary>
    public double PeakCurrentAmperes { get; }

    /// <summary>Power lost in the series resistance in watts (W).</summary>
    public double DissipationWatts { get; }

    /// <summary>Voltage, ripple, currents and loss.</summary>
    public override string ToString() =>
        $"{Capacitor.Name}: {UnitText.Of(AverageVoltageVolts, "V")} average, {UnitText.Of(RippleVolts, "V")} ripple, {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}";
}
