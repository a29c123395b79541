using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Which load steps are refused, and what a step says of itself.</summary>
public sealed class LoadStepRefusalTests
{
    private static readonly OperatingPoint s_point = new(1, 0.1, 1);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.05)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_load_that_does_not_step_up_is_refused(double amperes)
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>("loadAfterAmperes", () => LoadStep.Of(Held(), s_point, amperes, 1));
        Assert.Contains("Expected a load current above the one before of 0.1 A.", thrown.Message, StringComparison.Ordinal);
        Assert.Equal(amperes, thrown.ActualValue);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_time_that_is_not_positive_is_refused(double seconds) =>
        Assert.Throws<ArgumentOutOfRangeException>("controlPeriodSeconds", () => LoadStep.Of(Held(), s_point, 0.3, seconds));

    [Fact]
    public void Null_is_refused_by_name()
    {
        Assert.Throws<ArgumentNullException>("analysis", () => LoadStep.Of(null!, s_point, 0.3, 1));
        Assert.Throws<ArgumentNullException>("before", () => LoadStep.Of(Held(), null!, 0.3, 1));
    }

    [Fact]
    public void A_stiff_output_is_named()
    {
        Converter converter = OperatedConverters.Half().Build();
        ArgumentException thrown = Assert.Throws<ArgumentException>("analysis", () => LoadStep.Of(Analysed(converter), s_point, 0.3, 1));
        Assert.StartsWith("Expected a load current, but 'half' has a stiff load", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_output_whose_potential_nothing_holds_in_some_phase_is_refused()
    {
        ArgumentException thrown = Assert.Throws<ArgumentException>("analysis", () => LoadStep.Of(Analysed(OperatedConverters.SeeSaw()), s_point, 0.3, 1));
        Assert.StartsWith("Expected an output that something holds in every phase, but in some phase nothing does in 'see-saw'.", thrown.Message, StringComparison.Ordinal);
    }

    /// <summary>A step from 0.1 A to 0.3 A through 10 mΩ: 2 mV by the load line, whose slope has half the period's sag of 1 F in it.</summary>
    [Fact]
    public void A_step_tells_both_loads_its_droop_and_the_load_line()
    {
        LoadStep step = LoadStep.Of(Held(), s_point, 0.3, 0.125);
        Assert.Equal((0.3, 0.125), (step.LoadAfterAmperes, step.ControlPeriodSeconds));
        Assert.Equal(0.5 + 0.375, step.WorstInstantSeconds, 1e-15);
        Assert.Equal(0.924, step.LowestVolts, 1e-12);
        Assert.Equal(step.Before.AverageOutputVoltageVolts - 0.924, step.DroopVolts, 1e-12);
        Assert.Equal(step.Before.OutputImpedanceOhms * 0.2, step.LoadLineDropVolts, 1e-12);
        Assert.Equal(
            $"held, mode {step.Before.Mode}: 0.1 A to 0.3 A, {UnitText.Of(step.DroopVolts, "V")} of droop within 0.125 s, {UnitText.Of(step.LoadLineDropVolts, "V")} by the load line",
            step.ToString());
    }

    // 10 mΩ recharge 1 F in every first phase
    private static ModeAnalysis Held() => Analysed(Converter.Create("held").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("out", "vout", Converter.ReferenceNode, 1).Switch("s", "vin", "vout", on: 1, 0.01).Build());

    private static ModeAnalysis Analysed(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);
}
