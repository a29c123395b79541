using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

public sealed class ImpedanceToleranceTests
{
    private static ModeAnalysis Analysis(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);

    private static ModeAnalysis Half() => Analysis(OperatedConverters.Half(farads: 1e-9, ohms: 2).Build());

    [Fact]
    public void The_worst_case_of_a_divider_is_at_the_ends_that_its_closed_form_says()
    {
        // coth(x)/(4fC) with x = 1/(4fRC) falls with C and rises with R (by hand)
        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(Half(), 5e7, new ComponentTolerances(capacitance: 0.2, onResistance: 0.3));
        Near(Closed(1.2e-9, 2 * 2 * 0.7), worst.FoundOhms.Minimum!.Value);
        Near(Closed(0.8e-9, 2 * 2 * 1.3), worst.FoundOhms.Maximum!.Value);

        // one time constant: the single pair at the best values is the least impedance itself
        Assert.True(worst.IsMinimumCertain);
        Assert.False(worst.IsMaximumCertain);
        Assert.InRange(worst.BoundOhms.Maximum!.Value, worst.FoundOhms.Maximum!.Value, 1.2 * worst.FoundOhms.Maximum!.Value);

        static double Closed(double farads, double loopOhms) =>
            1 / (4 * 5e7 * farads) / Math.Tanh(1 / (4 * 5e7 * farads * loopOhms));
    }

    [Fact]
    public void At_low_frequency_the_mean_of_uniform_capacitances_is_that_of_their_inverse()
    {
        // R = 1/(4fC): with C uniform within 20 %, the mean of 1/C is ln(1.2/0.8)/0.4 per nominal C (by hand)
        ImpedanceDistribution distribution = ImpedanceTolerance.MonteCarlo(Half(), 1e3, new ComponentTolerances(capacitance: 0.2), 20_000, seed: 5);
        double expected = distribution.NominalOhms * Math.Log(1.2 / 0.8) / 0.4;
        double error = distribution.StandardDeviationOhms / Math.Sqrt(distribution.SamplesOhms.Count);
        Assert.InRange(distribution.MeanOhms, expected - (5 * error), expected + (5 * error));
        Near(distribution.NominalOhms / 1.2, distribution.QuantileOhms(0), 1e-3);
        Near(distribution.NominalOhms / 0.8, distribution.QuantileOhms(1), 1e-3);
    }

    [Fact]
    public void Samples_lie_within_the_worst_case()
    {
        ModeAnalysis analysis = Analysis(Ladder.StepDown(4, farads: 1e-9, ohms: 1));
        ComponentTolerances tolerances = new(0.1, 0.25);
        double frequency = OutputImpedance.Of(analysis).CornerFrequencyHz;
        Interval<double> range = ImpedanceTolerance.WorstCase(analysis, frequency, tolerances).FoundOhms;
        ImpedanceDistribution distribution = ImpedanceTolerance.MonteCarlo(analysis, frequency, tolerances, 3000, seed: 1);
        Assert.All(distribution.SamplesOhms, ohms => Assert.InRange(ohms, range.Minimum!.Value, range.Maximum!.Value));
        Assert.True(range.Minimum!.Value < distribution.NominalOhms && distribution.NominalOhms < range.Maximum!.Value);
    }

    [Fact]
    public void Without_tolerances_the_bound_is_the_impedance_itself()
    {
        ModeAnalysis analysis = Analysis(Ladder.StepDown(4, farads: 1e-9, ohms: 1));
        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(analysis, 1e7, new ComponentTolerances());
        Near(OutputImpedance.Of(analysis).Ohms(1e7), worst.FoundOhms.Maximum!.Value);
        Assert.True(worst.IsMinimumCertain && worst.IsMaximumCertain);
    }

    [Theory]
    [InlineData(1e-4, 1 / 1.2, 1 / 0.8)]
    [InlineData(1e4, 0.7, 1.3)]
    public void Far_from_the_corner_the_bound_is_met(double timesCorner, double minimum, double maximum)
    {
        // where one limit is all there is, the impedance is in the proportion of 1/C or of R
        ModeAnalysis analysis = Analysis(Ladder.StepDown(4, farads: 1e-9, ohms: 1));
        double frequencyHz = timesCorner * OutputImpedance.Of(analysis).CornerFrequencyHz;
        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(analysis, frequencyHz, new ComponentTolerances(capacitance: 0.2, onResistance: 0.3));
        double nominal = OutputImpedance.Of(analysis).Ohms(frequencyHz);
        Near(minimum * nominal, worst.FoundOhms.Minimum!.Value, 1e-3);
        Near(maximum * nominal, worst.FoundOhms.Maximum!.Value, 1e-3);
        Near(worst.FoundOhms.Minimum!.Value, worst.BoundOhms.Minimum!.Value, 1e-3);
        Near(worst.FoundOhms.Maximum!.Value, worst.BoundOhms.Maximum!.Value, 1e-3);
    }

    [Fact]
    public void Many_values_are_searched_along_their_slopes_and_stay_within_the_bound()
    {
        ModeAnalysis analysis = Analysis(Ladder.StepDown(6, farads: 1e-9, ohms: 1));
        ComponentTolerances tolerances = new(capacitance: 0.2, onResistance: 0.3);
        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(analysis, OutputImpedance.Of(analysis).CornerFrequencyHz, tolerances);
        Assert.True(worst.BoundOhms.Minimum!.Value <= worst.FoundOhms.Minimum!.Value && worst.FoundOhms.Maximum!.Value <= worst.BoundOhms.Maximum!.Value);
        Assert.True(worst.FoundOhms.Maximum!.Value > 1.2 * OutputImpedance.Of(analysis).Ohms(OutputImpedance.Of(analysis).CornerFrequencyHz));
    }

    [Fact]
    public void A_seed_gives_the_same_samples_whatever_runs_beside_it_and_another_gives_others()
    {
        ModeAnalysis analysis = Half();
        ComponentTolerances tolerances = new(0.2, 0.3);
        double[] Run(int seed) => [.. ImpedanceTolerance.MonteCarlo(analysis, 1e8, tolerances, 500, seed).SamplesOhms];
        double[] first = Run(3);
        double[][] together = new double[8][];
        Parallel.For(0, together.Length, i => together[i] = Run(3));
        Assert.All(together, samples => Assert.Equal(first, samples));
        Assert.NotEqual(first, Run(4));
        Assert.Equal(500, first.Distinct().Count());
        Assert.Equal(first.Take(100), ImpedanceTolerance.MonteCarlo(analysis, 1e8, tolerances, 100, 3).SamplesOhms);
    }

    /// <summary>Every bit is set by -244002641, whose product with the multiplier of the hash, 2654435761, is -1 modulo 2³², and none by zero.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-244002641)]
    public void Blocks_of_samples_differ_whatever_number_they_start_from(int seed) =>
        Assert.Equal(200, ImpedanceTolerance.MonteCarlo(Half(), 1e8, new ComponentTolerances(0.2, 0.3), 200, seed).SamplesOhms.Distinct().Count());

    [Fact]
    public void Progress_ends_at_one_and_a_cancelled_run_stops()
    {
        double last = 0;
        ImpedanceTolerance.MonteCarlo(Half(), 1e8, new ComponentTolerances(0.1), 1000, 1, new Greatest(value => last = value));
        Assert.Equal(1, last);
        using CancellationTokenSource source = new();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(
            () => ImpedanceTolerance.MonteCarlo(Half(), 1e8, new ComponentTolerances(0.1), 1000, 1, null, source.Token));
    }

    [Fact]
    public void Tolerances_of_a_hundred_percent_and_empty_runs_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new ComponentTolerances(capacitance: 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ComponentTolerances(onResistance: -0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ComponentTolerances(esr: double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => ImpedanceTolerance.MonteCarlo(Half(), 1e8, new ComponentTolerances(), 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ImpedanceTolerance.WorstCase(Half(), 0, new ComponentTolerances()));
        Assert.Throws<ArgumentOutOfRangeException>(
            () => ImpedanceTolerance.MonteCarlo(Half(), 1e8, new ComponentTolerances(0.1), 10, 1).QuantileOhms(1.5));
    }

    [Fact]
    public void Tolerances_of_a_converter_with_inductors_are_refused_by_their_code()
    {
        ModeAnalysis stage = Analysis(InductiveStages.StepDown(new Fraction(1, 4)).Build());
        ScNetException refusal = Assert.Throws<ScNetException>(() => ImpedanceTolerance.WorstCase(stage, 1e6, new ComponentTolerances(0.1)));
        Assert.Equal(
            DiagnosticCodes.InductorsUnsupported,
            Assert.Single(Assert.Throws<ScNetException>(() => ImpedanceTolerance.MonteCarlo(stage, 1e6, new ComponentTolerances(0.1), 10, 1)).Diagnostics).Code);
        Assert.Equal((DiagnosticCodes.InductorsUnsupported, "coil"), (Assert.Single(refusal.Diagnostics).Code, Assert.Single(refusal.Diagnostics[0].Elements)));
    }

    /// <summary>
    /// A current load, three phases, charges that values divide and capacitances with a tolerance: the page of limits says that
    /// no bound is known then, and that without any one of the four there is one.
    /// </summary>
    [Theory]
    [InlineData(LoadKind.Current, 3, 2, 0.1, false)]
    [InlineData(LoadKind.Stiff, 3, 2, 0.1, true)]
    [InlineData(LoadKind.Current, 2, 2, 0.1, true)]
    [InlineData(LoadKind.Current, 3, 1, 0.1, true)]
    [InlineData(LoadKind.Current, 3, 2, 0.0, true)]
    public void No_bound_is_claimed_only_where_none_is_known(LoadKind load, int phases, int capacitors, double capacitance, bool isBound)
    {
        ConverterBuilder builder = Converter.Create("side by side").Input("vin").Output("vout", load).Phases(phases)
            .Capacitor("out", "vout", "gnd", 1e-8)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);
        for (int k = 1; k <= capacitors; k++)
        {
            builder.Capacitor($"fly{k}", "p", "n", k * 1e-9, esrOhms: 0.1 / k);
        }

        ImpedanceWorstCase worst = ImpedanceTolerance.WorstCase(Analysis(builder.Build()), 1e7, new ComponentTolerances(capacitance, onResistance: 0.1));
        Assert.Equal(isBound, worst.BoundOhms.IsDetermined);
        Assert.True(worst.FoundOhms.IsDetermined);
        Assert.False(!isBound && (worst.IsMinimumCertain || worst.IsMaximumCertain));
    }

    private static void Near(double expected, double actual, double tolerance = 1e-12) => Assert.Equal(expected, actual, tolerance * expected);

    private sealed class Greatest(Action<double> set) : IProgress<double>
    {
        private readonly Lock _lock = new();
        private double _greatest;

        public void Report(double value)
        {
            lock (_lock)
            {
                _greatest = Math.Max(_greatest, value);
                set(_greatest);
            }
        }
    }
}
