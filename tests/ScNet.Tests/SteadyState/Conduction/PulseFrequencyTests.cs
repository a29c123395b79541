using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>A fixed on-time, and the frequency that a load asks for.</summary>
public sealed class PulseFrequencyTests
{
    private const double OnTimeFrequency = 1e6;

    /// <summary>
    /// Each pulse of an ideal step-down stage brings the charge of a triangle of current; I = f · charge. Derived here: base
    /// D/f₀ · V_in/V_out, height (V_in − V_out) D/(f₀ L).
    /// </summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(1e-3)]
    [InlineData(1e-7)]
    public void Pulses_of_an_ideal_step_down_stage_follow_the_load(double load)
    {
        const double Input = 10, Output = 2.5, OnTime = 0.15 / OnTimeFrequency;
        double charge = 0.5 * OnTime * (Input / Output) * (Input - Output) * OnTime / Stages.Henries;
        ConductionPoint point = ConductionModel.Of(Stages.StepDown(new(15, 100))).AtOutputVoltage(Input, load, Output, OnTimeFrequency);
        Assert.True(point.IsDiscontinuous);
        Assert.Equal(load / charge, point.Point.FrequencyHz, 1e-6 * load / charge);
        Assert.Equal(Output, point.AverageOutputVoltageVolts, 1e-10 * Output);
        Assert.Equal(OnTime * point.Point.FrequencyHz, point.ConductingShares[0], 1e-12);
    }

    [Theory]
    [InlineData(0.01, 3)]
    [InlineData(0.3, 3)]
    [InlineData(4, 3)]
    [InlineData(0.02, 12)]
    public void The_wanted_voltage_is_met_with_losses_and_an_output_capacitor(double load, double output)
    {
        Converter converter = output < 10 ? Stages.StepDown(new(3, 10), 0.03, LoadKind.Current) : Stages.StepUp(new(3, 10), 0.03, LoadKind.Current);
        ConductionModel model = ConductionModel.Of(converter);
        ConductionPoint point = model.AtOutputVoltage(10, load, output, OnTimeFrequency);
        Assert.Equal(output, point.AverageOutputVoltageVolts, 1e-10 * output);
        Assert.Equal(0.3 / OnTimeFrequency, point.ConductingShares[0] / point.Point.FrequencyHz, 1e-12 / OnTimeFrequency);
        Assert.Equal(load < 1, point.IsDiscontinuous);
    }

    [Fact]
    public void A_voltage_beyond_the_stage_has_no_frequency()
    {
        ConductionModel model = ConductionModel.Of(Stages.StepDown(new(3, 10), 0.03));
        ScNetException exception = Assert.Throws<ScNetException>(() => model.AtOutputVoltage(10, 0.1, 11, OnTimeFrequency));
        Assert.Equal(DiagnosticCodes.NoPeriodicState, Assert.Single(exception.Diagnostics).Code);
    }

    [Fact]
    public void A_mode_without_a_phase_that_a_current_ends_is_refused() =>
        Assert.Throws<ArgumentException>(() => ConductionModel.Of(Stages.WithDeadTimes(0.01)).AtOutputVoltage(10, 0.1, 3, OnTimeFrequency));
}
