using ScottPlot;
using ScottPlot.Plottables;
using ScottPlot.TickGenerators;
using SkiaSharp;

namespace ScNet.Reporting.Charts.Plotting;

/// <summary>A rectangle between two axes in which values are drawn; positions are given in values.</summary>
/// <remarks>
/// Everything but text is drawn by the plotting library. It knows colours but no names, so each ink is drawn in a colour that
/// stands for it (<see cref="InkKeys"/>) until the drawing is written out.
/// </remarks>
internal sealed class Panel : IDisposable
{
    private const float PointPixels = 6, TickPixels = 5, ShortTickPixels = 3;

    // a twentieth of the thinnest line
    private const double UnseenPixels = 0.05;

    private readonly InkKeys _keys;
    private readonly Plot _plot = new();

    public Panel(Box area, ChartAxis x, ChartAxis y, InkKeys keys)
    {
        (Area, X, Y, _keys) = (area, x, y, keys);
    }

    public void Dispose() => _plot.Dispose();

    /// <summary>Where values are drawn.</summary>
    public Box Area { get; }

    public ChartAxis X { get; }

    public ChartAxis Y { get; }

    /// <summary>Whether lines cross the panel at the ticks of each axis.</summary>
    public (bool X, bool Y) HasGrid { get; init; } = (true, true);

    /// <summary>Whether the axes have ticks.</summary>
    public (bool X, bool Y) HasTicks { get; init; } = (true, true);

    /// <summary>The place of a value across, in pixels.</summary>
    public double PixelX(double value) => Area.Left + (Area.Width * X.ShareOf(value));

    /// <summary>The place of a value upwards, in pixels from the top.</summary>
    public double PixelY(double value) => Area.Bottom - (Area.Height * Y.ShareOf(value));

    /// <summary>A line through values; it stops where one is missing and where it leaves the panel. Corners that would not be seen are left out.</summary>
    public void Line(Ink ink, IReadOnlyList<double> xs, IReadOnlyList<double?> ys)
    {
        double across = Area.Width / (X.Coordinate(X.Maximum) - X.Coordinate(X.Minimum)), up = Area.Height / (Y.Coordinate(Y.Maximum) - Y.Coordinate(Y.Minimum));
        IEnumerable<(double, double?)> line = xs.Select((x, i) => (X.Coordinate(x), ys[i] is { } y ? (double?)Y.Coordinate(y) : null));
        foreach (IReadOnlyList<(double X, double Y)> piece in LineClip.Between(line, Y.Coordinate(Y.Minimum), Y.Coordinate(Y.Maximum)))
        {
            IReadOnlyList<int> corners = LineThinning.Of([.. piece.Select(p => (p.X * across, p.Y * up))], UnseenPixels);
            Scatter scatter = _plot.Add.Scatter((Coordinates[])[.. corners.Select(c => new Coordinates(piece[c].X, piece[c].Y))]);
            scatter.LineWidth = (float)ink.WidthPixels;
            scatter.Color = _keys.Of(ink);
            scatter.MarkerSize = 0;
        }
    }

    /// <summary>The points of an ink at values within the panel.</summary>
    public void Points(Ink ink, IReadOnlyList<double> xs, IReadOnlyList<double?> ys)
    {
        for (int i = 0; i < xs.Count; i++)
        {
            if (ys[i] is { } y && y >= Y.Minimum && y <= Y.Maximum)
            {
                Marker marker = _plot.Add.Marker(X.Coordinate(xs[i]), Y.Coordinate(y));
                marker.MarkerStyle = new MarkerStyle(ShapeOf(ink.Points ?? PointShape.Circle), PointPixels, _keys.Of(ink));
            }
        }
    }

    /// <summary>A line upwards through the whole panel.</summary>
    public void Upright(Ink ink, double x) => Line(ink, [x, x], [Y.Minimum, Y.Maximum]);

    /// <summary>A filled area between two lines.</summary>
    public void Band(Ink ink, IReadOnlyList<double> xs, IReadOnlyList<double> low, IReadOnlyList<double> high)
    {
        double Height(double y) => Y.Coordinate(Math.Clamp(y, Y.Minimum, Y.Maximum));
        Polygon polygon = _plot.Add.Polygon((Coordinates[])[
            .. xs.Select((x, i) => new Coordinates(X.Coordinate(x), Height(high[i]))),
            .. xs.Select((x, i) => new Coordinates(X.Coordinate(x), Height(low[i]))).Reverse()]);
        polygon.FillColor = _keys.Of(ink);
        polygon.LineWidth = 0;
    }

    /// <summary>A filled rectangle between values.</summary>
    public void Rectangle(Ink ink, double left, double right, double bottom, double top)
    {
        Rectangle rectangle = _plot.Add.Rectangle(X.Coordinate(left), X.Coordinate(right), Y.Coordinate(bottom), Y.Coordinate(top));
        rectangle.FillColor = _keys.Of(ink);
        rectangle.LineWidth = 0;
    }

    /// <summary>Draws everything on a canvas of the size of the figure.</summary>
    public void Draw(SKCanvas canvas, int widthPixels, int heightPixels, Ink grid, Ink frame)
    {
        _plot.FigureBackground.Color = Colors.Transparent;
        _plot.DataBackground.Color = Colors.Transparent;
        _plot.Axes.SetLimits(X.Coordinate(X.Minimum), X.Coordinate(X.Maximum), Y.Coordinate(Y.Minimum), Y.Coordinate(Y.Maximum));
        _plot.Layout.Fixed(new PixelPadding((float)Area.Left, (float)(widthPixels - Area.Right), (float)(heightPixels - Area.Bottom), (float)Area.Top));
        _plot.Axes.Bottom.TickGenerator = Ticks(X);
        _plot.Axes.Left.TickGenerator = Ticks(Y);
        Style(_plot.Axes.Bottom, HasTicks.X, frame);
        Style(_plot.Axes.Left, HasTicks.Y, frame);
        _plot.Axes.Top.FrameLineStyle.Width = 0;
        _plot.Axes.Right.FrameLineStyle.Width = 0;
        _plot.Axes.Top.TickGenerator = new NumericManual();
        _plot.Axes.Right.TickGenerator = new NumericManual();
        _plot.Grid.MajorLineColor = _keys.Of(grid);
        _plot.Grid.MajorLineWidth = (float)grid.WidthPixels;
        _plot.Grid.XAxisStyle.IsVisible = HasGrid.X;
        _plot.Grid.YAxisStyle.IsVisible = HasGrid.Y;

        // the library draws twice where it has not drawn before
        _plot.RenderInMemory(widthPixels, heightPixels);
        _plot.Render(canvas, new PixelRect(0, widthPixels, heightPixels, 0));
    }

    private static NumericManual Ticks(ChartAxis axis)
    {
        NumericManual ticks = new();
        foreach (AxisTick tick in axis.Ticks)
        {
            // texts are written by the figure, whose font is the same everywhere
            ticks.AddMajor(axis.Coordinate(tick.Value), string.Empty);
        }

        foreach (double value in axis.TicksBetween)
        {
            ticks.AddMinor(axis.Coordinate(value));
        }

        return ticks;
    }

    private static MarkerShape ShapeOf(PointShape shape) => shape switch
    {
        PointShape.Square => MarkerShape.FilledSquare,
        PointShape.Triangle => MarkerShape.FilledTriangleUp,
        PointShape.Diamond => MarkerShape.FilledDiamond,
        _ => MarkerShape.FilledCircle,
    };

    private void Style(IAxis axis, bool hasTicks, Ink frame)
    {
        axis.FrameLineStyle.Color = _keys.Of(frame);
        axis.FrameLineStyle.Width = (float)frame.WidthPixels;
        axis.MajorTickStyle.Color = axis.MinorTickStyle.Color = _keys.Of(frame);
        axis.MajorTickStyle.Width = axis.MinorTickStyle.Width = hasTicks ? (float)frame.WidthPixels : 0;
        axis.MajorTickStyle.Length = hasTicks ? TickPixels : 0;
        axis.MinorTickStyle.Length = hasTicks ? ShortTickPixels : 0;
    }
}
