namespace ScNet.SteadyState.Conduction;

/// <summary>What the body diode of one switch does over a period at an operating point.</summary>
public sealed class DiodeOperation
{
    internal DiodeOperation(Switch @switch, double average, double peak, double dissipation)
    {
        Switch = @switch;
        AverageCurrentAmperes = average;
        PeakCurrentAmperes = peak;
        DissipationWatts = dissipation;
    }

    /// <summary>The switch.</summary>
    public Switch Switch { get; }

    /// <summary>Average forward current over the period in amperes (A), from the switch's second terminal to its first.</summary>
    public double AverageCurrentAmperes { get; }

    /// <summary>The largest forward current in amperes (A).</summary>
    public double PeakCurrentAmperes { get; }

    /// <summary>Power lost in watts (W): forward voltage times average current.</summary>
    public double DissipationWatts { get; }

    /// <summary>Currents and loss.</summary>
    public override string ToString() =>
        $"{Switch.Name}: {UnitText.Of(AverageCurrentAmperes, "A")} average, {UnitText.Of(PeakCurrentAmperes, "A")} peak, {UnitText.Of(DissipationWatts, "W")}";
}
