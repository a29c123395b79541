using Fractions;

namespace ScNet.Synthesis;

/// <summary>A ratio that a reconfigurable converter is to make.</summary>
/// <param name="Ratio">Output voltage over input voltage without load; above 1 steps up, negative inverts.</param>
/// <param name="HighestInputVolts">The highest input voltage in volts (V) at which it is used; ratings are held to it.</param>
public sealed record WantedRatio(Fraction Ratio, double HighestInputVolts);
