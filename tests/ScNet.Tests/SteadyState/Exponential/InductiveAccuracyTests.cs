using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Stiff networks, what a frequency allocates, and what is said where there is no periodic state.</summary>
public sealed class InductiveAccuracyTests
{
    /// <summary>
    /// A step-down stage beside a divider of a time constant a billion times shorter, between stiff ports: their
    /// conductances add, and the ratio is the mean of both weighed by them.
    /// </summary>
    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-9)]
    [InlineData(1e-14)]
    public void Networks_side_by_side_add_up_however_different_their_time_constants_are(double farads)
    {
        const double Frequency = 1e5, LoopOhms = 4;
        Circuit both = new Circuit(LoadKind.Stiff, 0.5, 0.5)
            .Inductor("x", "vout", 1e-6, 0.02).Switch("vin", "x", 0.01, 1).Switch("x", Converter.ReferenceNode, 0.01, 2)
            .Capacitor("p", "n", farads).Switch("vin", "p", LoopOhms / 2, 1).Switch("n", "vout", LoopOhms / 2, 1)
            .Switch("p", "vout", LoopOhms / 2, 2).Switch("n", Converter.ReferenceNode, LoopOhms / 2, 2);
        double siemens = (1 / 0.03) + (4 * Frequency * farads * Math.Tanh(1 / (4 * Frequency * LoopOhms * farads)));
        PeriodFigures found = CircuitTwoPort.Find(both, Frequency);
        Assert.Equal(1 / siemens, found.Ohms, 1e-11 / siemens);
        Assert.Equal(0.5, found.Ratios.Voltage, 1e-11);
        Assert.True(found.RelativeError < 1e-11);
    }

    [Fact]
    public void A_further_frequency_allocates_little_more_than_its_result()
    {
        Converter converter = FlyingCapacitorStage.Of(4, new Fraction(1, 5), 1e-5, 1e-6, 0.01, 0.02);
        TwoPort twoPort = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).TwoPort;
        _ = twoPort.At(1e6);
        Assert.InRange(Allocations.Of(() => twoPort.At(1.1e6)), 1, 500);
    }

    [Fact]
    public void Threads_may_ask_at_once()
    {
        Converter converter = FlyingCapacitorStage.Of(4, new Fraction(1, 5), 1e-5, 1e-6, 0.01, 0.02);
        TwoPort twoPort = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).TwoPort;
        double[] frequencies = [.. Enumerable.Range(1, 200).Select(k => 1e4 * k)];
        double[] alone = [.. frequencies.Select(f => twoPort.At(f).Ohms)], together = new double[frequencies.Length];
        Parallel.For(0, frequencies.Length, k => together[k] = twoPort.At(frequencies[k]).Ohms);
        Assert.Equal(alone, together);
    }

    /// <summary>
    /// How slowly the capacitor of a three-level stage returns: with the resistance R in the path of the current, ripple far
    /// below resonance, a disturbance lasts ever longer as the frequency grows, and ever shorter as R does.
    /// </summary>
    [Fact]
    public void Balance_by_losses_is_slower_at_a_higher_frequency_and_with_less_resistance()
    {
        double Seconds(double frequencyHz, double ohms)
        {
            Converter converter = FlyingCapacitorStage.Of(3, new Fraction(1, 5), 1e-4, 1e-6, ohms, ohms);
            TwoPortPoint point = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).TwoPort.At(frequencyHz);
            Assert.Equal(0.5, point.CapacitorVoltages[0]!.Value, 1e-9);
            Assert.Equal(point.DecayPerPeriod, Math.Exp(-1 / point.TimeConstantPeriods), 1e-12);
            return point.TimeConstantSeconds;
        }

        double seconds = Seconds(1e6, 0.01);
        Assert.InRange(Seconds(2e6, 0.01) / seconds, 3.9, 4.1);
        Assert.InRange(Seconds(1e6, 0.005) / seconds, 1.9, 2.1);
    }

    [Fact]
    public void A_lossless_inductor_across_the_input_is_said_to_have_no_periodic_state()
    {
        Converter converter = Converter.Create("short").Input("vin").Output("vout").Duties(0.5, 0.5)
            .Inductor("coil", "x", "vout", 1e-6, 0.02).Inductor("across", "vin", Converter.ReferenceNode, 1e-6)
            .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", Converter.ReferenceNode, on: 2, 0.01).Build();
        ScNetException thrown = Assert.Throws<ScNetException>(() => ExponentialTwoPort.Of(converter, converter.Modes[0]));
        Diagnostic diagnostic = Assert.Single(thrown.Diagnostics);
        Assert.Equal(DiagnosticCodes.NoPeriodicState, diagnostic.Code);
        Assert.Contains("across", diagnostic.Elements);
    }
}
