using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Loads that pull the output to zero or beyond, loads that give power, and potentials that nothing fixes.</summary>
public sealed class OverloadTests
{
    private readonly SteadyStateModel _model;
    private readonly double _ohms;

    public OverloadTests()
    {
        Converter half = OperatedConverters.Half().Build();
        _model = SteadyStateModel.Of(ModeAnalysis.Of(half, half.Modes[0]));
        _ohms = _model.At(0.3).Ohms;
    }

    [Fact]
    public void A_load_that_turns_the_sign_of_the_output_is_an_overload_and_one_of_the_other_sign_or_none_is_not()
    {
        Assert.False(At(2, 0).IsOverloaded);
        Assert.False(At(2, 0.9 / _ohms).IsOverloaded);
        Assert.True(At(2, 1.1 / _ohms).IsOverloaded);
        Assert.False(At(2, -3 / _ohms).IsOverloaded);
    }

    // an impedance, a voltage and a current whose product is exact: the current is half the voltage by the impedance
    [Fact]
    public void At_an_output_of_exactly_zero_it_is_an_overload_too_and_there_is_no_efficiency()
    {
        double volts = Enumerable.Range(1, 100).First(v => (_ohms * (0.5 * v / _ohms)) == 0.5 * v);
        PeriodicSteadyState steady = At(volts, 0.5 * volts / _ohms);
        Assert.Equal(0, steady.AverageOutputVoltageVolts);
        Assert.True(steady.IsOverloaded);
        Assert.Null(steady.ResistiveEfficiency);
        Assert.Equal(0.5 * volts / _ohms, steady.ZeroOutputCurrentAmperes, 1e-12);
    }

    [Fact]
    public void A_load_whose_current_flows_against_the_ideal_output_gives_power()
    {
        Assert.False(At(2, 0.1).IsDrivenByLoad);
        Assert.False(At(2, 0).IsDrivenByLoad);
        Assert.True(At(2, -0.1).IsDrivenByLoad);
    }

    // in dead time both plates of the flying capacitor float
    [Fact]
    public void Potentials_and_switch_voltages_are_there_in_phases_that_fix_them()
    {
        Converter rested = OperatedConverters.Half().Build().WithDeadTime(new Fractions.Fraction(1, 10));
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(rested, rested.Modes[0])).At(new OperatingPoint(2, 0.1, 0.3));
        int node = rested.Nodes.PositionOf("p");
        Assert.Null(steady.OfNode(1, node));
        Assert.Null(steady.AcrossSwitch(1, 0));
        Assert.Equal(steady.SampleNodePotential("p", [0.4])[0]!.Value, steady.OfNode(0, node)!.At(0.4), 1e-13);
        Assert.Equal(steady.SampleSwitchVoltage("s1", [0.4])[0]!.Value, steady.AcrossSwitch(0, 0)!.At(0.4), 1e-13);
        Assert.True(steady.IsClosed(0, 0));
        Assert.False(steady.IsClosed(1, 0));
        Assert.False(steady.IsClosed(0, 2));
    }

    [Fact]
    public void A_frequency_of_zero_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => _model.SensitivityAt(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _model.TwoPortSensitivityAt(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _model.TwoPort.At(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => _model.At(0));
    }

    [Fact]
    public void The_time_constant_in_seconds_is_that_in_periods_times_the_period()
    {
        TwoPortPoint point = _model.TwoPort.At(0.3);
        Assert.Equal(point.TimeConstantPeriods / 0.3, point.TimeConstantSeconds, 1e-12);

        // one farad in a loop of two ohms, in either phase
        Assert.Equal(2, point.TimeConstantSeconds, 1e-9);
        Assert.Equal(Math.Exp(-0.5 / 0.3), point.DecayPerPeriod, 1e-9);
    }

    [Fact]
    public void The_impedance_of_a_stage_with_an_inductor_is_that_of_its_two_port()
    {
        Converter stage = InductiveStages.StepDown(new Fractions.Fraction(1, 4)).Build().WithValues(ohms: [1, 3]);
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(stage, stage.Modes[0]));
        Assert.Equal(model.TwoPort.At(8).Ohms, model.Impedance.Ohms(8), 1e-13);

        // fast, the coil's current is constant: a quarter of the period through 1 Ω, else through 3 Ω
        Assert.Equal(2.5, model.Impedance.Ohms(1e4), 1e-6);
    }

    private PeriodicSteadyState At(double volts, double amperes) => _model.At(new OperatingPoint(volts, amperes, 0.3));
}
