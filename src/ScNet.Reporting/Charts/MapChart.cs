using ScNet.Design.Maps;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Charts;

/// <summary>A map of operating points as a heat picture: the efficiency of the best mode at each point in steps, with borders between the modes.</summary>
public static class MapChart
{
    private const double HeightPixels = 260;

    private const int MostBands = 10;

    /// <summary>Draws input voltage against load current, at one output voltage of the map.</summary>
    /// <param name="map">The map, with at least two input voltages and two load currents.</param>
    /// <param name="output">The position of the output voltage in <see cref="OperatingMap.OutputVolts"/>.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">The map has too few points, or the values do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such output voltage.</exception>
    public static Picture OfLoads(OperatingMap map, int output = 0, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)output, (uint)map.OutputVolts.Count, nameof(output));
        return Draw(map, map.LoadAmperes, "Load current", "A", (x, y) => map.At(x, output, y), $"{EngineeringNumber.Of(map.OutputVolts[output], "V")} output", appearance);
    }

    /// <summary>Draws input voltage against output voltage, at one load current of the map.</summary>
    /// <param name="map">The map, with at least two input voltages and two output voltages.</param>
    /// <param name="load">The position of the load current in <see cref="OperatingMap.LoadAmperes"/>.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">The map has too few points, or the values do not rise.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such load current.</exception>
    public static Picture OfOutputs(OperatingMap map, int load = 0, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)load, (uint)map.LoadAmperes.Count, nameof(load));
        return Draw(map, map.OutputVolts, "Output voltage", "V", (x, y) => map.At(x, y, load), $"{EngineeringNumber.Of(map.LoadAmperes[load], "A")} load", appearance);
    }

    private static Picture Draw(OperatingMap map, IReadOnlyList<double> upwards, string title, string unit, Func<int, int, MapPoint> at, string note, Appearance appearance)
    {
        CellEdges x = CellEdges.Of(map.InputVolts, nameof(map)), y = CellEdges.Of(upwards, nameof(map));
        MapPoint[,] points = new MapPoint[map.InputVolts.Count, upwards.Count];
        for (int i = 0; i < map.InputVolts.Count; i++)
        {
            for (int j = 0; j < upwards.Count; j++)
            {
                points[i, j] = at(i, j);
            }
        }

        EfficiencyBands bands = EfficiencyBands.Of(points.Cast<MapPoint>().Select(p => p.Efficiency), MostBands);
        Figure figure = new("Efficiency of the best mode", note, Figure.UsualWidthPixels, appearance);
        bool hasGaps = points.Cast<MapPoint>().Any(p => !p.IsHeld);
        Ink none = new("not-held", figure.Palette.Ground) { IsSeamless = true };
        figure.AddLegend([.. bands.Inks.Select((ink, k) => (ink, bands.TextOf(k))), .. hasGaps ? [(none, "not held")] : Array.Empty<(Ink, string)>()], areFilled: true);
        ChartAxis across = x.Axis("Input voltage", "V"), up = y.Axis(title, unit);
        PanelStack stack = new(figure, across, [(up, HeightPixels)], hasGrid: false);
        Panel panel = stack.Panels[0];
        AddCells(panel, points, x, y, p => p.Efficiency is { } e ? bands.InkOf(e) : none);
        AddBorders(panel, points, x, y, new Ink("gear-border", figure.Palette.Ink) { WidthPixels = 2 }, new Ink("gear-halo", figure.Palette.Ground) { WidthPixels = 4 });
        IReadOnlyList<string> names = ChartNames.Of(map.Modes);
        RegionNames.Add(figure, panel, points, x, y, p => p.BestModeIndex is { } mode ? names[mode] : "not held");
        return figure.ToPicture(Description(map, points, note, names), stack.Bottom);
    }

    // neighbours in a row that look the same are one rectangle
    private static void AddCells(Panel panel, MapPoint[,] points, CellEdges x, CellEdges y, Func<MapPoint, Ink> ink)
    {
        for (int j = 0; j < points.GetLength(1); j++)
        {
            for (int i = 0, start = 0; i < points.GetLength(0); i++)
            {
                if (i + 1 == points.GetLength(0) || ink(points[i + 1, j]) != ink(points[start, j]))
                {
                    panel.Rectangle(ink(points[start, j]), x.Edges[start], x.Edges[i + 1], y.Edges[j], y.Edges[j + 1]);
                    start = i + 1;
                }
            }
        }
    }

    private static void AddBorders(Panel panel, MapPoint[,] points, CellEdges x, CellEdges y, params Ink[] inks)
    {
        foreach (Ink ink in inks.Reverse())
        {
            for (int i = 0; i < points.GetLength(0); i++)
            {
                for (int j = 0; j < points.GetLength(1); j++)
                {
                    if (i > 0 && points[i, j].BestModeIndex != points[i - 1, j].BestModeIndex)
                    {
                        panel.Line(ink, [x.Edges[i], x.Edges[i]], [y.Edges[j], y.Edges[j + 1]]);
                    }

                    if (j > 0 && points[i, j].BestModeIndex != points[i, j - 1].BestModeIndex)
                    {
                        panel.Line(ink, [x.Edges[i], x.Edges[i + 1]], [y.Edges[j], y.Edges[j]]);
                    }
                }
            }
        }
    }

    private static string Description(OperatingMap map, MapPoint[,] points, string note, IReadOnlyList<string> names)
    {
        MapPoint[] all = [.. points.Cast<MapPoint>()];
        MapPoint[] held = [.. all.Where(p => p.IsHeld)];
        string best = held.Length == 0 ? string.Empty
            : FormattableString.Invariant($" Efficiency from {100 * held.Min(p => p.Efficiency):F1} % to {100 * held.Max(p => p.Efficiency):F1} %.");
        string shares = string.Join(", ", map.Modes.Select((_, m) => (Name: names[m], Count: held.Count(p => p.BestModeIndex == m))).Where(s => s.Count > 0)
            .Select(s => FormattableString.Invariant($"{s.Name} is best at {s.Count}")));
        return FormattableString.Invariant($"Map of {all.Length} operating points at {note}, of which {held.Length} are held: {shares}.{best}");
    }
}
