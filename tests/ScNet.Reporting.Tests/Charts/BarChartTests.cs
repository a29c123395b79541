using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Reporting.Charts;
using ScNet.Reporting.Charts.Plotting;

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
