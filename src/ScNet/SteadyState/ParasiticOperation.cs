namespace ScNet.SteadyState;

/// <summary>What a parasitic capacitance, a plate's or another, does over a period at an operating point.</summary>
public sealed class ParasiticOperation
{
    internal ParasiticOperation(double farads, double swing, double rms, double charging)
    {
        Farads = farads;
        SwingVolts = swing;
        RmsCurrentAmperes = rms;
        ChargingWatts = charging;
    }

    /// <summary>Capacitance in farads (F).</summary>
    public double Farads { get; }

    /// <summary>By how much its voltage swings, peak to peak over the period, in volts (V).</summary>
    public double SwingVolts { get; }

    /// <summary>Root-mean-square current over the period in amperes (A).</summary>
    public double RmsCurrentAmperes { get; }

    /// <summary>What charging it costs in watts (W), as if by impulses: see <see cref="CapacitorOperation.ChargingWatts"/>.</summary>
    public double ChargingWatts { get; }

    /// <summary>Capacitance, swing and the cost of charging.</summary>
    public override string ToString() =>
        $"{UnitText.Of(Farads, "F")}: {UnitText.Of(SwingVolts, "V")} swing, {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(ChargingWatts, "W")} charging";
}
