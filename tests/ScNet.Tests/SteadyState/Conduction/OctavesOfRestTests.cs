using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>How far the rest is made longer or shorter, octave by octave, until the output voltage is met.</summary>
/// <remarks>
/// 10 V and 0.1 A on a step-down stage of 1 µH. With V of output a pulse of t brings t²/(2 L) · 10 (10 - V)/V: some 7.5 V with the times of
/// the netlist, 8.3 V with half their rest, 6.3 V with twice and 4.8 V with four times as much.
/// </remarks>
public sealed class OctavesOfRestTests
{
    private const double Frequency = 1 << 20;
    private const double Rest = 0.75;

    [Fact]
    public void Where_the_times_of_the_netlist_meet_it_no_shorter_rest_is_asked_for()
    {
        // beyond 8 V the output drives a diode to the reference
        Converter stage = Stage(b => b.Switch("clamp", Converter.ReferenceNode, "vout", diodeVolts: 8));
        double volts = Volts(stage, Rest);
        Assert.Throws<ScNetException>(() => Volts(stage, Rest / 2));
        Assert.Equal(Frequency, ConductionModel.Of(stage).AtOutputVoltage(10, 0.1, volts, Frequency).Point.FrequencyHz, 1e-12 * Frequency);
    }

    [Fact]
    public void Where_twice_the_rest_meets_it_no_longer_one_is_asked_for()
    {
        // below 5.5 V the input drives a diode to the output
        Converter stage = Stage(b => b.Switch("bypass", "vout", "vin", diodeVolts: 4.5));
        double volts = Volts(stage, 2 * Rest), expected = Frequency / (0.25 + (2 * Rest));
        Assert.Throws<ScNetException>(() => Volts(stage, 4 * Rest));
        Assert.Equal(expected, ConductionModel.Of(stage).AtOutputVoltage(10, 0.1, volts, Frequency).Point.FrequencyHz, 1e-12 * expected);
    }

    /// <summary>With next to no resistance a step-up stage gives the more the shorter its second phase is, as far as numbers go.</summary>
    [Fact]
    public void A_voltage_beyond_sixty_octaves_is_not_looked_for()
    {
        Converter stage = Stages.StepUp(new(1, 4), 1e-21);
        double volts = new ConductionSolver(stage, stage.Modes[0], 10, 5).Solve([0.25 / Frequency, Math.ScaleB(0.7 * Rest, -60) / Frequency]).Period.OutputVolts;
        Assert.Equal(10 * 0.25 / Math.ScaleB(0.7 * Rest, -60), volts, 0.1 * volts);
        ScNetException exception = Assert.Throws<ScNetException>(() => ConductionModel.Of(stage).AtOutputVoltage(10, 5, volts, Frequency));
        Assert.StartsWith("No switching frequency gives an output voltage", Assert.Single(exception.Diagnostics).Message, StringComparison.Ordinal);
    }

    private static double Volts(Converter stage, double rest) =>
        new ConductionSolver(stage, stage.Modes[0], 10, 0.1).Solve([0.25 / Frequency, rest / Frequency]).Period.OutputVolts;

    private static Converter Stage(Func<ConverterBuilder, ConverterBuilder> diode) => diode(
        Converter.Create("step-down").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.75)
            .Inductor("coil", "x", "vout", Stages.Henries, 0.01, untilZero: 2).Capacitor("out", "vout", Converter.ReferenceNode, 1e-4, esrOhms: 2e-3)
            .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", Converter.ReferenceNode, on: 2, 0.01)).Build();
}
