using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>The waveform of the input current of stages with an inductor against what is known of it by other ways.</summary>
public sealed class InputCurrentTests
{
    [Fact]
    public void Its_mean_carries_the_input_power()
    {
        Converter converter = FlyingCapacitorStage.Of(4, new(4, 21), 1e-6, 1e-6, 0.05, 0.02);
        PeriodicSteadyState steady = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(4.2, 0.3, 2e6));
        const int Samples = 42_000;
        double[] times = [.. Enumerable.Range(0, Samples).Select(k => (k + 0.5) / (Samples * 2e6))];
        Assert.Equal(steady.InputPowerWatts / 4.2, steady.SampleInputCurrent(times).Average(), 1e-8);
    }

    /// <summary>
    /// Straight lines: in the first phase of a step-down stage the input carries the coil's current, else nothing. Erickson and
    /// Maksimovic, Fundamentals of Power Electronics, chapter 2 (from memory).
    /// </summary>
    [Fact]
    public void A_step_down_stage_draws_the_current_of_its_coil()
    {
        Converter converter = InductiveStage.StepDown(new(1, 4), 10e-6, 1e-6);
        PeriodicSteadyState steady = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(4, 2, 1e6));
        double ripple = 0.75 * 1 / (10e-6 * 1e6);
        Assert.Equal(2 + (ripple / 2), steady.InputRippleAmperes, 1e-5);
        Assert.Equal(Math.Sqrt(0.25 * (4 + (ripple * ripple / 12))), steady.InputRmsCurrentAmperes, 1e-5);
    }
}
