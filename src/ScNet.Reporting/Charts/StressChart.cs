using ScNet.Devices;
using ScNet.Reporting.Charts.Plotting;

namespace ScNet.Reporting.Charts;

/// <summary>
/// The largest voltage across every switch and capacitor in every mode, and at the changes of mode, against what one device and
/// stacks of it withstand.
/// </summary>
public static class StressChart
{
    // in units of one bar: the gap between elements, and how thick a bar is
    private const double Gap = 0.9, Thickness = 0.8;

    // of more modes the largest voltage has one bar: there would be no telling them apart
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
        Element[] elements =
        [
            .. ratings.Switches.Select(s => new Element(VoltsOf(s.Modes), s.AtChanges, s.Overall)),
            .. ratings.Capacitors.Select(c => new Element(VoltsOf(c.Modes), null, c.Overall)),
        ];
        string[] modes = ratings.Stress.Modes.Count switch
        {
            > MostModes => [$"largest of {ratings.Stress.Modes.Count} modes"],
            1 when ratings.Stress.Modes[0].Mode.Name == Mode.DefaultName => ["voltage"],
            _ => [.. ratings.Stress.Modes.Select(m => $"mode {m.Mode}")],
        };
        Converter converter = ratings.Stress.Analysis.Converter;
        Figure figure = new($"Stress of {converter.Name}", $"largest voltages at {EngineeringNumber.Of(ratings.Stress.Modes.Max(m => m.InputVolts.Maximum), "V")} of input", Figure.UsualWidthPixels, appearance);
        Ink[] bars = Bars(figure.Palette, modes.Length);
        Ink atChanges = new("at-changes", figure.Palette.Ink), rating = new("rating", figure.Palette.Mark) { WidthPixels = 3 };
        Ink stack = new("stack-rating", figure.Palette.Mark) { WidthPixels = 1.6, Dash = "3 2" };
        bool hasChanges = elements.Any(e => e.AtChanges is not null), hasStacks = elements.Any(e => e.Overall.StackCount > 1);
        figure.AddLegend(
            [
                .. bars.Zip(modes),
                .. hasChanges ? [(atChanges, "at changes of mode")] : Array.Empty<(Ink, string)>(),
            ],
            areFilled: true);
        figure.AddLegend([(rating, "one device withstands"), .. hasStacks ? [(stack, "2, 3, … in series")] : Array.Empty<(Ink, string)>()]);

        int rows = modes.Length + (hasChanges ? 1 : 0);
        double row = Math.Max(LeastRowPixels, (rows + Gap) * BarPixels);
        double most = elements.Max(e => Math.Max(e.Overall.Volts ?? 0, e.Overall.RatedVolts * Math.Min(e.Overall.StackCount, MostMarks)));
        ChartAxis volts = ChartAxis.Linear("Magnitude of the voltage", 0, most, "V");

        // elements from the top downwards, one unit each
        ChartAxis names = ChartAxis.Of(0, elements.Length, [.. elements.Select((e, i) => new AxisTick(elements.Length - i - 0.5, FittingText.Of(e.Overall.Element, figure.WidthPixels / 4)))]);
        double right = figure.WidthPixels - (2 * Figure.MarginPixels) - elements.Max(e => PictureFont.WidthPixels(e.Verdict, TextSpot.SmallPixels, isBold: true)) - 8;
        Box area = new(Figure.MarginPixels + PanelTexts.WidthOf(names), figure.HeadPixels + 14, right, figure.HeadPixels + 14 + (row * elements.Length));
        Panel panel = figure.AddPanel(area, volts, names, grid: (true, false), ticks: (true, false));
        figure.Add(new TextSpot("verdict-title", figure.WidthPixels - Figure.MarginPixels, area.Top - 4, "needed", TextAnchor.End) { SizePixels = TextSpot.SmallPixels, Colour = figure.Palette.Faint });
        double height = (1 - (Gap * BarPixels / row)) / rows;
        foreach ((Element element, int i) in elements.Select((e, i) => (e, i)))
        {
            double top = elements.Length - i - (Gap * BarPixels / row / 2);
            for (int k = 0; k < element.Modes.Count; k++)
            {
                Bar(bars[k], element.Modes[k], top - (k * height));
            }

            Bar(atChanges, element.AtChanges?.Volts, top - (element.Modes.Count * height));
            double bottom = top - (rows * height);
            for (int n = 1; n <= Math.Min(element.Overall.StackCount, MostMarks) && n * element.Overall.RatedVolts <= volts.Maximum; n++)
            {
                panel.Line(n == 1 ? rating : stack, [n * element.Overall.RatedVolts, n * element.Overall.RatedVolts], [bottom, top]);
            }

            figure.Add(new TextSpot("verdict", figure.WidthPixels - Figure.MarginPixels, panel.PixelY((top + bottom) / 2) + 4, element.Verdict, TextAnchor.End)
            {
                SizePixels = TextSpot.SmallPixels,
                IsBold = element.Overall.Outcome == RatingOutcome.NotAllowed,
            });
        }

        return figure.ToPicture(Description(converter, ratings), area.Bottom + PanelTexts.HeightOf(volts) + 4);

        void Bar(Ink ink, double? value, double top)
        {
            if (value > 0)
            {
                panel.Rectangle(ink, 0, value.Value, top - (height * Thickness), top);
            }
        }
    }

    private static double?[] VoltsOf(IReadOnlyList<RatingVerdict> modes) => modes.Count > MostModes ? [modes.Max(m => m.Volts)] : [.. modes.Select(m => m.Volts)];

    // one mode in the first colour, several in fills that differ in grey
    private static Ink[] Bars(Palette palette, int modes) =>
        [.. Enumerable.Range(0, modes).Select(k => new Ink($"mode-{k}", modes == 1 ? palette.Series[0] : Palette.Kinds[k % Palette.Kinds.Count]))];

    private static string Description(Converter converter, ConverterRatings ratings) =>
        $"Largest voltage across each element of {converter.Name} against the rating of its device: "
        + string.Join("; ", ratings.Switches.Select(s => s.Overall).Concat(ratings.Capacitors.Select(c => c.Overall))) + ".";

    private sealed record Element(IReadOnlyList<double?> Modes, RatingVerdict? AtChanges, RatingVerdict Overall)
    {
        /// <summary>What is needed, in a few words.</summary>
        public string Verdict => Overall switch
        {
            { Volts: null } => "undetermined",
            { Outcome: RatingOutcome.NotAllowed } => $"{Overall.StackCount} in series: not allowed",
            { IsLowerBound: true } => $"at least {Overall.StackCount} in series",
            { StackCount: > 1 } => $"{Overall.StackCount} in series",
            _ => "one device",
        };
    }
}
