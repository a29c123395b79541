using ScNet.Analysis;
using ScNet.Reporting.Charts.Plotting;
using ScNet.SteadyState;

namespace ScNet.Reporting.Charts;

/// <summary>
/// The exact output impedance of a mode over the switching frequency, with both limits, their corner and the published estimates;
/// where plates or inductors move them, also the exact ratio and the input conductance without load.
/// </summary>
public static class ImpedanceChart
{
    private const int Points = 241;

    // decades on either side of the corner frequency
    private const int Decades = 2;

    // what counts as moved: more than rounding, less than an eye sees
    private const double Moved = 1e-5;

    private const int SmallTexts = 3;

    // errors beyond it say no more than that an estimate does not hold
    private const double LargestError = 0.5;

    private const double MainPixels = 230, SmallPixels = 80;

    /// <summary>Draws the impedance of a mode.</summary>
    /// <param name="analysis">The analysis of the mode.</param>
    /// <param name="frequencyHz">The range of the switching frequency in hertz (Hz); null for two decades on either side of the corner frequency, rounded to decades.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">No range is given and the limits have no corner, or the range is no range of positive frequencies.</exception>
    /// <exception cref="ScNetException">The network is too large: <see cref="DiagnosticCodes.SteadyStateTooLarge"/>.</exception>
    public static Picture Of(ModeAnalysis analysis, Interval<double>? frequencyHz = null, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        SteadyStateModel model = SteadyStateModel.Of(analysis);
        (double from, double to) = ChartFrequencies.Range(model.Impedance, frequencyHz, Decades);
        IReadOnlyList<double> hertz = FrequencyRange.Logarithmic(from, to, Points);
        ImpedancePoint?[] points = [.. hertz.Select(f => At(model, f))];
        ImpedancePoint[] known = [.. points.OfType<ImpedancePoint>()];
        if (known.Length == 0)
        {
            throw new ArgumentException("Expected a range of frequencies at some of which the network has a periodic state, but it has none at any.", nameof(frequencyHz));
        }

        Figure figure = new($"Output impedance of {ChartNames.Of(analysis.Converter, analysis.Mode)}", string.Empty, Figure.UsualWidthPixels, appearance);
        (Ink Ink, string Text, Func<ImpedancePoint, double> Ohms)[] lines = Lines(figure.Palette, known[0].SlowOhms > 0);
        figure.AddLegend([.. lines.Select(l => (l.Ink, l.Text))]);

        double[] drawn = [.. known.Select(p => p.Ohms), .. known.Select(p => p.FastOhms).Where(r => r > 0)];
        double high = Math.Max(drawn.Max(), known.Max(p => p.RootSumSquareOhms));
        ChartAxis ohms = ChartAxis.Logarithmic("Output impedance", drawn.Min() / 1.8, high * 1.3, "Ω");
        ChartAxis frequency = ChartAxis.Logarithmic("Switching frequency", from, to, "Hz");
        (ChartAxis Axis, (Ink Ink, double?[] Values)[] Lines, string Name)[] more =
        [
            .. ErrorLines(lines.Skip(2), points),
            .. TwoPortLines(figure.Palette, analysis, points, known),
        ];

        PanelStack stack = new(figure, frequency, [(ohms, MainPixels), .. more.Select(m => (m.Axis, SmallPixels))]);
        Panel main = stack.Panels[0];
        if (ChartFrequencies.Corner(model.Impedance) is { } corner && corner > from && corner < to)
        {
            main.Upright(new Ink("corner", figure.Palette.Faint) { Dash = "3 3" }, corner);
            TextSpot right = new("corner-text", main.PixelX(corner) + 5, main.Area.Top + 13, $"corner {EngineeringNumber.Of(corner, "Hz")}");
            figure.Add(right.Box.Right < main.Area.Right ? right : right with { X = main.PixelX(corner) - 5, Anchor = TextAnchor.End });
        }

        // thin lines lie over the exact one, so that they are seen where both agree
        foreach ((Ink ink, string _, Func<ImpedancePoint, double> value) in lines)
        {
            main.Line(ink, hertz, [.. points.Select(p => p is null ? null : (double?)value(p)).Select(r => r > 0 ? r : null)]);
        }

        foreach ((Panel panel, (ChartAxis _, (Ink Ink, double?[] Values)[] own, string _)) in stack.Panels.Skip(1).Zip(more))
        {
            foreach ((Ink ink, double?[] values) in own)
            {
                panel.Line(ink, hertz, values);
            }
        }

        return figure.ToPicture(Description(analysis, model, known, more.Select(m => m.Name)), stack.Bottom);
    }

    private static ImpedancePoint? At(SteadyStateModel model, double hertz)
    {
        try
        {
            return model.At(hertz);
        }
        catch (ScNetException noState) when (noState.Diagnostics.Any(d => d.Code == DiagnosticCodes.NoPeriodicState))
        {
            // the line has a gap where a resonance has no periodic state
            return null;
        }
    }

    private static (Ink Ink, string Text, Func<ImpedancePoint, double> Ohms)[] Lines(Palette palette, bool hasSlow)
    {
        (Ink, string, Func<ImpedancePoint, double>)[] always =
        [
            (new Ink("exact", palette.Series[0]) { WidthPixels = 2.8 }, "exact", p => p.Ohms),
            (new Ink("fast-limit", palette.Ink) { WidthPixels = 1.6, Dash = "2 3" }, "fast-switching limit", p => p.FastOhms),
        ];
        return !hasSlow ? always :
        [
            .. always,
            (new Ink("slow-limit", palette.Ink) { WidthPixels = 1.6, Dash = "8 4" }, "slow-switching limit", p => p.SlowOhms),
            (new Ink("root-sum-square", palette.Series[6]) { WidthPixels = 1.6, Dash = "10 3 2 3" }, "root-sum-square", p => p.RootSumSquareOhms),
            (new Ink("norm-2-54", palette.Series[2]) { WidthPixels = 1.6, Dash = "5 2" }, "2.54-norm", p => p.Norm254Ohms),
            (new Ink("single-pair", palette.Series[3]) { WidthPixels = 1.6, Dash = "3 2 1 2" }, "single pair", p => p.SinglePairOhms),
        ];
    }

    // of the slow limit, which is no estimate, nothing is said
    private static IEnumerable<(ChartAxis Axis, (Ink Ink, double?[] Values)[] Lines, string Name)> ErrorLines(
        IEnumerable<(Ink Ink, string Text, Func<ImpedancePoint, double> Ohms)> estimates, ImpedancePoint?[] points)
    {
        (Ink, double?[] Values)[] lines = [.. estimates.Skip(1).Select(e => (e.Ink, points.Select(p => p is null ? null : (double?)(100 * ((e.Ohms(p) / p.Ohms) - 1))).ToArray()))];
        if (lines.Length > 0)
        {
            double[] errors = [.. lines.SelectMany(l => l.Values).OfType<double>().Select(e => Math.Clamp(e, -100 * LargestError, 100 * LargestError))];
            yield return (ChartAxis.Linear("Estimate less exact value", Math.Min(0, errors.Min()), Math.Max(0, errors.Max()), "%", 3), lines, "the relative errors of the estimates");
        }
    }

    private static (ChartAxis Axis, (Ink Ink, double?[] Values)[] Lines, string Name)[] TwoPortLines(
        Palette palette, ModeAnalysis analysis, ImpedancePoint?[] points, ImpedancePoint[] known)
    {
        double? ideal = analysis.Ratio.IsDetermined ? analysis.Ratio.ToDouble() : null;
        bool ratioMoves = known.Any(p => Math.Abs(p.TwoPort.Ratio - (ideal ?? known[0].TwoPort.Ratio)) > Moved * Math.Abs(p.TwoPort.Ratio));
        bool conducts = known.Any(p => Math.Abs(p.TwoPort.InputSiemens) * p.Ohms > Moved);
        if (!ratioMoves && !conducts)
        {
            return [];
        }

        double?[] ratio = [.. points.Select(p => p?.TwoPort.Ratio)], siemens = [.. points.Select(p => p?.TwoPort.InputSiemens)];
        ChartAxis siemensAxis = siemens.Min() > 0
            ? ChartAxis.Logarithmic("Input conductance G without load", siemens.Min()!.Value / 1.3, siemens.Max()!.Value * 1.3, "S", SmallTexts)
            : ChartAxis.Linear("Input conductance G without load", siemens.Min()!.Value, siemens.Max()!.Value, "S", 3);
        return
        [
            (ChartAxis.Linear("Ratio M without load", ratio.Min()!.Value, ratio.Max()!.Value, string.Empty, 3), [(new Ink("ratio", palette.Series[0]) { WidthPixels = 2.4 }, ratio)], "the exact ratio without load"),
            (siemensAxis, [(new Ink("conductance", palette.Series[0]) { WidthPixels = 2.4 }, siemens)], "the input conductance without load"),
        ];
    }

    private static string Description(ModeAnalysis analysis, SteadyStateModel model, ImpedancePoint[] known, IEnumerable<string> more)
    {
        string below = string.Join(" and ", more) is { Length: > 0 } names ? $" Below, {names}." : string.Empty;
        string corner = ChartFrequencies.Corner(model.Impedance) is { } hertz ? $" Both limits are equal at {EngineeringNumber.Of(hertz, "Hz")}." : string.Empty;
        return $"Output impedance of {ChartNames.Of(analysis.Converter, analysis.Mode)} over the switching frequency: "
            + $"{EngineeringNumber.Of(known[0].Ohms, "Ω")} at {EngineeringNumber.Of(known[0].FrequencyHz, "Hz")}, {EngineeringNumber.Of(known[^1].Ohms, "Ω")} at {EngineeringNumber.Of(known[^1].FrequencyHz, "Hz")}; "
            + $"fast-switching limit {EngineeringNumber.Of(known[0].FastOhms, "Ω")}.{corner}{below}";
    }
}
