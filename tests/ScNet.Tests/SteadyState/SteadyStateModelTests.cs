using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

public sealed class SteadyStateModelTests
{
    private static readonly OperatingPoint s_point = new(inputVoltageVolts: 2, loadCurrentAmperes: 0.1, frequencyHz: 0.3);

    [Fact]
    public void A_prepared_model_gives_what_each_result_gives_by_itself()
    {
        Converter converter = OperatedConverters.ThreePhases();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        SteadyStateModel model = SteadyStateModel.Of(analysis);
        Assert.Equal(OutputImpedance.Of(analysis).Ohms(0.3), model.Impedance.Ohms(0.3));
        Assert.Equal(OutputImpedance.Of(analysis).At(0.3).Ohms, model.At(0.3).Ohms);
        Assert.Equal(
            PeriodicSteadyState.Of(analysis, s_point).Switches.Select(s => s.RmsCurrentAmperes), model.At(s_point).Switches.Select(s => s.RmsCurrentAmperes));
        Assert.Equal(ImpedanceSensitivity.Of(analysis, 0.3).ByOnResistance, model.SensitivityAt(0.3).ByOnResistance);
    }

    [Fact]
    public void A_model_takes_other_values_of_the_same_topology_and_no_other_topology()
    {
        Converter ladder = Ladder.StepDown(3), other = ladder.WithValues([1, 2, 3], [1, 2, 3, 4, 5, 6]);
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(ladder, ladder.Modes[0]));
        double expected = OutputImpedance.Of(ModeAnalysis.Of(other, other.Modes[0])).Ohms(0.2);
        Assert.Equal(expected, model.WithValuesOf(other).Impedance.Ohms(0.2), 1e-12 * expected);
        Converter stranger = Ladder.StepDown(3);
        Assert.Throws<ArgumentException>(() => model.WithValuesOf(stranger));
    }

    [Fact]
    public void The_efficiency_is_output_per_input_power_and_null_where_either_is_not_positive()
    {
        Converter half = OperatedConverters.Half().Build();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(half, half.Modes[0]));
        PeriodicSteadyState steady = model.At(s_point);
        Assert.Equal(steady.OutputPowerWatts / steady.InputPowerWatts, steady.ResistiveEfficiency);
        Assert.Null(model.At(new OperatingPoint(2, 0, 0.3)).ResistiveEfficiency);
        Assert.Null(model.At(new OperatingPoint(2, -0.1, 0.3)).ResistiveEfficiency);
        Assert.Null(model.At(new OperatingPoint(2, 100, 0.3)).ResistiveEfficiency);
    }

    // Forwards in phase 1 and backwards in phase 2, the capacitor cancels in the average output.
    [Fact]
    public void A_switch_that_hangs_on_a_capacitor_of_no_definite_voltage_has_none_while_open_though_no_node_floats()
    {
        Converter half = OperatedConverters.Half(LoadKind.Current).Build();
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(half, half.Modes[0])).At(s_point);
        Assert.Null(steady.Capacitors[0].AverageVoltageVolts);
        Assert.False(steady.Switches[2].BlockingVolts.IsDetermined);
        Assert.Null(steady.SampleSwitchVoltage("s3", [0])[0]);
        Assert.Null(steady.SampleNodePotential("n", [0])[0]);
    }

    [Theory]
    [InlineData(1e5)]
    [InlineData(1e6)]
    public void With_a_coil_the_impedance_is_that_of_the_two_port(double frequencyHz)
    {
        Converter stage = Converter.Create("stage").Input("vin").Output("vout").Duties(0.3, 0.7).Inductor("coil", "x", "vout", 1e-6, 0.1)
            .Switch("high", "vin", "x", on: 1, ohms: 0.2).Switch("low", "x", "gnd", on: 2, ohms: 2).Build();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(stage, stage.Modes[0]));
        Assert.Equal(model.TwoPort.At(frequencyHz).Ohms, model.Impedance.Ohms(frequencyHz), 1e-12);
        Assert.NotEqual(model.TwoPort.At(2 * frequencyHz).Ohms, model.Impedance.Ohms(frequencyHz), 1e-6);
    }

    [Fact]
    public void A_node_of_another_name_is_refused()
    {
        Converter half = OperatedConverters.Half().Build();
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(half, half.Modes[0])).At(s_point);
        Assert.Throws<ArgumentException>(() => steady.SampleNodePotential("nowhere", [0]));
    }
}
