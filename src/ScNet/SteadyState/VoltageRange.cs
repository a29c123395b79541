using System.Globalization;

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

    /// <summary>Both values in volts, "1.75 V to 1.79 V", in six digits and the invariant culture.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{LeastVolts:G6} V to {GreatestVolts:G6} V");
}
