using ScNet.Design.Losses;

namespace ScNet.Design.Sizing;

/// <summary>How a sized converter serves a point.</summary>
public sealed class SizedPoint
{
    private readonly double[] _watts;

    internal SizedPoint(SizingPoint point, double frequencyHz, double outputOhms, double outputVolts, double[] watts)
    {
        Point = point;
        FrequencyHz = frequencyHz;
        OutputOhms = outputOhms;
        OutputVolts = outputVolts;
        _watts = watts;
        TotalLossWatts = watts.Sum();
    }

    /// <summary>The point.</summary>
    public SizingPoint Point { get; }

    /// <summary>The switching frequency in hertz (Hz); below the floor the effective one, with cycles left out.</summary>
    public double FrequencyHz { get; }

    /// <summary>The exact output impedance in ohms (Ω) there.</summary>
    public double OutputOhms { get; }

    /// <summary>The output voltage in volts (V).</summary>
    public double OutputVolts { get; }

    /// <summary>All losses in watts (W).</summary>
    public double TotalLossWatts { get; }

    /// <summary>Output power in watts (W).</summary>
    public double OutputWatts => OutputVolts * Point.LoadAmperes;

    /// <summary>Output power per input power; null where the output power is not positive.</summary>
    public double? Efficiency => OutputWatts > 0 ? OutputWatts / (OutputWatts + TotalLossWatts) : null;

    /// <summary>The loss of a kind in watts (W).</summary>
    /// <param name="kind">The kind.</param>
    public double WattsOf(LossKind kind) => _watts[(int)kind];

    /// <summary>Point, frequency and efficiency.</summary>
    public override string ToString() =>
        $"{Point}: {UnitText.Of(FrequencyHz, "Hz")}, {UnitText.Of(TotalLossWatts, "W")} lost{(Efficiency is { } efficiency ? $", {UnitText.Percent(efficiency)}" : string.Empty)}";
}
