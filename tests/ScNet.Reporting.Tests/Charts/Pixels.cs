namespace ScNet.Reporting.Tests.Charts;

/// <summary>Compares what is drawn with what ought to be, in pixels.</summary>
internal static class Pixels
{
    /// <summary>Fails unless every corner of the lines lies within a pixel of a curve.</summary>
    /// <param name="panel">Where they are drawn.</param>
    /// <param name="lines">Corners in pixels.</param>
    /// <param name="curve">The value at a value across.</param>
    public static void AgreeWith(DrawnPanel panel, IReadOnlyList<IReadOnlyList<(double X, double Y)>> lines, Func<double, double> curve)
    {
        (DrawnScale across, DrawnScale up) = (panel.XScale, panel.YScale);
        Assert.True(lines.Sum(l => l.Count) > 1, "nothing is drawn");
        foreach ((double x, double y) in lines.SelectMany(l => l))
        {
            double expected = up.PixelOf(curve(across.ValueAt(x)));
            Assert.True(Math.Abs(expected - y) <= 1, FormattableString.Invariant($"at {across.ValueAt(x):G6} expected {expected:F2} px, but got {y:F2} px"));
        }
    }

    /// <summary>Fails unless two places are within a pixel.</summary>
    public static void Equal(double expected, double actual) =>
        Assert.True(Math.Abs(expected - actual) <= 1, FormattableString.Invariant($"expected {expected:F2} px, but got {actual:F2} px"));
}
