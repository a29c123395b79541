namespace ScNet.Reporting.Charts.Plotting;

/// <summary>Panels below one another that share the axis across; the lowest has its texts.</summary>
internal sealed class PanelStack
{
    // above a panel: the title of its upright axis
    private const double TitleSpace = 32, EdgePixels = 30;

    public PanelStack(Figure figure, ChartAxis x, IReadOnlyList<(ChartAxis Axis, double HeightPixels)> rows, double? topPixels = null, double headPixels = 0, bool hasGrid = true, double rightPixels = EdgePixels)
    {
        double left = Figure.MarginPixels + rows.Max(r => PanelTexts.WidthOf(r.Axis)), right = figure.WidthPixels - rightPixels, top = topPixels ?? figure.HeadPixels;
        List<Panel> panels = [];
        foreach ((ChartAxis axis, double height) in rows)
        {
            top += (axis.Title.Length > 0 ? TitleSpace : TitleSpace / 2) + headPixels;
            Box area = new(left, top, right, top + height);
            panels.Add(figure.AddPanel(area, panels.Count + 1 == rows.Count ? x : x.WithoutText(), axis, (hasGrid, hasGrid), abovePixels: headPixels));
            top = area.Bottom;
        }

        Panels = [.. panels];
        Bottom = top + PanelTexts.HeightOf(x) + 4;
    }

    public IReadOnlyList<Panel> Panels { get; }

    /// <summary>How far down the panels and the texts below them reach.</summary>
    public double Bottom { get; }
}
