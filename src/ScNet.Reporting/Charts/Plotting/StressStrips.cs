namespace ScNet.Reporting.Charts.Plotting;

/// <summary>A strip per element with a cell per mode, the darker the higher the voltage: for more modes than there can be bars.</summary>
internal static class StressStrips
{
    private const double RowPixels = 17, GapShare = 0.15, TitlePixels = 16, LegendPixels = 10;

    private const int Steps = 6;

    /// <summary>Adds the strips below a place, with a title and a legend of their own; gives how far down they reach.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="rows">The elements, from the top.</param>
    /// <param name="modes">The names of the modes.</param>
    /// <param name="names">The axis with the names of the elements.</param>
    /// <param name="topPixels">Where there is room.</param>
    public static double Add(Figure figure, IReadOnlyList<StressRow> rows, IReadOnlyList<string> modes, ChartAxis names, double topPixels)
    {
        (_, _, IReadOnlyList<AxisTick> ticks) = LinearTicks.Of(0, rows.SelectMany(r => r.Volts).Max() is > 0 and { } most ? most : 1, "V", Steps, isExtended: true);
        int count = ticks.Count - 1;
        Ink[] bands = [.. Enumerable.Range(0, count).Select(k => new Ink($"volts-{k}", Palette.Ramp[count == 1 ? 0 : k * (Palette.Ramp.Count - 1) / (count - 1)]) { IsSeamless = true })];
        Ink none = new("undetermined", figure.Palette.Ground) { IsSeamless = true };
        bool hasNone = rows.Any(r => r.Volts.Any(v => v is null));
        figure.Add(new TextSpot("axis-y", Figure.MarginPixels, topPixels + TitlePixels, "In each mode") { IsBold = true });
        double top = figure.AddLegend(
            [.. bands.Select((ink, k) => (ink, $"to {ticks[k + 1].Label}")), .. hasNone ? [(none, "undetermined")] : Array.Empty<(Ink, string)>()], topPixels + TitlePixels, areFilled: true) + LegendPixels;
        ChartAxis across = ChartAxis.Of(0, modes.Count, [.. modes.Select((m, k) => new AxisTick(k + 0.5, m))]);
        Box area = new(Figure.MarginPixels + PanelTexts.WidthOf(names), top, figure.WidthPixels - (2 * Figure.MarginPixels), top + (RowPixels * rows.Count));
        Panel panel = figure.AddPanel(area, across, names, grid: (false, false), ticks: (true, false));
        for (int i = 0; i < rows.Count; i++)
        {
            double low = rows.Count - i - 1 + GapShare, high = rows.Count - i - GapShare;
            for (int k = 0, start = 0; k < modes.Count; k++)
            {
                // neighbours in a row that look the same are one rectangle
                if (k + 1 == modes.Count || InkOf(rows[i].Volts[k + 1]) != InkOf(rows[i].Volts[start]))
                {
                    panel.Rectangle(InkOf(rows[i].Volts[start]), start, k + 1, low, high);
                    start = k + 1;
                }
            }
        }

        return area.Bottom + PanelTexts.HeightOf(across) + 4;

        // a voltage on an edge belongs to the band below, of which it is the largest
        Ink InkOf(double? volts) => volts is { } v ? bands[Math.Clamp(ticks.Count(t => t.Value * (1 + 1e-9) < v) - 1, 0, count - 1)] : none;
    }
}
