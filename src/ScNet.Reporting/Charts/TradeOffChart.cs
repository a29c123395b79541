using ScNet.Design.Sizing;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Charts;

/// <summary>Efficiency against power density, for one converter or several: what an area is worth.</summary>
public static class TradeOffChart
{
    private const double HeightPixels = 240;

    // dashes and points beside colours, so that lines are told apart in grey
    private static readonly (int Colour, string? Dash, PointShape Shape)[] s_looks =
    [
        (0, null, PointShape.Circle), (6, "8 3", PointShape.Square), (2, "3 3", PointShape.Triangle),
        (3, "8 3 2 3", PointShape.Diamond), (4, "2 2", PointShape.Circle), (5, "12 4", PointShape.Square),
    ];

    /// <summary>Draws the curve of one converter, its areas at the points.</summary>
    /// <param name="curve">The curve.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">No area reaches all points.</exception>
    public static Picture Of(TradeOffCurve curve, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(curve);
        return Of([(string.Empty, curve)], appearance);
    }

    /// <summary>Draws several curves.</summary>
    /// <param name="curves">Each converter's name and curve, at most six.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">There is no curve or more than six, or none with an area that reaches all points.</exception>
    public static Picture Of(IReadOnlyList<(string Name, TradeOffCurve Curve)> curves, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(curves);
        if (curves.Any(c => c.Name is null || c.Curve is null))
        {
            throw new ArgumentException("Expected a name and a curve in every item, but got null.", nameof(curves));
        }

        if (curves.Count == 0 || curves.Count > s_looks.Length)
        {
            throw new ArgumentException($"Expected one to {s_looks.Length} curves, but got {curves.Count}.", nameof(curves));
        }

        (string Name, TradeOffPoint[] Points)[] lines = [.. curves.Select(c => (c.Name, c.Curve.Points.Where(p => p.Efficiency is not null).ToArray()))];
        TradeOffPoint[] all = [.. lines.SelectMany(l => l.Points)];
        if (all.Length == 0)
        {
            throw new ArgumentException("Expected a curve with at least one area that reaches all points.", nameof(curves));
        }

        Figure figure = new("Efficiency against power density", "each point is the best of one area", Figure.UsualWidthPixels, appearance);
        Ink[] inks = [.. s_looks.Take(lines.Length).Select((look, k) =>
            new Ink($"curve-{k}", figure.Palette.Series[look.Colour]) { WidthPixels = 2.2, Dash = look.Dash, Points = look.Shape })];
        if (lines.Length > 1)
        {
            figure.AddLegend([.. lines.Select((l, k) => (inks[k], l.Name))]);
        }

        // as W/mm²: a power-management chip has some hundredths to some watts on a square millimetre
        double[] density = [.. all.Select(p => 1e-6 * p.WattsPerSquareMetre!.Value)], percent = [.. all.Select(p => 100 * p.Efficiency!.Value)];
        ChartAxis across = ChartAxis.Logarithmic("Power density", density.Min() / 1.4, density.Max() * 1.4, "W/mm²");
        ChartAxis up = ChartAxis.Linear("Efficiency", percent.Min(), percent.Max(), "%");
        PanelStack stack = new(figure, across, [(up, HeightPixels)]);
        Panel panel = stack.Panels[0];
        foreach ((Ink ink, TradeOffPoint[] points) in inks.Zip(lines.Select(l => l.Points)))
        {
            double[] xs = [.. points.Select(p => 1e-6 * p.WattsPerSquareMetre!.Value)];
            double?[] ys = [.. points.Select(p => 100 * p.Efficiency)];
            panel.Line(ink, xs, ys);
            panel.Points(ink with { Name = ink.Name + "-point", Dash = null }, xs, ys);
        }

        if (lines.Length == 1)
        {
            AddAreas(figure, panel, lines[0].Points);
        }

        return figure.ToPicture(Description(lines), stack.Bottom);
    }

    private static void AddAreas(Figure figure, Panel panel, TradeOffPoint[] points)
    {
        List<Box> taken = [];
        foreach (TradeOffPoint point in points)
        {
            (double x, double y) = (panel.PixelX(1e-6 * point.WattsPerSquareMetre!.Value), panel.PixelY(100 * point.Efficiency!.Value));

            // efficiency falls with density, so that the upper right of a point and its lower left are free
            TextSpot[] places =
            [
                new("area", x + 7, y - 7, AreaText(point)),
                new("area", x - 7, y + 16, AreaText(point), TextAnchor.End),
            ];
            foreach (TextSpot spot in places.Where(p => p.Box.Left > panel.Area.Left && p.Box.Right < figure.WidthPixels - 2 && p.Box.Top > panel.Area.Top - 6 && p.Box.Bottom < panel.Area.Bottom))
            {
                if (!taken.Any(spot.Box.Overlaps))
                {
                    figure.Add(spot);
                    taken.Add(spot.Box);
                    break;
                }
            }
        }
    }

    private static string AreaText(TradeOffPoint point) => point.Area.TotalSquareMetres is { } total
        ? FormattableString.Invariant($"{total * 1e6:0.####} mm²")
        : FormattableString.Invariant($"{(point.Area.CapacitorSquareMetres + point.Area.SwitchSquareMetres) * 1e6:0.####} mm²");

    private static string Description((string Name, TradeOffPoint[] Points)[] lines) => "Efficiency against power density. "
        + string.Join(". ", lines.Select(l => $"{(l.Name.Length > 0 ? $"{l.Name}: " : string.Empty)}{string.Join("; ", l.Points.Select(p => p.ToString()))}")) + ".";
}
