using Fractions;

namespace ScNet.Synthesis;

/// <summary>A ratio that a reconfigurable converter is to make.</summary>
/// <param name="Ratio">Output voltage over input voltage without load; above 1 steps up, negative inverts.</param>
/// <param name="HighestInputVolts">The highest input voltage in volts (V) at which it is used; ratings are held to it.</param>
public sealed record WantedRatio(Fraction Ratio, double HighestInputVolts)
{
    /// <summary>The lowest input voltage in volts (V) at which it is used, at most <see cref="HighestInputVolts"/>; asked for where losses count, null elsewhere.</summary>
    public double? LowestInputVolts { get; init; }

    /// <summary>What losses at this ratio count beside those at the others, above zero: the share of the time, say. Only proportions matter.</summary>
    public double Weight { get; init; } = 1;
}
