using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Extremes that lie inside a phase, not at its ends.</summary>
public sealed class ExtremeTests
{
    private const double Amperes = 0.3;
    private const double Farads = 2;
    private const double OutputFarads = 0.5;
    private const double LoopOhms = 2;
    private const double HalfPeriod = 1.7;

    // Worked out by hand: in both phases the flying capacitor's current i into the output decays to
    // I C/(C + Co) with the rate (1/C + 1/Co)/(loop resistance + ESR), and its mean is the load current I.
    // The output rises while i exceeds I, so that it peaks inside the phase; an ESR moves the peak forward.
    [Theory]
    [InlineData(0)]
    [InlineData(0.2)]
    public void The_output_of_a_divider_with_a_small_output_capacitor_peaks_inside_each_phase(double esrOhms)
    {
        double rate = ((1 / Farads) + (1 / OutputFarads)) / (LoopOhms + esrOhms);
        double late = Amperes * Farads / (Farads + OutputFarads);
        double early = (Amperes - late) * rate * HalfPeriod / (1 - Math.Exp(-rate * HalfPeriod));
        double Current(double t) => late + (early * Math.Exp(-rate * t));
        double Output(double t) =>
            ((((late - Amperes) * t) + (early * (1 - Math.Exp(-rate * t)) / rate)) / OutputFarads) + (esrOhms * Current(t));
        double atPeak = (Amperes - (esrOhms * rate * OutputFarads * late)) / (1 - (esrOhms * rate * OutputFarads));
        double peakTime = -Math.Log((atPeak - late) / early) / rate;
        Assert.InRange(peakTime, 0.1 * HalfPeriod, 0.9 * HalfPeriod);

        PeriodicSteadyState steady = Operate(OperatedConverters.Loaded(esrOhms), 0.5 / HalfPeriod);
        double expected = Output(peakTime) - Math.Min(Output(0), Output(HalfPeriod));
        Assert.True(expected > 1.05 * Math.Abs(Output(HalfPeriod) - Output(0)));
        Assert.Equal(expected, steady.OutputRippleVolts!.Value, 1e-12);
        Assert.Equal(Current(0), steady.Switches[0].PeakCurrentAmperes, 1e-12);
        Assert.Equal(steady.Switches[0].PeakCurrentAmperes - Amperes, steady.Capacitors[1].PeakCurrentAmperes, 1e-12);

        double?[] samples = steady.SampleNodePotential("vout", [0, peakTime, HalfPeriod * (1 - 1e-12)]);
        Assert.Equal(Output(peakTime) - Output(0), samples[1]!.Value - samples[0]!.Value, 1e-12);
        Assert.Equal(Output(HalfPeriod) - Output(0), samples[2]!.Value - samples[0]!.Value, 1e-10);
    }

    [Fact]
    public void A_blocking_range_follows_a_peak_inside_the_phase()
    {
        Converter converter = OperatedConverters.Loaded(0).WithValues(ohms: [1.8, 0.2, 1.8, 0.2]);
        PeriodicSteadyState steady = Operate(converter, 0.5 / HalfPeriod);
        double[] times = [.. Enumerable.Range(0, 4001).Select(i => HalfPeriod * (1 - 1e-12) * i / 4000)];
        double[] blocked = [.. steady.SampleNodePotential("n", times).Select(n => n!.Value)];
        Interval<double> range = steady.Switches[3].BlockingVolts;
        Assert.True(blocked.Max() > 1.001 * Math.Max(blocked[0], blocked[^1]));
        Assert.Equal(blocked.Min(), range.Minimum!.Value, 1e-9);
        Assert.Equal(blocked.Max(), range.Maximum!.Value, 1e-6);
        Assert.True(range.Maximum!.Value >= blocked.Max() - 1e-12);
    }

    [Fact]
    public void An_extreme_exactly_on_a_point_of_the_grid_is_found()
    {
        // a parabola, the integral of a current that falls in a straight line through zero
        PhaseBasis basis = new([0], 2);
        ModalWaveform parabola = new(basis, 1, 0, [0], [-4]);
        Assert.Contains(1, basis.Grid);
        Assert.Equal((0, 1), parabola.Extremes());
        Assert.Equal(1 - (4.0 * 2 / 12), parabola.Mean(), 1e-15);
    }

    [Fact]
    public void Derivatives_too_small_to_be_multiplied_still_change_sign()
    {
        ModalWaveform parabola = new(new PhaseBasis([0], 2), 0, 1e-181, [0], [-4e-180]);
        (double least, double greatest) = parabola.Extremes();
        Assert.True(least < 0 && greatest == 1e-181, $"{least} to {greatest}");
    }

    [Fact]
    public void A_constant_is_its_own_range()
    {
        Assert.Equal((3, 3), new ModalWaveform(new PhaseBasis([5], 1), 3, 0, [0], [0]).Extremes());
        Assert.Equal((3, 3), new ModalWaveform(new PhaseBasis([], 1), 3, 0, [], []).Extremes());
    }

    private static PeriodicSteadyState Operate(Converter converter, double frequencyHz) =>
        PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(3, Amperes, frequencyHz));
}
