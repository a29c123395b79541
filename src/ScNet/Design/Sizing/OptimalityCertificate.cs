namespace ScNet.Design.Sizing;

/// <summary>What proves that sizes are the best ones.</summary>
/// <remarks>
/// The losses as a function of sizes and frequencies are bounded from below by a convex program that agrees with them in value and slope
/// at the sizes found; its duality gap does not depend on how they were found. What that proves: no other sizes near by are better, and
/// none anywhere as far as the impedance keeps the shape of the root of the sum of squares of its limits. Derivation:
/// docs/theory/sizing.md, "Certificate".
/// </remarks>
public sealed class OptimalityCertificate
{
    internal OptimalityCertificate(double relativeGap, double lowerBoundWatts, bool isTopologyDecided, int rounds, int steps)
    {
        RelativeGap = relativeGap;
        LowerBoundWatts = lowerBoundWatts;
        IsTopologyDecided = isTopologyDecided;
        Rounds = rounds;
        Steps = steps;
    }

    /// <summary>By how much of itself the weighted loss may be lowered at most.</summary>
    public double RelativeGap { get; }

    /// <summary>The weighted loss in watts (W) below which no sizes get.</summary>
    public double LowerBoundWatts { get; }

    /// <summary>Whether topology decides the charge flow in every mode; where values do, sizes move it, and nothing is said of sizes far away.</summary>
    public bool IsTopologyDecided { get; }

    /// <summary>The convex programs that were solved, each with the impedance as the one before found it.</summary>
    public int Rounds { get; }

    /// <summary>The steps of Newton's method in all.</summary>
    public int Steps { get; }

    /// <summary>Gap, rounds and steps.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"within {RelativeGap:G2} of the least loss{(IsTopologyDecided ? string.Empty : " near by, as component values decide the flow")}; {UnitText.Count(Rounds, "convex program", "convex programs")}, {UnitText.Count(Steps, "step", "steps")}");
}
