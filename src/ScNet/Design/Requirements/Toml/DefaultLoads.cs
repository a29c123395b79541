namespace ScNet.Design.Requirements.Toml;

/// <summary>What the load draws where a document tells its range alone: both ends and their geometric mean, for a third of the time each.</summary>
internal static class DefaultLoads
{
    public static IReadOnlyList<LoadShare> Of(Interval<double> rangeAmperes)
    {
        (double least, double most) = (rangeAmperes.Minimum!.Value, rangeAmperes.Maximum!.Value);
        return rangeAmperes.IsPoint
            ? [new LoadShare("load", least, 1)]
            : [new LoadShare("least", least, 1.0 / 3), new LoadShare("middle", Math.Clamp(Math.Sqrt(least * most), least, most), 1.0 / 3), new LoadShare("most", most, 1.0 / 3)];
    }
}
