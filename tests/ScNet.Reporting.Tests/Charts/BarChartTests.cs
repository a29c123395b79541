using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Charts.Plotting;
using ScNet.Stress;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Bars of stress and loss: they begin at zero and are as long as their value.</summary>
public sealed class BarChartTests
{
    [Fact]
    public void Bars_of_stress_reach_from_zero_to_the_voltage_in_each_mode_and_at_changes()
    {
        ConverterRatings ratings = ChartSamples.Ratings;
        DrawnPanel panel = new DrawnChart(StressChart.Of(ratings)).Panels[0];
        Pixels.Equal(panel.Area.Left, panel.XScale.PixelOf(0));
        RatingVerdict[][] verdicts = [.. ratings.Switches.Select(s => s.Modes.Append(s.AtChanges!).ToArray()), .. ratings.Capacitors.Select(c => c.Modes.ToArray())];
        int modes = ratings.Stress.Modes.Count;
        for (int k = 0; k <= modes; k++)
        {
            Box[] bars = [.. panel.Bars(k < modes ? $"mode-{k}" : "at-changes").OrderBy(b => b.Top)];
            double[] volts = [.. verdicts.Where(v => v.Length > k).Select(v => v[k].Volts!.Value).Where(v => v > 0)];
            Assert.Equal(volts.Length, bars.Length);
            Assert.All(bars.Zip(volts), pair =>
            {
                Pixels.Equal(panel.XScale.PixelOf(0), pair.First.Left);
                Pixels.Equal(panel.XScale.PixelOf(pair.Second), pair.First.Right);
            });
        }
    }

    [Fact]
    public void Ratings_stand_at_what_one_device_and_stacks_withstand()
    {
        ConverterRatings ratings = ChartSamples.Ratings;
        DrawnChart chart = new(StressChart.Of(ratings));
        DrawnPanel panel = chart.Panels[0];
        Assert.Equal(
            ratings.Switches.Select(s => s.Overall.RatedVolts).Concat(ratings.Capacitors.Select(c => c.Overall.RatedVolts)),
            panel.Lines("rating").OrderBy(l => l.Average(p => p.Y)).Select(l => Math.Round(panel.XScale.ValueAt(l[0].X), 2)));
        Assert.All(panel.Lines("stack-rating"), l => Assert.Contains(Math.Round(panel.XScale.ValueAt(l[0].X), 1), new[] { 3.6, 5.4 }));
        Assert.Equal(4, chart.TextsOf("verdict").Count(t => t == "3 in series: not allowed"));
        Assert.Equal(ratings.Switches.Select(s => s.Switch.Name).Concat(ratings.Capacitors.Select(c => c.Capacitor.Name)), panel.YTicks.Select(t => t.Text));
    }

    [Fact]
    public void A_rating_far_too_low_has_few_marks()
    {
        SwitchDevice weak = DemoDevices.NType1V8 with { Name = "weak", RatedVolts = 1e-3 };
        ConverterRatings ratings = ConverterRatings.Of(ChartSamples.Ratings.Stress, new RatingLimits { Switch = weak, Capacitor = DemoDevices.Plate3V6 });
        DrawnPanel panel = new DrawnChart(StressChart.Of(ratings)).Panels[0];
        Assert.Equal(ratings.Switches.Count * 9, panel.Lines("stack-rating").Count);
        Assert.Equal(4.2, panel.XScale.ValueAt(panel.Bars("at-changes").Max(b => b.Right)), 0.02);
    }

    /// <summary>The fill of a strip at every mode is that of the band that holds its voltage, by what the legend says of the fill.</summary>
    [Fact]
    public void Every_one_of_many_modes_has_its_voltage_in_a_strip()
    {
        ConverterStress stress = ChartSamples.ManyStress;
        DrawnChart chart = new(StressChart.Of(stress));
        DrawnPanel bars = chart.Panels[0], strips = chart.Panels[1];
        double[] ends = [.. chart.TextsOf("legend").Where(t => t.StartsWith("to ", StringComparison.Ordinal)).Select(t => DrawnChart.Number(t[3..^2]))];
        double[] above = [0, .. ends];
        int elements = stress.Analysis.Converter.Switches.Count + stress.Analysis.Converter.Capacitors.Count;
        double row = strips.Area.Height / elements, column = strips.Area.Width / stress.Modes.Count;
        (System.Xml.Linq.XElement Element, Box Box)[] cells = [.. strips.All.Where(e => e.Name.LocalName == "rect").Select(e => (e, DrawnPanel.BoxOf(e)))];
        for (int i = 0; i < elements; i++)
        {
            double[] volts = [.. stress.Modes.Select(m => Math.Abs(i < m.Switches.Count ? m.Switches[i].Peak?.Volts ?? 0 : m.Capacitors[i - m.Switches.Count].Peak!.Volts))];
            for (int k = 0; k < volts.Length; k++)
            {
                (double x, double y) = (strips.Area.Left + ((k + 0.5) * column), strips.Area.Top + ((i + 0.5) * row));
                string name = (string)Assert.Single(cells, c => x > c.Box.Left && x < c.Box.Right && y > c.Box.Top && y < c.Box.Bottom).Element.Attribute("class")!;
                int band = int.Parse(name["volts-".Length..], System.Globalization.CultureInfo.InvariantCulture);
                Assert.InRange(volts[k], above[band], ends[band] + 1e-9);
            }

            Assert.Equal(volts.Max() > 0 ? 1 : 0, bars.Bars("mode-0").Count(b => b.Top < bars.Area.Top + ((i + 1) * bars.Area.Height / elements) && b.Bottom > bars.Area.Top + (i * bars.Area.Height / elements)
                && Math.Abs(bars.XScale.PixelOf(volts.Max()) - b.Right) <= 1));
        }
    }

    [Fact]
    public void Without_devices_bars_have_no_rating_and_say_the_largest_voltage()
    {
        ConverterStress stress = ChartSamples.Ratings.Stress;
        DrawnChart chart = new(StressChart.Of(stress)), rated = new(StressChart.Of(ChartSamples.Ratings));
        Assert.Empty(chart.Panels[0].Of("rating"));
        Assert.Equal(
            Enumerable.Range(0, stress.Modes.Count).Select(k => rated.Panels[0].Bars($"mode-{k}").Select(b => Math.Round(rated.Panels[0].XScale.ValueAt(b.Right), 1))),
            Enumerable.Range(0, stress.Modes.Count).Select(k => chart.Panels[0].Bars($"mode-{k}").Select(b => Math.Round(chart.Panels[0].XScale.ValueAt(b.Right), 1))));
        Assert.Equal("2.8 V", chart.TextsOf("verdict").First());
    }

    [Fact]
    public void Losses_are_stacked_from_zero_and_add_up()
    {
        IReadOnlyList<(string Name, LossBudget Budget)> budgets = ChartSamples.Budgets;
        DrawnChart chart = new(LossChart.Of(budgets));
        DrawnPanel panel = chart.Panels[0];
        Assert.Equal(budgets.Select(b => b.Name), chart.TextsOf("row"));
        Box[] all = [.. Enum.GetValues<LossKind>().SelectMany(k => panel.Bars($"loss-{(int)k}"))];
        double[] rows = [.. all.Select(b => b.Top).Distinct().Order()];
        Assert.Equal(budgets.Count, rows.Length);
        foreach ((double row, LossBudget budget) in rows.Zip(budgets.Select(b => b.Budget)))
        {
            double from = 0;
            foreach (LossKind kind in Enum.GetValues<LossKind>().Where(k => budget.WattsOf(k) > 0))
            {
                Box bar = Assert.Single(panel.Bars($"loss-{(int)kind}"), b => b.Top == row);
                double to = from + (100 * budget.WattsOf(kind) / budget.InputWatts);
                Pixels.Equal(panel.XScale.PixelOf(from), bar.Left);
                Pixels.Equal(panel.XScale.PixelOf(to), bar.Right);
                from = to;
            }

            Assert.Equal(100 * (1 - budget.Efficiency!.Value), from, 1e-9);
        }
    }

    [Fact]
    public void Losses_of_a_choice_are_its_averages()
    {
        DrawnChart chart = new(LossChart.Of(ChartSamples.Choice));
        Assert.Equal(ChartSamples.Choice.Ranked.Select(r => $"{r.Rank}. {r.Candidate}"), chart.TextsOf("row"));
        Assert.Equal(
            ChartSamples.Choice.Ranked.Select(r => FormattableString.Invariant($"{100 * (1 - r.Efficiency):F1} %, {EngineeringNumber.Of(r.LossWatts, "W")}")),
            chart.TextsOf("total"));
    }

    [Fact]
    public void Without_rows_there_is_no_chart() => Assert.Throws<ArgumentException>(() => LossChart.Of([]));
}
