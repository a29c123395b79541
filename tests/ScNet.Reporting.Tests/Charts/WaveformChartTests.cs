using ScNet.Reporting.Charts;
using ScNet.Reporting.Charts.Plotting;
using ScNet.SteadyState;

namespace ScNet.Reporting.Tests.Charts;

public sealed class WaveformChartTests
{
    // two samples on either side of a jump lie within a pixel across, but not upwards
    private const double JumpShare = 1e-3;

    [Fact]
    public void Lines_are_the_voltages_and_currents_of_the_period()
    {
        PeriodicSteadyState steady = ChartSamples.Rippling;
        IReadOnlyList<DrawnPanel> panels = new DrawnChart(WaveformChart.Of(steady, ["vout", "p", "n"])).Panels;
        Assert.Equal(6, panels.Count);
        AgreeWith(panels[0], "node-0", steady, t => steady.SampleNodePotential("vout", t));
        AgreeWith(panels[1], "node-1", steady, t => steady.SampleNodePotential("p", t));
        AgreeWith(panels[3], "capacitor-0", steady, t => steady.SampleCapacitorVoltage("fly", t));
        AgreeWith(panels[5], "input", steady, t => [.. steady.SampleInputCurrent(t).Select(i => (double?)i)]);
    }

    [Fact]
    public void Currents_of_inductors_are_shown_with_the_nodes_beside_them()
    {
        PeriodicSteadyState steady = ChartSamples.Stage;
        DrawnChart chart = new(WaveformChart.Of(steady));
        Assert.Equal(
            ["Output vout, constant", "Node x", "Voltage of fly1, ripple 28.67 mV", "Voltage of fly2, ripple 28.67 mV", "Current of coil, ripple 260.7 mA", "Input current"],
            chart.TextsOf("axis-y"));
        AgreeWith(chart.Panels[4], "inductor-0", steady, t => [.. steady.SampleInductorCurrent("coil", t).Select(i => (double?)i)]);
    }

    /// <summary>What is left out of the drawn line would not be seen: at a thousand instants the line passes where the data are, and it reaches their extremes.</summary>
    [Fact]
    public void Few_corners_draw_every_curve_to_a_fraction_of_a_pixel()
    {
        PeriodicSteadyState steady = ChartSamples.Stage;
        Picture picture = WaveformChart.Of(steady);
        DrawnChart chart = new(picture);
        double period = 1 / steady.Point.FrequencyHz;
        double[] instants = [.. Enumerable.Range(0, 1000).Select(k => (k + 0.5) * period / 1000)];
        (int Panel, string Name, double[] Values)[] curves =
        [
            (2, "capacitor-0", [.. steady.SampleCapacitorVoltage("fly1", instants).Select(v => v!.Value)]),
            (4, "inductor-0", steady.SampleInductorCurrent("coil", instants)),
            (5, "input", steady.SampleInputCurrent(instants)),
        ];
        foreach ((int index, string name, double[] values) in curves)
        {
            DrawnPanel panel = chart.Panels[index];
            IReadOnlyList<(double X, double Y)>[] lines = [.. panel.Lines(name)];
            Assert.All(instants.Zip(values), sample =>
            {
                (double, double) point = (panel.Area.Left + (sample.First / period * panel.Area.Width), panel.YScale.PixelOf(sample.Second));
                Assert.InRange(lines.Min(l => l.Zip(l.Skip(1)).Min(s => LineThinning.Distance(point, s.First, s.Second))), 0, 0.5);
            });
            Assert.True(lines.SelectMany(l => l).Min(p => p.Y) <= panel.YScale.PixelOf(values.Max()) + 0.05, name);
            Assert.True(lines.SelectMany(l => l).Max(p => p.Y) >= panel.YScale.PixelOf(values.Min()) - 0.05, name);
        }

        Assert.InRange(picture.ToSvg().Length, 1, 30_000);
    }

    [Fact]
    public void Corners_that_bend_a_line_and_its_extremes_stay()
    {
        (double, double)[] line = [(0, 0), (1, 0.01), (2, 0), (3, 5), (4, 0), (5, -0.02), (6, 0)];
        Assert.Equal([0, 2, 3, 4, 5, 6], LineThinning.Of(line, 0.05));
        Assert.Equal([0, 1, 2, 3, 4, 5, 6], LineThinning.Of(line, 0.001));
        Assert.Equal([0, 1], LineThinning.Of([(0, 0), (0, 1)], 1));
        Assert.Equal(5, LineThinning.Distance((3, 4), (0, 0), (0, 0)));
    }

    [Fact]
    public void Phases_are_marked_and_named()
    {
        DrawnChart chart = new(WaveformChart.Of(ChartSamples.Stage));
        Assert.Equal(Enumerable.Range(1, 6).Select(j => $"phase {j}"), chart.TextsOf("phase-name"));
        double sum = 0;
        foreach ((Phase phase, double x) in ChartSamples.Stage.Converter.Phases.SkipLast(1).Zip(chart.Panels[0].Lines("phase").Select(l => l[0].X)))
        {
            sum += phase.Duty.ToDouble();
            Pixels.Equal(chart.Panels[0].XScale.PixelOf(0) + (sum * chart.Panels[0].Area.Width), x);
        }
    }

    [Fact]
    public void A_node_that_floats_has_a_gap_and_says_so()
    {
        DrawnChart chart = new(WaveformChart.Of(ChartSamples.Rippling, ["p"]));
        Assert.Contains("Node p, floats where no line is", chart.TextsOf("axis-y"));
        Assert.Equal(2, chart.Panels[0].Lines("node-0").Count);
        Assert.Throws<ArgumentException>(() => WaveformChart.Of(ChartSamples.Rippling, ["nowhere"]));
    }

    private static void AgreeWith(DrawnPanel panel, string name, PeriodicSteadyState steady, Func<double[], double?[]> sample)
    {
        double period = 1 / steady.Point.FrequencyHz;
        double Across(double x) => (x - panel.Area.Left) / panel.Area.Width * period;
        (double X, double Y)[] corners = [.. panel.Lines(name).SelectMany(l => l)];
        Assert.NotEmpty(corners);
        double[] jumps = [panel.Area.Left, .. panel.Lines("phase").Select(l => l[0].X), panel.Area.Right];
        foreach ((double x, double y) in corners)
        {
            // a little before or after, where a jump lies between
            double?[] values = sample([Math.Max(0, Across(x) - (JumpShare * period)), Math.Max(0, Across(x)), Math.Min(Across(x) + (JumpShare * period), period * (1 - 1e-12))]);
            double[] places = [.. values.OfType<double>().Select(panel.YScale.PixelOf)];
            Assert.InRange(y, places.Min() - 1, places.Max() + 1);
            bool isNear = values[1] is { } exact && Math.Abs(panel.YScale.PixelOf(exact) - y) <= 1;
            Assert.True(isNear || jumps.Any(j => Math.Abs(j - x) <= 1), FormattableString.Invariant($"{x}, {y} is neither near the curve nor at a jump"));
        }
    }
}
