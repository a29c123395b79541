using Fractions;

namespace ScNet.Design.Maps;

/// <summary>What the points of a map would need that no mode holds.</summary>
/// <remarks>Derivation: docs/theory/maps.md.</remarks>
public sealed class MissingModes
{
    private MissingModes(int points, double? ratioAbove, Fraction? ratio, double? ohms, MapPoint? example) =>
        (Points, RatioAbove, Ratio, OhmsNeeded, HardestPoint) = (points, ratioAbove, ratio, ohms, example);

    /// <summary>The number of points that no mode holds.</summary>
    public int Points { get; }

    /// <summary>Output over input voltage above which a ratio is missing, because no mode has one; null where no ratio is missing.</summary>
    public double? RatioAbove { get; }

    /// <summary>The simplest ratio that would do: above <see cref="RatioAbove"/> and at most a tenth higher; null where no ratio is missing.</summary>
    public Fraction? Ratio { get; }

    /// <summary>The output impedance in ohms (Ω) that the lowest sufficient ratio would need at the hardest of the points where one exists; null where there are none.</summary>
    public double? OhmsNeeded { get; }

    /// <summary>The point that needs <see cref="OhmsNeeded"/>; null where there is none.</summary>
    public MapPoint? HardestPoint { get; }

    /// <summary>Finds it.</summary>
    /// <param name="map">The map.</param>
    public static MissingModes Of(OperatingMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        int points = 0;
        double? above = null, ohms = null;
        MapPoint? hardest = null;
        foreach (MapPoint point in map.Points.Where(p => !p.IsHeld))
        {
            points++;
            double needed = point.OutputVolts / point.InputVolts;
            if (map.Ratios.Above(needed) is not { } ratio)
            {
                above = Math.Max(above ?? 0, needed);
            }
            else if (((ratio * point.InputVolts) - point.OutputVolts) / point.LoadAmperes is var own && !(own >= ohms))
            {
                (ohms, hardest) = (own, point);
            }
        }

        return new MissingModes(points, above, above is { } low ? Simplest(low) : null, ohms, hardest);
    }

    /// <summary>What is missing, in words.</summary>
    public override string ToString() => Points == 0 ? "every point is held" : string.Join("; ", Parts());

    private IEnumerable<string> Parts()
    {
        yield return $"{UnitText.Count(Points, "point is", "points are")} not held";
        if (RatioAbove is { } above)
        {
            yield return FormattableString.Invariant($"a ratio above {above:G4} is missing, such as {Ratio}");
        }

        if (OhmsNeeded is { } ohms)
        {
            yield return $"from {EngineeringNumber.Of(HardestPoint!.InputVolts, "V")} to {EngineeringNumber.Of(HardestPoint.OutputVolts, "V")} at {EngineeringNumber.Of(HardestPoint.LoadAmperes, "A")} the ratio above needs an output impedance of at most {EngineeringNumber.Of(ohms, "Ω")}";
        }
    }

    // the fraction of the smallest denominator above a number and at most a tenth higher
    private static Fraction Simplest(double low)
    {
        long denominator = 1, numerator = (long)Math.Floor(low) + 1;
        while (numerator > 1.1 * low * denominator)
        {
            denominator++;
            numerator = (long)Math.Floor(low * denominator) + 1;
        }

        return new Fraction(numerator, denominator);
    }
}
