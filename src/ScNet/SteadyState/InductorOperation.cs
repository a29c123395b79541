namespace ScNet.SteadyState;

/// <summary>What one inductor does over a period at an operating point.</summary>
public sealed class InductorOperation
{
    internal InductorOperation(Inductor inductor, double average, double ripple, double rms, double peak, double dissipation)
    {
        Inductor = inductor;
        AverageCurrentAmperes = average;
        RippleAmperes = ripple;
        RmsCurrentAmperes = rms;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
    }

    /// <summary>The inductor.</summary>
    public Inductor Inductor { get; }

    /// <summary>Average current over the period in amperes (A), from the first terminal to the second.</summary>
    public double AverageCurrentAmperes { get; }

    /// <summary>Current ripple, peak to peak over the period, in amperes (A).</summary>
    public double RippleAmperes { get; }

    /// <summary>Root-mean-square current over the period in amperes (A).</summary>
    public double RmsCurrentAmperes { get; }

    /// <summary>The current of the largest magnitude in amperes (A), positive from the first terminal to the second.</summary>
    public double PeakCurrentAmperes { get; }

    /// <summary>Power lost in the winding resistance in watts (W).</summary>
    public double DissipationWatts { get; }

    /// <summary>Currents, ripple and loss.</summary>
    public override string ToString() =>
        $"{Inductor.Name}: {UnitText.Of(AverageCurrentAmperes, "A")} average, {UnitText.Of(RippleAmperes, "A")} ripple, {UnitText.Of(RmsCurrentAmperes, "A")} RMS, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}";
}
