using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Design.Sizing;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Charts.Plotting;
using ScNet.SteadyState;

namespace ScNet.Reporting.Tests.Charts;

public sealed class MapAndCurveChartTests
{
    [Fact]
    public void Efficiency_lines_are_those_of_the_map()
    {
        IReadOnlyList<RegulatedMode> modes = ChartSamples.Modes;
        DrawnChart chart = new(EfficiencyChart.Of(modes, new Interval<double>(2.8, 4.2), 1.2, 10e-3));
        DrawnPanel panel = chart.Panels[0];
        MapPoint At(double volts) => OperatingMap.Of(modes, [volts], [1.2], [10e-3]).At(0, 0);
        Pixels.AgreeWith(panel, panel.Lines("best"), v => 100 * At(v).Efficiency!.Value);
        Pixels.AgreeWith(panel, panel.Lines("linear"), v => 100 * 1.2 / v);

        // 1/2 serves up to 3.6 V, above it 1/3 would without loss
        Pixels.AgreeWith(panel, [[.. panel.Lines("ideal")[0].Where(p => Math.Abs(panel.XScale.ValueAt(p.X) - 3.6) > 0.01)]], v => 100 * 1.2 / v * (v < 3.6 ? 2 : 3));
        Assert.Equal(["1/2", "1/3"], chart.TextsOf("gear"));
        Assert.Equal(["1/3", "1/2", "2/3"], chart.TextsOf("line-name"));
        double border = panel.XScale.ValueAt(panel.Lines("gear-border")[0][0].X);
        Assert.Equal("Memory gears, 1/2", At(border - 0.01).BestMode!.Name);
        Assert.Equal("Memory gears, 1/3", At(border + 0.01).BestMode!.Name);
    }

    [Fact]
    public void Gears_are_named_alone_beside_a_linear_regulator()
    {
        DrawnChart chart = new(ChartSamples.Picture("efficiency-with-linear", Appearance.Light));
        Assert.Equal(["2/3", "1/2"], chart.TextsOf("gear"));
        Assert.Contains("linear regulator", chart.TextsOf("line-name"));
    }

    [Fact]
    public void Cells_of_a_map_have_the_fill_of_their_efficiency()
    {
        OperatingMap map = ChartSamples.Map;
        DrawnChart chart = new(MapChart.OfLoads(map, 2));
        DrawnPanel panel = chart.Panels[0];
        string[] bands = [.. chart.TextsOf("legend").Where(t => t.EndsWith('%'))];
        int held = 0;
        for (int i = 0; i < map.InputVolts.Count; i++)
        {
            for (int k = 0; k < map.LoadAmperes.Count; k++)
            {
                (double x, double y) = (panel.XScale.PixelOf(map.InputVolts[i]), panel.YScale.PixelOf(map.LoadAmperes[k]));
                string name = (string)panel.All.Last(e => e.Name.LocalName == "rect" && Holds(DrawnPanel.BoxOf(e), x, y)).Attribute("class")!;
                if (map.At(i, 2, k).Efficiency is { } efficiency)
                {
                    held++;
                    double[] ends = [.. bands[int.Parse(name["band-".Length..], System.Globalization.CultureInfo.InvariantCulture)].Split(" to ").Select(t => DrawnChart.Number(t.TrimEnd('%', ' ')))];
                    Assert.InRange(100 * efficiency, ends[0], ends[1]);
                }
                else
                {
                    Assert.Equal("not-held", name);
                }
            }
        }

        Assert.InRange(held, 50, map.Count);

        static bool Holds(Box box, double x, double y) => x > box.Left && x < box.Right && y > box.Top && y < box.Bottom;
    }

    [Fact]
    public void Borders_lie_between_cells_of_different_modes_and_nowhere_else()
    {
        OperatingMap map = ChartSamples.Map;
        DrawnPanel panel = new DrawnChart(MapChart.OfOutputs(map, 4)).Panels[0];
        int Mode(double x, double y) => map.At(Nearest(map.InputVolts, panel.XScale.ValueAt(x)), Nearest(map.OutputVolts, panel.YScale.ValueAt(y)), 4).BestModeIndex ?? -1;
        int borders = 0;
        for (int i = 0; i < map.InputVolts.Count; i++)
        {
            for (int k = 1; k < map.OutputVolts.Count; k++)
            {
                bool differ = map.At(i, k, 4).BestModeIndex != map.At(i, k - 1, 4).BestModeIndex;
                double x = panel.XScale.PixelOf(map.InputVolts[i]), y = panel.YScale.PixelOf((map.OutputVolts[k] + map.OutputVolts[k - 1]) / 2);
                Assert.Equal(differ, panel.Lines("gear-border").Any(l => Math.Abs(l[0].Y - y) < 1 && Math.Abs(l[^1].Y - y) < 1 && Math.Min(l[0].X, l[^1].X) < x && Math.Max(l[0].X, l[^1].X) > x));
                borders += differ ? 1 : 0;
            }
        }

        Assert.True(borders > 10);
        Assert.All(panel.Lines("gear-border").Where(l => l[0].X == l[^1].X), l =>
            Assert.NotEqual(Mode(l[0].X - 3, (l[0].Y + l[^1].Y) / 2), Mode(l[0].X + 3, (l[0].Y + l[^1].Y) / 2)));

        static int Nearest(IReadOnlyList<double> values, double value) => Enumerable.Range(0, values.Count).MinBy(i => Math.Abs(values[i] - value));
    }

    [Fact]
    public void A_map_of_one_row_has_no_picture() =>
        Assert.Throws<ArgumentException>(() => MapChart.OfLoads(OperatingMap.Of(ChartSamples.Modes, [3, 4], [1.2], [1e-3])));

    [Fact]
    public void Points_of_a_trade_off_are_its_densities_and_efficiencies()
    {
        TradeOffCurve curve = ChartSamples.Curve;
        DrawnChart chart = new(TradeOffChart.Of(curve));
        DrawnPanel panel = chart.Panels[0];
        (double X, double Y)[] points = [.. panel.Of("curve-0-point").Select(e => (DrawnChart.Number((string)e.Attribute("cx")!), DrawnChart.Number((string)e.Attribute("cy")!)))];
        Assert.Equal(curve.Points.Count, points.Length);
        Assert.All(points.Zip(curve.Points), pair =>
        {
            Pixels.Equal(panel.XScale.PixelOf(pair.Second.WattsPerSquareMetre!.Value * 1e-6), pair.First.X);
            Pixels.Equal(panel.YScale.PixelOf(100 * pair.Second.Efficiency!.Value), pair.First.Y);
        });
        Assert.Equal(["0.25 mm²", "0.5 mm²", "1 mm²"], chart.TextsOf("area"));
        Assert.Throws<ArgumentException>(() => TradeOffChart.Of([]));
    }

    [Fact]
    public void Bands_of_tolerance_hold_what_they_say()
    {
        ComponentTolerances tolerances = new(capacitance: 0.2, onResistance: 0.3);
        DrawnPanel panel = new DrawnChart(ToleranceChart.Of(ChartSamples.Half, tolerances, sampleCount: 40, seed: 3)).Panels[0];
        OutputImpedance nominal = OutputImpedance.Of(ChartSamples.Half);
        IReadOnlyList<IReadOnlyList<(double X, double Y)>> found = panel.Lines("found"), bound = panel.Lines("bound");
        Assert.Equal((2, 2), (found.Count, bound.Count));
        double Percent(double ohms, double hertz) => 100 * ((ohms / nominal.Ohms(hertz)) - 1);
        Held(found[0], worst => worst.FoundOhms.Minimum!.Value);
        Held(found[1], worst => worst.FoundOhms.Maximum!.Value);
        Held(bound[1], worst => worst.BoundOhms.Maximum!.Value);
        (double X, double Y)[] all = [.. DrawnChart.Lines(Assert.Single(panel.Of("samples")))[0]];
        foreach (double x in all.Select(p => p.X).Distinct().Where((_, i) => i % 8 == 0))
        {
            double hertz = panel.XScale.ValueAt(x);
            ImpedanceDistribution samples = ImpedanceTolerance.MonteCarlo(ChartSamples.Half, hertz, tolerances, 40, 3);
            (double X, double Y)[] edge = [.. all.Where(p => Math.Abs(p.X - x) < 0.1)];
            Pixels.Equal(panel.YScale.PixelOf(Percent(samples.QuantileOhms(0.95), hertz)), edge.Min(p => p.Y));
            Pixels.Equal(panel.YScale.PixelOf(Percent(samples.QuantileOhms(0.05), hertz)), edge.Max(p => p.Y));
        }

        void Held(IReadOnlyList<(double X, double Y)> line, Func<ImpedanceWorstCase, double> ohms)
        {
            foreach ((double x, double y) in line)
            {
                double hertz = panel.XScale.ValueAt(x);
                Pixels.Equal(panel.YScale.PixelOf(Percent(ohms(ImpedanceTolerance.WorstCase(ChartSamples.Half, hertz, tolerances)), hertz)), y);
            }
        }
    }
}
