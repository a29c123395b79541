namespace ScNet.Reporting.Charts.Plotting;

/// <summary>The texts at the axes of a panel: ticks with their units, titles of the axes.</summary>
internal static class PanelTexts
{
    // from an axis to its texts
    private const double Gap = 8, TickBaseline = 18, TitleBaseline = 35, AboveGap = 12;

    /// <summary>How wide the texts of an upright axis are, with their distance to it.</summary>
    public static double WidthOf(ChartAxis axis) => Gap + axis.Ticks.Select(t => PictureFont.WidthPixels(t.Label, TextSpot.UsualPixels)).DefaultIfEmpty(0).Max();

    /// <summary>How far the texts of a level axis reach below it.</summary>
    public static double HeightOf(ChartAxis axis) => axis.Title.Length > 0 ? TitleBaseline + 5 : axis.Ticks.Any(t => t.Label.Length > 0) ? TickBaseline + 5 : 0;

    public static void Add(Figure figure, Panel panel, double abovePixels)
    {
        double right = double.NegativeInfinity;
        foreach (AxisTick tick in panel.X.Ticks.Where(t => t.Label.Length > 0))
        {
            TextSpot spot = new("tick-x", panel.PixelX(tick.Value), panel.Area.Bottom + TickBaseline, tick.Label, TextAnchor.Middle);
            if (spot.Box.Left > right && spot.Box.Right <= figure.WidthPixels)
            {
                figure.Add(spot);
                right = spot.Box.Right + 4;
            }
        }

        foreach (AxisTick tick in panel.Y.Ticks.Where(t => t.Label.Length > 0))
        {
            figure.Add(new TextSpot("tick-y", panel.Area.Left - Gap, panel.PixelY(tick.Value) + 4, tick.Label, TextAnchor.End));
        }

        if (panel.X.Title.Length > 0)
        {
            figure.Add(new TextSpot("axis-x", panel.Area.Left + (panel.Area.Width / 2), panel.Area.Bottom + TitleBaseline, panel.X.Title, TextAnchor.Middle));
        }

        if (panel.Y.Title.Length > 0)
        {
            figure.Add(new TextSpot("axis-y", Figure.MarginPixels, panel.Area.Top - AboveGap - abovePixels, panel.Y.Title));
        }
    }
}
