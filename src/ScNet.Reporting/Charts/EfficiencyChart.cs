using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Charts;

/// <summary>
/// Efficiency over the input voltage, as of a battery that runs down: the best mode at each voltage with the gear in use, every other
/// gear, a linear regulator, and what the ratios would reach without any loss.
/// </summary>
public static class EfficiencyChart
{
    private const int Points = 401;

    private const double HeightPixels = 240, StripPixels = 18, GearNamePixels = 110;

    /// <summary>Draws the efficiency of modes that hold one output at one load.</summary>
    /// <param name="modes">The modes, as for an <see cref="OperatingMap"/>.</param>
    /// <param name="inputVolts">The range of the input voltage in volts (V).</param>
    /// <param name="outputVolts">The output voltage in volts (V).</param>
    /// <param name="loadAmperes">The load current in amperes (A).</param>
    /// <param name="appearance">The ground.</param>
    /// <remarks>Cost: every mode is asked at some 400 voltages.</remarks>
    /// <exception cref="ArgumentException">There is no mode, or a value or the range is not positive.</exception>
    public static Picture Of(
        IReadOnlyList<RegulatedMode> modes, Interval<double> inputVolts, double outputVolts, double loadAmperes, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(modes);
        if (!inputVolts.IsDetermined || !(inputVolts.Minimum > 0) || !(inputVolts.Maximum > inputVolts.Minimum))
        {
            throw new ArgumentException($"Expected a range of positive voltages, but got {inputVolts}.", nameof(inputVolts));
        }

        (double from, double to) = (inputVolts.Minimum.Value, inputVolts.Maximum.Value);
        double[] volts = [.. Enumerable.Range(0, Points).Select(i => from + ((to - from) * i / (Points - 1)))];
        OperatingMap map = OperatingMap.Of(modes, volts, [outputVolts], [loadAmperes]);
        MapPoint[] points = [.. Enumerable.Range(0, Points).Select(i => map.At(i, 0))];
        IReadOnlyList<string> names = ChartNames.Of(modes);

        Figure figure = new(
            "Efficiency over the input voltage",
            $"{EngineeringNumber.Of(outputVolts, "V")} output, {EngineeringNumber.Of(loadAmperes, "A")} load",
            Figure.UsualWidthPixels, appearance);
        Ink best = new("best", figure.Palette.Series[0]) { WidthPixels = 2.8 }, other = new("other-gears", figure.Palette.Faint) { WidthPixels = 1.2 };
        Ink linear = new("linear", figure.Palette.Series[6]) { WidthPixels = 1.8, Dash = "8 3 2 3" }, ideal = new("ideal", figure.Palette.Ink) { WidthPixels = 1.6, Dash = "2 3" };
        figure.AddLegend([(best, "best gear"), (other, "each gear"), (ideal, "lossless ratios"), (linear, "linear regulator")]);

        double[] known = [.. points.SelectMany(p => new[] { p.Efficiency, p.LinearEfficiency }).OfType<double>()];
        ChartAxis efficiency = ChartAxis.Linear("Efficiency", 100 * Math.Min(known.DefaultIfEmpty(0).Min(), 0.9), 100, "%");
        ChartAxis input = ChartAxis.Linear("Input voltage", from, to, "V", 8, isExtended: false);
        string[] ends = [.. names.Select(n => FittingText.Of(n, GearNamePixels))];
        PanelStack stack = new(
            figure, input, [(efficiency, HeightPixels)], headPixels: StripPixels, rightPixels: Figure.MarginPixels + 8 + ends.Max(e => PictureFont.WidthPixels(e, TextSpot.UsualPixels)));
        Panel panel = stack.Panels[0];
        (int Start, int End, int? Mode)[] stretches = [.. Stretches(points)];
        AddGears(figure, panel, volts, stretches, names);

        List<(double Percent, string Text)> rightEnds = [];
        for (int m = 0; m < modes.Count; m++)
        {
            double?[] own = [.. volts.Select(v => modes[m].Hold(v, outputVolts, loadAmperes) is { IsHeld: true } held ? (double?)(100 * held.Efficiency) : null)];
            panel.Line(other, volts, own);
            if (own[^1] is { } last && last >= efficiency.Minimum)
            {
                rightEnds.Add((last, ends[m]));
            }
        }

        LineNames.Add(figure, panel, rightEnds);

        panel.Line(ideal, volts, [.. points.Select(p => 100 * p.IdealEfficiency)]);
        panel.Line(linear, volts, [.. points.Select(p => 100 * p.LinearEfficiency)]);
        panel.Line(best, volts, [.. points.Select(p => 100 * p.Efficiency)]);
        return figure.ToPicture(Description(outputVolts, loadAmperes, points, stretches, names), stack.Bottom);
    }

    // neighbouring points with the same best mode
    private static IEnumerable<(int Start, int End, int? Mode)> Stretches(MapPoint[] points)
    {
        int start = 0;
        for (int i = 1; i <= points.Length; i++)
        {
            if (i == points.Length || points[i].BestModeIndex != points[start].BestModeIndex)
            {
                yield return (start, i - 1, points[start].BestModeIndex);
                start = i;
            }
        }
    }

    // the gear in use above the panel, with a line where it changes
    private static void AddGears(Figure figure, Panel panel, double[] volts, (int Start, int End, int? Mode)[] stretches, IReadOnlyList<string> names)
    {
        Ink border = new("gear-border", figure.Palette.Faint) { Dash = "3 3" };
        foreach ((int start, int end, int? mode) in stretches)
        {
            double left = start == 0 ? volts[0] : (volts[start - 1] + volts[start]) / 2, right = end + 1 == volts.Length ? volts[^1] : (volts[end] + volts[end + 1]) / 2;
            if (start > 0)
            {
                panel.Upright(border, left);
            }

            double width = panel.PixelX(right) - panel.PixelX(left) - 6;
            string name = mode is { } known ? names[known] : "not held";
            if (PictureFont.WidthPixels(name, TextSpot.UsualPixels) <= width)
            {
                figure.Add(new TextSpot("gear", (panel.PixelX(left) + panel.PixelX(right)) / 2, panel.Area.Top - 6, name, TextAnchor.Middle) { IsBold = mode is not null });
            }
        }
    }

    private static string Description(double outputVolts, double loadAmperes, MapPoint[] points, (int Start, int End, int? Mode)[] stretches, IReadOnlyList<string> names)
    {
        string gears = string.Join("; ", stretches.Select(s =>
            $"{EngineeringNumber.Of(points[s.Start].InputVolts, "V")} to {EngineeringNumber.Of(points[s.End].InputVolts, "V")}: "
            + (s.Mode is { } mode ? $"{names[mode]}, {Percent(points[s.Start])} to {Percent(points[s.End])}" : "not held")));
        return $"Efficiency over the input voltage at {EngineeringNumber.Of(outputVolts, "V")} and {EngineeringNumber.Of(loadAmperes, "A")}, with a linear regulator and the ratios without loss beside it. {gears}.";
    }

    private static string Percent(MapPoint point) => FormattableString.Invariant($"{100 * point.Efficiency:F1} %");
}
