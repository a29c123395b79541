namespace ScNet.Reporting.Charts.Plotting;

/// <summary>The shape of a point in a legend, as a path of SVG, of the size that it has in a panel.</summary>
internal static class PointPath
{
    public static string Of(PointShape shape, double x, double y)
    {
        string At(double across, double down) => $"{Figure.Text(x + across)} {Figure.Text(y + down)}";
        return shape switch
        {
            PointShape.Square => $"M{At(-3, -3)}h6v6h-6z",
            PointShape.Triangle => $"M{At(0, -3)}L{At(3, 3)}L{At(-3, 3)}z",
            PointShape.Diamond => $"M{At(0, -3)}L{At(3, 0)}L{At(0, 3)}L{At(-3, 0)}z",
            _ => $"M{At(-3, 0)}a3 3 0 1 0 6 0a3 3 0 1 0 -6 0z",
        };
    }
}
