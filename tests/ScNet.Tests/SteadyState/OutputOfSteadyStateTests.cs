using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The output of a periodic solution where its ideal voltage is zero or not there, and its ripple where it has none.</summary>
public sealed class OutputOfSteadyStateTests
{
    private static readonly OperatingPoint s_point = new(2, 0.1, 0.3);

    // v = (1 - fly)/5 + fly/4 on average, and a controller holds fly at minus four times the input
    [Fact]
    public void Against_an_ideal_output_of_zero_no_load_gives_power()
    {
        Converter stage = Uneven(new(-4, 1));
        foreach (double amperes in new[] { -0.1, 0.1 })
        {
            PeriodicSteadyState steady = Operate(stage, new OperatingPoint(2, amperes, 10));
            Assert.Equal(0, steady.IdealOutputVoltageVolts);
            Assert.False(steady.IsDrivenByLoad);
        }
    }

    [Fact]
    public void A_stiff_load_has_no_ripple_whatever_the_waveforms_are()
    {
        PeriodicSteadyState steady = Operate(OperatedConverters.Half().Build(), s_point);
        Assert.Equal(0, steady.OutputRippleVolts);
        Assert.Equal(0, Allocations.Of(() => _ = steady.OutputRippleVolts));
    }

    // The flying capacitor of no definite voltage lies between input and output for a quarter and across the output for another, in
    // which its voltage cancels; for half the period the output is on the input.
    [Fact]
    public void An_output_whose_potential_one_phase_fixes_and_others_do_not_has_no_ripple_to_tell()
    {
        Converter converter = Converter.Create("half and whole").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.25, 0.5).Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "vin", "vout", on: 3).Build();
        PeriodicSteadyState steady = Operate(converter, s_point);
        Assert.Equal(2 * 0.75, steady.IdealOutputVoltageVolts, 1e-14);
        double?[] samples = steady.SampleNodePotential("vout", [0.1, 1.2, 2.5]);
        Assert.Equal((null, null), (samples[0], samples[1]));
        Assert.Equal(2 - 0.1, samples[2]!.Value, 1e-12);
        Assert.Null(steady.OutputRippleVolts);
    }

    // with uneven intervals the output moves with the flying capacitor, whose voltage resistances decide
    [Fact]
    public void Where_losses_decide_the_ratio_the_ideal_output_is_that_without_load()
    {
        Converter stage = Uneven(null);
        Assert.False(ModeAnalysis.Of(stage).Ratio.IsDetermined);
        PeriodicSteadyState steady = Operate(stage, new OperatingPoint(2, 0.1, 10));
        Assert.Equal(steady.OpenOutputVoltageVolts, steady.IdealOutputVoltageVolts);
        Assert.Equal(Operate(stage, new OperatingPoint(2, 0, 10)).AverageOutputVoltageVolts, steady.IdealOutputVoltageVolts, 1e-12);
        Assert.NotEqual(steady.AverageOutputVoltageVolts, steady.IdealOutputVoltageVolts, 1e-3);
    }

    // three levels
    private static Converter Uneven(Fraction? controlled) =>
        InductiveStages.MultiLevel(3, [new(1, 5), new(3, 10), new(1, 4), new(1, 4)], [[1], [], [2], []], [controlled]).Build();

    private static PeriodicSteadyState Operate(Converter converter, OperatingPoint point) => PeriodicSteadyState.Of(ModeAnalysis.Of(converter), point);
}
