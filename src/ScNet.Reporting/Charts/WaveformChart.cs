using ScNet.Reporting.Charts.Plotting;
using ScNet.SteadyState;

namespace ScNet.Reporting.Charts;

/// <summary>
/// What nodes, capacitors, inductors and the input do within a period of the steady state, each in a panel with its own scale, so
/// that a small ripple on a large voltage is seen; phases are marked.
/// </summary>
public static class WaveformChart
{
    private const double RowPixels = 54, StripPixels = 18;

    // evenly over a phase, and more densely towards its start, where currents are steep
    private const int EvenSamples = 96, EarlySamples = 40;

    // what lies within it is a constant but for rounding
    private const double Rounding = 1e-9;

    /// <summary>Draws a period.</summary>
    /// <param name="steady">The steady state at an operating point.</param>
    /// <param name="nodes">The nodes to show, in order; null for the output and the nodes at inductors.</param>
    /// <param name="appearance">The ground.</param>
    /// <exception cref="ArgumentException">The converter has no such node.</exception>
    public static Picture Of(PeriodicSteadyState steady, IReadOnlyList<string>? nodes = null, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(steady);
        Converter converter = steady.Converter;
        Figure figure = new($"A period of {ChartNames.Of(converter, steady.Mode)}", ChartNames.Of(steady.Point), Figure.UsualWidthPixels, appearance);
        double period = 1 / steady.Point.FrequencyHz;
        double[] ends = [.. Boundaries(converter).Select(b => b * period)];
        double[] times = [.. Enumerable.Range(0, converter.Phases.Count).SelectMany(j => Samples(ends[j], ends[j + 1]))];
        Signal[] signals = [.. Signals(steady, nodes ?? UsualNodes(converter), times, figure.Palette)];

        ChartAxis time = ChartAxis.Linear("Time", 0, period, "s", 5, isExtended: false);
        double top = figure.HeadPixels + StripPixels + 6;
        PanelStack stack = new(figure, time, [.. signals.Select(s => (s.Axis, RowPixels))], topPixels: top);
        Ink boundary = new("phase", figure.Palette.Faint) { Dash = "4 3" };
        foreach ((Panel panel, Signal signal) in stack.Panels.Zip(signals))
        {
            foreach (double end in ends[1..^1])
            {
                panel.Upright(boundary, end);
            }

            panel.Line(signal.Ink, times, signal.Values);
        }

        AddPhases(figure, stack.Panels[0], converter, ends, top - StripPixels);
        return figure.ToPicture(Description(steady, signals), stack.Bottom);
    }

    private static IEnumerable<string> UsualNodes(Converter converter) =>
    [
        converter.OutputNode,
        .. converter.Inductors.SelectMany(l => new[] { l.FirstNode, l.SecondNode }).Distinct()
            .Where(n => n != converter.OutputNode && n != converter.InputNode && n != Converter.ReferenceNode),
    ];

    // the shares of the period at which phases begin, and 1
    private static IEnumerable<double> Boundaries(Converter converter)
    {
        Fractions.Fraction sum = Fractions.Fraction.Zero;
        yield return 0;
        foreach (Phase phase in converter.Phases)
        {
            sum += phase.Duty;
            yield return sum.ToDouble();
        }
    }

    // inside the phase, so that each of its ends counts as its own
    private static IEnumerable<double> Samples(double start, double end)
    {
        double length = end - start;
        double[] early = [.. Enumerable.Range(0, EarlySamples).Select(k => Math.Pow(10, -5 + (3.0 * k / EarlySamples)))];
        double[] even = [.. Enumerable.Range(1, EvenSamples - 1).Select(k => (double)k / EvenSamples)];
        return ((double[])[Rounding, .. early, .. even, 1 - Rounding]).Select(share => start + (length * share));
    }

    private static IEnumerable<Signal> Signals(PeriodicSteadyState steady, IEnumerable<string> nodes, double[] times, Palette palette)
    {
        Converter converter = steady.Converter;
        foreach ((string node, int k) in nodes.Select((n, k) => (n, k)))
        {
            yield return Of($"node-{k}", node == converter.OutputNode ? $"Output {node}" : $"Node {node}", "V", palette.Series[0], steady.SampleNodePotential(node, times), null);
        }

        foreach ((CapacitorOperation capacitor, int k) in steady.Capacitors.Select((c, k) => (c, k)))
        {
            string name = capacitor.Capacitor.Name;
            yield return Of($"capacitor-{k}", $"Voltage of {name}", "V", palette.Series[2], steady.SampleCapacitorVoltage(name, times), capacitor.RippleVolts);
        }

        foreach ((InductorOperation inductor, int k) in steady.Inductors.Select((l, k) => (l, k)))
        {
            string name = inductor.Inductor.Name;
            yield return Of($"inductor-{k}", $"Current of {name}", "A", palette.Series[6], Some(steady.SampleInductorCurrent(name, times)), inductor.RippleAmperes);
        }

        yield return Of("input", "Input current", "A", palette.Series[6], Some(steady.SampleInputCurrent(times)), null);
    }

    private static double?[] Some(double[] values) => [.. values.Select(v => (double?)v)];

    private static Signal Of(string id, string name, string unit, string colour, double?[] values, double? ripple)
    {
        double low = values.Min() ?? 0, high = values.Max() ?? 0;
        bool isConstant = high - low <= Rounding * Math.Max(Math.Abs(low), Math.Abs(high));
        string what = values.All(v => v is null) ? ", not determined" : isConstant ? ", constant" : ripple > 0 ? $", ripple {EngineeringNumber.Of(ripple, unit)}" : string.Empty;
        string gap = values.Any(v => v is null) && values.Any(v => v is not null) ? ", floats where no line is" : string.Empty;
        return new Signal(new Ink(id, colour) { WidthPixels = 2 }, unit, values, name + what + gap, ChartAxis.Linear(name + what + gap, low, isConstant ? low : high, unit, 2));
    }

    private static void AddPhases(Figure figure, Panel panel, Converter converter, double[] ends, double top)
    {
        foreach ((Phase phase, int j) in converter.Phases.Select((p, j) => (p, j)))
        {
            string text = phase.Name == phase.Number.ToString(System.Globalization.CultureInfo.InvariantCulture) ? $"phase {phase.Name}" : phase.Name;
            (double left, double right) = (panel.PixelX(ends[j]), panel.PixelX(ends[j + 1]));
            foreach (string label in (string[])[text, phase.Name])
            {
                TextSpot spot = new("phase-name", (left + right) / 2, top + 12, label, TextAnchor.Middle) { Colour = figure.Palette.Faint };
                if (spot.WidthPixels + 4 < right - left)
                {
                    figure.Add(spot);
                    break;
                }
            }
        }
    }

    private static string Description(PeriodicSteadyState steady, Signal[] signals) =>
        $"Waveforms of {ChartNames.Of(steady.Converter, steady.Mode)} over a period of {EngineeringNumber.Of(1 / steady.Point.FrequencyHz, "s")} with {steady.Converter.Phases.Count} phases "
        + $"at {ChartNames.Of(steady.Point)}; average output {EngineeringNumber.Of(steady.AverageOutputVoltageVolts, "V")}. "
        + string.Join("; ", signals.Select(s => s.Values.All(v => v is null) ? s.Text : $"{s.Text}: {EngineeringNumber.Of(s.Values.Min(), s.Unit)} to {EngineeringNumber.Of(s.Values.Max(), s.Unit)}")) + ".";

    private sealed record Signal(Ink Ink, string Unit, double?[] Values, string Text, ChartAxis Axis);
}
