using Fractions;

namespace ScNet.Reconfiguration;

/// <summary>A ratio that a set of switches can reach, with its best gate patterns.</summary>
public sealed class ReachableRatio
{
    internal ReachableRatio(Fraction ratio, long patternCount, GatePattern slow, GatePattern fast, GatePattern stress)
    {
        Ratio = ratio;
        PatternCount = patternCount;
        BestBySlowLimit = slow;
        BestByFastLimit = fast;
        BestByStress = stress;
    }

    /// <summary>The ideal conversion ratio.</summary>
    public Fraction Ratio { get; }

    /// <summary>How many gate patterns give it.</summary>
    public long PatternCount { get; }

    /// <summary>The pattern with the least slow-switching limit; among equals the least fast limit; switches that it needs not close are left open.</summary>
    public GatePattern BestBySlowLimit { get; }

    /// <summary>The pattern with the least fast-switching limit; among equals the least slow limit; switches that it needs not close are left open.</summary>
    public GatePattern BestByFastLimit { get; }

    /// <summary>
    /// The pattern with the least highest blocking voltage; a pattern in which a switch sees a floating node
    /// comes after every one in which none does. Among equals the least fast limit; switches that it needs not close are left open.
    /// </summary>
    public GatePattern BestByStress { get; }

    /// <summary>The ratio and the pattern count.</summary>
    public override string ToString() => $"{Ratio.Numerator}/{Ratio.Denominator} by {PatternCount} patterns";
}
