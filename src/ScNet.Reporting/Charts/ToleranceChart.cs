using ScNet.Analysis;
using ScNet.Reporting.Charts.Plotting;
using ScNet.SteadyState;

namespace ScNet.Reporting.Charts;

/// <summary>How tolerances spread the output impedance over the switching frequency: samples, the worst case found, and the range that no values leave.</summary>
public static class ToleranceChart
{
    private const int Points = 33, Decades = 1;

    // the share of samples below and above the band of samples
    private const double Tail = 0.05;

    private const double HeightPixels = 250;

    /// <summary>Draws the bands of a mode.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="tolerances">The tolerances.</param>
    /// <param name="frequencyHz">The range of the switching frequency in hertz (Hz); null for a decade on either side of the corner frequency, rounded to decades.</param>
    /// <param name="sampleCount">How many samples at each of some 30 frequencies, at least 20.</param>
    /// <param name="seed">Starts the random draws.</param>
    /// <param name="appearance">The ground.</param>
    /// <remarks>Cost: a worst case and the samples at every frequency; the impedance relative to the nominal one is drawn.</remarks>
    /// <exception cref="ArgumentException">No range is given and the limits have no corner, or the range is no range of positive frequencies.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too few samples.</exception>
    public static Picture Of(
        ModeAnalysis analysis, ComponentTolerances tolerances, Interval<double>? frequencyHz = null, int sampleCount = 200, int seed = 1, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(tolerances);
        ArgumentOutOfRangeException.ThrowIfLessThan(sampleCount, 20);
        (double from, double to) = ChartFrequencies.Range(OutputImpedance.Of(analysis), frequencyHz, Decades);
        IReadOnlyList<double> hertz = FrequencyRange.Logarithmic(from, to, Points);
        ImpedanceWorstCase[] worst = [.. hertz.Select(f => ImpedanceTolerance.WorstCase(analysis, f, tolerances))];
        ImpedanceDistribution[] samples = [.. hertz.Select(f => ImpedanceTolerance.MonteCarlo(analysis, f, tolerances, sampleCount, seed))];
        double Share(double ohms, int i) => 100 * ((ohms / samples[i].NominalOhms) - 1);
        double[] Line(Func<int, double> ohms) => [.. Enumerable.Range(0, Points).Select(i => Share(ohms(i), i))];

        Figure figure = new($"Spread of the output impedance of {ChartNames.Of(analysis.Converter, analysis.Mode)}", Conditions(tolerances, sampleCount), Figure.UsualWidthPixels, appearance);
        Ink nominal = new("nominal", figure.Palette.Ink) { WidthPixels = 1.6 };
        Ink inner = new("samples", figure.Palette.Series[0]) { Opacity = 0.55 }, found = new("found", figure.Palette.Series[6]) { WidthPixels = 2, Dash = "8 3" };
        Ink bound = new("bound", figure.Palette.Ink) { WidthPixels = 1.6, Dash = "2 3" };
        bool isBounded = worst.All(w => w.BoundOhms.IsDetermined);
        figure.AddLegend([(nominal, "nominal"), (found, "worst case found"), .. isBounded ? [(bound, "certain bound")] : Array.Empty<(Ink, string)>()]);
        figure.AddLegend([(inner, "90 % of the samples")], areFilled: true);

        double[][] lines =
        [
            Line(i => worst[i].FoundOhms.Minimum!.Value), Line(i => worst[i].FoundOhms.Maximum!.Value),
            .. isBounded ? [Line(i => worst[i].BoundOhms.Minimum!.Value), Line(i => worst[i].BoundOhms.Maximum!.Value)] : Array.Empty<double[]>(),
        ];
        ChartAxis up = ChartAxis.Linear("Deviation from the nominal impedance", lines.Min(l => l.Min()), lines.Max(l => l.Max()), "%");
        PanelStack stack = new(figure, ChartAxis.Logarithmic("Switching frequency", from, to, "Hz"), [(up, HeightPixels)]);
        Panel panel = stack.Panels[0];
        panel.Band(inner, hertz, Line(i => samples[i].QuantileOhms(Tail)), Line(i => samples[i].QuantileOhms(1 - Tail)));
        panel.Line(nominal, [from, to], [0, 0]);
        foreach ((double[] line, int k) in lines.Select((l, k) => (l, k)))
        {
            panel.Line(k < 2 ? found : bound, hertz, [.. line.Select(v => (double?)v)]);
        }

        return figure.ToPicture(Description(analysis, tolerances, hertz, worst, samples), stack.Bottom);
    }

    private static string Conditions(ComponentTolerances tolerances, int sampleCount) => $"{tolerances}; {sampleCount} samples per frequency";

    private static string Description(
        ModeAnalysis analysis, ComponentTolerances tolerances, IReadOnlyList<double> hertz, ImpedanceWorstCase[] worst, ImpedanceDistribution[] samples)
    {
        string At(int i) => $"at {EngineeringNumber.Of(hertz[i], "Hz")} nominally {EngineeringNumber.Of(samples[i].NominalOhms, "Ω")}, 90 % of the samples within "
            + $"{EngineeringNumber.Of(samples[i].QuantileOhms(Tail), "Ω")} to {EngineeringNumber.Of(samples[i].QuantileOhms(1 - Tail), "Ω")}, "
            + $"worst case found {EngineeringNumber.Of(worst[i].FoundOhms.Minimum, "Ω")} to {EngineeringNumber.Of(worst[i].FoundOhms.Maximum, "Ω")}";
        return $"Spread of the output impedance of {ChartNames.Of(analysis.Converter, analysis.Mode)} with {tolerances}: {string.Join("; ", new[] { 0, hertz.Count / 2, hertz.Count - 1 }.Select(At))}.";
    }
}
