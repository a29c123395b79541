namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Names of lines at their right ends, moved apart where they would touch.</summary>
internal static class LineNames
{
    private const double Apart = 14, Gap = 6;

    public static void Add(Figure figure, Panel panel, IReadOnlyList<(double Value, string Text)> ends)
    {
        double lowest = double.NegativeInfinity;
        List<TextSpot> spots = [];
        foreach ((double value, string text) in ends.OrderByDescending(e => e.Value))
        {
            double y = Math.Max(panel.PixelY(value) + 4, lowest + Apart);
            spots.Add(new TextSpot("line-name", panel.Area.Right + Gap, y, text));
            lowest = y;
        }

        // what would hang below the panel moves all up
        double over = Math.Max(0, lowest - panel.Area.Bottom);
        foreach (TextSpot spot in spots)
        {
            figure.Add(spot with { Y = spot.Y - over });
        }
    }
}
