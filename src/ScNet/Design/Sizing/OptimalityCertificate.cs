namespace ScNet.Design.Sizing;

/// <summary>How good sizes are for certain: no sizes near by lose less, but for a small gap.</summary>
/// <remarks>
/// The losses as a function of sizes and frequencies are bounded from below by a convex program that agrees with them in value and slope
/// at the sizes found; its duality gap does not depend on how they were found. What that proves: the conditions of a minimum hold there, and
/// no sizes anywhere are better as far as the impedance keeps the shape of the root of the sum of squares of its limits. That it has no second minimum
/// far away is searched in tests, not proved. Derivation:
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

    /// <summary>
    /// By how much of itself the weighted loss may be lowered at most: by sizes near by, with the same kinds of devices and the same points served, and by any
    /// sizes so far as the impedance has at least the shape that the program gives it.
    /// </summary>
    public double RelativeGap { get; }

    /// <summary>The weighted loss in watts (W) below which, in the sense of <see cref="RelativeGap"/>, no sizes get.</summary>
    public double LowerBoundWatts { get; }

    /// <summary>Whether topology decides the charge flow in every mode; where values do, sizes move it, and nothing is said of sizes far away.</summary>
    public bool IsTopologyDecided { get; }

    /// <summary>The convex programs that were solved, each with the impedance as the one before found it.</summary>
    public int Rounds { get; }

    /// <summary>The steps of Newton's method in all.</summary>
    public int Steps { get; }

    /// <summary>Gap, rounds and steps.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"within {RelativeGap:G2} of the least loss of sizes near by{(IsTopologyDecided ? string.Empty : ", as far as component values leave the flow as it is")}; {UnitText.Count(Rounds, "convex program", "convex programs")}, {UnitText.Count(Steps, "step", "steps")}");
}
