using ScNet.Analysis;
using ScNet.Reporting.Charts;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Charts;

public sealed class ImpedanceChartTests
{
    [Fact]
    public void Lines_are_the_exact_impedance_both_limits_and_the_estimates()
    {
        OutputImpedance impedance = OutputImpedance.Of(ChartSamples.Half);
        DrawnPanel panel = new DrawnChart(ImpedanceChart.Of(ChartSamples.Half)).Panels[0];
        Pixels.AgreeWith(panel, panel.Lines("exact"), impedance.Ohms);
        Pixels.AgreeWith(panel, panel.Lines("slow-limit"), f => impedance.At(f).SlowOhms);
        Pixels.AgreeWith(panel, panel.Lines("fast-limit"), f => impedance.At(f).FastOhms);
        Pixels.AgreeWith(panel, panel.Lines("root-sum-square"), f => impedance.At(f).RootSumSquareOhms);
        Pixels.AgreeWith(panel, panel.Lines("norm-2-54"), f => impedance.At(f).Norm254Ohms);
        Pixels.AgreeWith(panel, panel.Lines("single-pair"), f => impedance.At(f).SinglePairOhms);
        Pixels.Equal(panel.XScale.PixelOf(impedance.CornerFrequencyHz), panel.Lines("corner")[0][0].X);
    }

    [Fact]
    public void Errors_of_the_estimates_have_a_panel()
    {
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(Ladder.StepDown(4)));
        DrawnPanel panel = new DrawnChart(ImpedanceChart.Of(ModeAnalysis.Of(Ladder.StepDown(4)))).Panels[1];
        Assert.Equal("Estimate less exact value", panel.YTitle);
        Pixels.AgreeWith(panel, panel.Lines("norm-2-54"), f => 100 * impedance.At(f).Norm254Error);
        Pixels.AgreeWith(panel, panel.Lines("root-sum-square"), f => 100 * impedance.At(f).RootSumSquareError);
    }

    [Fact]
    public void Ratio_and_conductance_are_shown_where_plates_move_them()
    {
        TwoPort twoPort = SteadyStateModel.Of(ChartSamples.Plated).TwoPort;
        DrawnChart chart = new(ImpedanceChart.Of(ChartSamples.Plated));
        Assert.Equal(4, chart.Panels.Count);
        Pixels.AgreeWith(chart.Panels[2], chart.Panels[2].Lines("ratio"), f => twoPort.At(f).Ratio);
        Pixels.AgreeWith(chart.Panels[3], chart.Panels[3].Lines("conductance"), f => twoPort.At(f).InputSiemens);
        Assert.Equal(2, new DrawnChart(ImpedanceChart.Of(ChartSamples.Half)).Panels.Count);
    }

    [Fact]
    public void Axes_are_marked_as_logarithmic_with_decades_and_ticks_between()
    {
        DrawnPanel panel = new DrawnChart(ImpedanceChart.Of(ChartSamples.Half)).Panels[0];
        Assert.Equal("Switching frequency, log scale", panel.XTitle);
        Assert.Equal("Output impedance, log scale", panel.YTitle);
        Assert.Equal(["100 kHz", "1 MHz", "10 MHz", "100 MHz", "1 GHz"], panel.XTicks.Select(t => t.Text));

        // ticks at 2 to 9 times each of four decades
        double[] ticks = [.. panel.Of("axis").SelectMany(DrawnChart.Lines).Where(s => s[0].X == s[^1].X && s[0].Y == panel.Area.Bottom && s[^1].Y > s[0].Y).Select(s => s[0].X)];
        Assert.Equal(5 + (4 * 8), ticks.Length);
        Assert.Contains(ticks, x => Math.Abs(x - panel.XScale.PixelOf(2e6)) < 0.1);
    }

    [Fact]
    public void A_resonance_is_drawn_with_the_estimates_that_miss_it()
    {
        ModeAnalysis stage = ModeAnalysis.Of(ChartSamples.Read("four-level-stage"));
        OutputImpedance impedance = OutputImpedance.Of(stage);
        DrawnPanel panel = new DrawnChart(ImpedanceChart.Of(stage, new Interval<double>(1e5, 1e8))).Panels[0];
        Pixels.AgreeWith(panel, panel.Lines("exact"), impedance.Ohms);
    }

    [Fact]
    public void Main_figures_are_told_to_those_who_cannot_see() =>
        Assert.Contains("Both limits are equal at 15.24 MHz", ImpedanceChart.Of(ChartSamples.Half).Description, StringComparison.Ordinal);

    [Fact]
    public void A_range_of_frequencies_is_asked_for_where_there_is_no_corner()
    {
        ModeAnalysis stepDown = ModeAnalysis.Of(InductiveStage.StepDown(new Fractions.Fraction(1, 4), henries: 1e-6, ohms: 0.1));
        ArgumentException missing = Assert.Throws<ArgumentException>(() => ImpedanceChart.Of(stepDown));
        Assert.Contains("no corner frequency", missing.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => ImpedanceChart.Of(stepDown, new Interval<double>(-1, 1e6)));
        Assert.NotEmpty(ImpedanceChart.Of(stepDown, new Interval<double>(1e5, 1e7)).ToSvg());
    }
}
