namespace ScNet.SteadyState;

/// <summary>What one capacitor does over a period at an operating point.</summary>
public sealed class CapacitorOperation
{
    internal CapacitorOperation(Capacitor capacitor, double? average, double ripple, double rms, double peak, double dissipation, double charging)
    {
        Capacitor = capacitor;
        AverageVoltageVolts = average;
        RippleVolts = ripple;
        RmsCurrentAmperes = rms;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
        ChargingWatts = charging;
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

    /// <summary>
    /// What charging the capacitance costs in watts (W), as if by impulses: frequency times Σ (charge moved in a phase)² /
    /// (2 C). The resistances dissipate it and count it among their losses. With a stiff load, and phases long enough to
    /// settle, the shares of all capacitances add up to the whole loss (docs/theory/parasitic-capacitances.md).
    /// </summary>
    public double ChargingWatts { get; }

    /// <summary>What the bottom plate's capacitance to the body does; null where there is none.</summary>
    public ParasiticOperation? BottomPlate { get; internal init; }

    /// <summary>What the positive plate's capacitance to the body does; null where there is none.</summary>
    public ParasiticOperation? TopPlate { get; internal init; }

    /// <summary>Voltage, ripple, currents and loss.</summary>
    public override string ToString() =>
        $"{Capacitor.Name}: {UnitText.Of(AverageVoltageVolts, "V")} average, {UnitText.Of(RippleVolts, "V")} ripple, {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}";
}
