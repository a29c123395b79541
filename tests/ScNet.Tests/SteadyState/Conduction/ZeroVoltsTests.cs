using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Frequencies for an output of zero volts, or of a sign that is not the load's.</summary>
/// <remarks>
/// All resistance is the coil's, 0.1 Ω, and its average voltage is zero: with a duty of 0.05 some 0.5 V of 10 V drive 5 A. The on-time is
/// kept, so that the frequency is to that of the netlist as this duty to its own.
/// </remarks>
public sealed class ZeroVoltsTests
{
    private const double Frequency = 1e6;
    private const double Henries = 1e-4;
    private const double CoilOhms = 0.1;

    [Theory]
    [InlineData(0.25, 5, 0)]
    [InlineData(0.01, 5, 0)]
    [InlineData(0.25, -5, 1)]
    [InlineData(0.01, -5, 1)]
    public void A_step_down_stage_is_told_its_duty_by_the_coils_resistance(double duty, double load, double volts)
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(duty, 1 - duty)
            .Inductor("coil", "x", "vout", Henries, CoilOhms, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, 1e-9).Switch("low", "x", Converter.ReferenceNode, on: 2, 1e-9).Build();
        double expected = Frequency * 0.05 / duty;
        Assert.Equal(expected, ConductionModel.Of(stage).AtOutputVoltage(10, load, volts, Frequency).Point.FrequencyHz, 1e-6 * expected);
    }

    /// <summary>The coil feeds the output in the second phase alone: 0.95 of its 5 A.</summary>
    [Theory]
    [InlineData(0.25)]
    [InlineData(0.01)]
    public void An_inverting_stage_rests_longer_where_its_output_is_too_negative(double duty)
    {
        Converter stage = Converter.Create("inverting").Input("vin").Output("vout").Duties(duty, 1 - duty)
            .Inductor("coil", "x", Converter.ReferenceNode, Henries, CoilOhms, untilZero: 2)
            .Switch("high", "vin", "x", on: 1, 1e-9).Switch("low", "x", "vout", on: 2, 1e-9).Build();
        double expected = Frequency * 0.05 / duty;
        Assert.Equal(expected, ConductionModel.Of(stage).AtOutputVoltage(10, -0.95 * 5, 0, Frequency).Point.FrequencyHz, 1e-3 * expected);
    }
}
