using Fractions;
using ScNet.Analysis;
using ScNet.Reconfiguration;
using ScNet.Topologies;

namespace ScNet.Tests.Reconfiguration;

public sealed class OverlayTests
{
    [Fact]
    public void Every_mode_keeps_the_ratio_and_the_charges_of_its_network()
    {
        Converter[] networks = [SeriesParallel.StepDown(4), Dickson.StepDown(4), Ladder.StepDown(2), Fibonacci.StepDown(3), SeriesParallel.StepUp(3)];
        Overlay overlay = Overlay.Of("Gears", networks);
        for (int k = 0; k < networks.Length; k++)
        {
            ModeAnalysis own = ModeAnalysis.Of(networks[k], networks[k].Modes[0]);
            ModeAnalysis shared = ModeAnalysis.Of(overlay.Converter, overlay.Converter.Modes[k]);
            Assert.Equal(networks[k].Name, overlay.Converter.Modes[k].Name);
            Assert.Equal(own.Ratio, shared.Ratio);
            Assert.Equal(Coefficients(own), Coefficients(shared));
        }
    }

    [Fact]
    public void Two_series_parallel_ratios_need_one_switch_more_than_the_larger_one()
    {
        // By hand: 3:1 has seven switches; 2:1 on one of its capacitors reuses three and adds one.
        Overlay overlay = Overlay.Of("Gears", [SeriesParallel.StepDown(3), SeriesParallel.StepDown(2)]);
        Assert.Equal(8, overlay.SwitchCount);
        Assert.Equal(11, overlay.SeparateSwitchCount);
    }

    [Fact]
    public void A_network_laid_over_itself_needs_no_more_switches_than_alone()
    {
        Overlay alone = Overlay.Of("Alone", [SeriesParallel.StepDown(4)]);
        Converter twin = Converter.Create("Twin").Input("vin").Output("vout").Capacitor("a", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Equal(10, alone.SwitchCount);
        Assert.Equal(4, Overlay.Of("Both", [SeriesParallel.StepDown(2), twin]).SwitchCount);
    }

    [Fact]
    public void The_same_seed_gives_the_same_converter()
    {
        Converter[] networks = [SeriesParallel.StepDown(5), Dickson.StepDown(5), Fibonacci.StepDown(3)];
        Assert.Equal(Overlay.Of("A", networks, seed: 7).ToString(), Overlay.Of("A", networks, seed: 7).ToString());
    }

    [Fact]
    public void Nine_capacitors_are_laid_over_one_another_without_a_list_of_all_ways()
    {
        // 9! · 2⁹ = 186 million ways for the second network alone
        Converter[] networks = [SeriesParallel.StepDown(10), SeriesParallel.StepUp(10)];
        Steps steps = new(_ => { });
        Overlay overlay = Overlay.Of("Ten", networks, progress: steps);
        Assert.InRange(steps.Count, 2, Overlay.LargestTrialCount + 1);
        Assert.True(overlay.SwitchCount < overlay.SeparateSwitchCount);
    }

    [Fact]
    public void A_search_ends_at_the_next_trial_after_it_is_cancelled()
    {
        using CancellationTokenSource source = new();
        Steps steps = new(count =>
        {
            if (count == 3)
            {
                source.Cancel();
            }
        });
        Converter[] networks = [SeriesParallel.StepDown(10), SeriesParallel.StepUp(10), Dickson.StepDown(10)];
        Assert.Throws<OperationCanceledException>(() => Overlay.Of("Ten", networks, progress: steps, cancellationToken: source.Token));
        Assert.Equal(3, steps.Count);
    }

    [Fact]
    public void More_capacitors_than_the_search_serves_are_refused()
    {
        Converter large = SeriesParallel.StepDown(Overlay.LargestCapacitorCount + 2);
        Assert.Contains("at most 30 capacitors", Assert.Throws<ArgumentException>(() => Overlay.Of("Large", [large])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Networks_that_do_not_fit_together_are_refused()
    {
        Converter uneven = Converter.Create("Uneven").Input("vin").Output("vout").Duties(0.3, 0.7).Capacitor("a", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Throws<ArgumentException>(() => Overlay.Of("A", [SeriesParallel.StepDown(2), uneven]));
        Assert.Throws<ArgumentException>(() => Overlay.Of("A", [SeriesParallel.StepDown(2), SeriesParallel.StepDown(2)]));
        Assert.Throws<ArgumentException>(() => Overlay.Of("A", []));
    }

    private static IEnumerable<Fraction> Coefficients(ModeAnalysis analysis) =>
        analysis.SlowSwitchingLimit.Coefficients.Select(c => c.ToFraction()).Where(c => c > Fraction.Zero).Order();

    private sealed class Steps(Action<int> then) : IProgress<double>
    {
        public int Count { get; private set; }

        public void Report(double value) => then(++Count);
    }
}
