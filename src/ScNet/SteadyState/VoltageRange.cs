namespace ScNet.SteadyState;

/// <summary>The least and the greatest value that a voltage takes.</summary>
/// <param name="LeastVolts">The least value in volts (V).</param>
/// <param name="GreatestVolts">The greatest value in volts (V).</param>
public readonly record struct VoltageRange(double LeastVolts, double GreatestVolts)
{
    /// <summary>The difference of both in volts (V).</summary>
    public double PeakToPeakVolts => GreatestVolts - LeastVolts;

    /// <summary>The smallest range that holds both.</summary>
    internal VoltageRange Including(VoltageRange other) =>
        new(Math.Min(LeastVolts, other.LeastVolts), Math.Max(GreatestVolts, other.GreatestVolts));
}
