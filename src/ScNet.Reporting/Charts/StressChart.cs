using ScNet.Devices;
using ScNet.Reporting.Charts.Plotting;
using ScNet.Stress;

namespace ScNet.Reporting.Charts;

/// <summary>
/// The largest voltage across every switch and capacitor in every mode, and at the changes of mode, alone or against what one
/// device and stacks of it withstand. Of more than eight modes the largest has a bar, and every mode a cell of a strip below.
/// </summary>
public static class StressChart
{
    // in units of one bar: the gap between elements, and how thick a bar is
    private const double Gap = 0.9, Thickness = 0.8;

    // bars of more modes could not be told apart
    private const int MostModes = 8;

    // of stacks with more devices no mark is drawn
    private const int MostMarks = 10;

    private const double BarPixels = 10, LeastRowPixels = 22;

    /// <summary>Draws the ratings of a converter.</summary>
    /// <param name="ratings">Every element against its device.</param>
    /// <param name="appearance">The ground.</param>
    public static Picture Of(ConverterRatings ratings, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(ratings);
        return Draw(
            ratings.Stress, StressRow.Of(ratings), "needed", appearance,
            $"against the rating of its device: {string.Join("; ", ratings.Switches.Select(s => s.Overall).Concat(ratings.Capacitors.Select(c => c.Overall)))}");
    }

    /// <summary>Draws the stress of a converter whose devices are not known.</summary>
    /// <param name="stress">What every element must withstand.</param>
    /// <param name="appearance">The ground.</param>
    public static Picture Of(ConverterStress stress, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(stress);
        IReadOnlyList<StressRow> rows = StressRow.Of(stress);
        return Draw(stress, rows, "largest", appearance, $"at {InputOf(stress)}: {string.Join("; ", rows.Select(r => $"{r.Name} {r.Note}"))}");
    }

    private static Picture Draw(ConverterStress stress, IReadOnlyList<StressRow> rows, string noteTitle, Appearance appearance, string description)
    {
        Converter converter = stress.Analysis.Converter;
        bool isMany = stress.Modes.Count > MostModes, hasChanges = rows.Any(r => r.AtChanges is not null);
        string[] modes = isMany ? [$"largest of {stress.Modes.Count} modes"]
            : stress.Modes.Count == 1 && stress.Modes[0].Mode.Name == Mode.DefaultName ? ["voltage"]
            : [.. stress.Modes.Select(m => $"mode {m.Mode}")];
        Figure figure = new($"Stress of {converter.Name}", $"largest voltages at {InputOf(stress)}", Figure.UsualWidthPixels, appearance);
        Ink[] bars = [.. Enumerable.Range(0, modes.Length).Select(k => new Ink($"mode-{k}", modes.Length == 1 ? figure.Palette.Series[0] : Palette.Kinds[k % Palette.Kinds.Count]))];
        Ink atChanges = new("at-changes", figure.Palette.Ink);
        Ink rating = new("rating", figure.Palette.Mark) { WidthPixels = 3 }, stack = new("stack-rating", figure.Palette.Mark) { WidthPixels = 1.6, Dash = "3 2" };
        figure.AddLegend([.. bars.Zip(modes), .. hasChanges ? [(atChanges, "at changes of mode")] : Array.Empty<(Ink, string)>()], areFilled: true);
        if (rows.Any(r => r.RatedVolts is not null))
        {
            figure.AddLegend([(rating, "one device withstands"), .. rows.Any(r => r.StackCount > 1) ? [(stack, "2, 3, … in series")] : Array.Empty<(Ink, string)>()]);
        }

        int lines = modes.Length + (hasChanges ? 1 : 0);
        double row = Math.Max(LeastRowPixels, (lines + Gap) * BarPixels), height = (1 - (Gap * BarPixels / row)) / lines;
        ChartAxis volts = ChartAxis.Linear("Magnitude of the voltage", 0, rows.Max(r => Math.Max(r.Largest ?? 0, (r.RatedVolts ?? 0) * Math.Min(r.StackCount, MostMarks))), "V");

        // elements from the top downwards, one unit each
        ChartAxis names = ChartAxis.Of(0, rows.Count, [.. rows.Select((r, i) => new AxisTick(rows.Count - i - 0.5, FittingText.Of(r.Name, figure.WidthPixels / 4)))]);
        double right = figure.WidthPixels - (2 * Figure.MarginPixels) - rows.Max(r => PictureFont.WidthPixels(r.Note, TextSpot.SmallPixels, isBold: true)) - 8;
        Box area = new(Figure.MarginPixels + PanelTexts.WidthOf(names), figure.HeadPixels + 14, right, figure.HeadPixels + 14 + (row * rows.Count));
        Panel panel = figure.AddPanel(area, volts, names, grid: (true, false), ticks: (true, false));
        figure.Add(new TextSpot("verdict-title", figure.WidthPixels - Figure.MarginPixels, area.Top - 4, noteTitle, TextAnchor.End) { SizePixels = TextSpot.SmallPixels, Colour = figure.Palette.Faint });
        foreach ((StressRow element, int i) in rows.Select((r, i) => (r, i)))
        {
            double top = rows.Count - i - (Gap * BarPixels / row / 2), bottom = top - (lines * height);
            IReadOnlyList<double?> values = isMany ? [element.Volts.Max()] : element.Volts;
            for (int k = 0; k < values.Count; k++)
            {
                Bar(bars[k], values[k], top - (k * height));
            }

            Bar(atChanges, element.AtChanges, top - (values.Count * height));
            for (int n = 1; element.RatedVolts is { } rated && n <= Math.Min(element.StackCount, MostMarks) && n * rated <= volts.Maximum; n++)
            {
                panel.Line(n == 1 ? rating : stack, [n * rated, n * rated], [bottom, top]);
            }

            figure.Add(new TextSpot("verdict", figure.WidthPixels - Figure.MarginPixels, panel.PixelY((top + bottom) / 2) + 4, element.Note, TextAnchor.End) { SizePixels = TextSpot.SmallPixels, IsBold = element.IsBold });
        }

        double end = area.Bottom + PanelTexts.HeightOf(volts) + 4;
        return figure.ToPicture(
            $"Largest voltage across each element of {converter.Name} {description}.",
            isMany ? StressStrips.Add(figure, rows, [.. stress.Modes.Select(m => m.Mode.Name)], names, end) : end);

        void Bar(Ink ink, double? value, double top)
        {
            if (value > 0)
            {
                panel.Rectangle(ink, 0, value.Value, top - (height * Thickness), top);
            }
        }
    }

    private static string InputOf(ConverterStress stress) => $"{EngineeringNumber.Of(stress.Modes.Max(m => m.InputVolts.Maximum), "V")} of input";
}
