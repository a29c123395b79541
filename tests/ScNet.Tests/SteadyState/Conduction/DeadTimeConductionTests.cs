using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Dead times in which the coil's current flows on through body diodes.</summary>
public sealed class DeadTimeConductionTests
{
    private const double Input = 10;
    private const double Frequency = 1e6;

    [Fact]
    public void The_low_diode_takes_a_forward_current_and_lowers_the_output_by_its_voltage()
    {
        // volt-seconds of an ideal stage: 0.29 of the input less 0.04 of the forward voltage
        ConductionPoint point = ConductionModel.Of(Stages.WithDeadTimes(1e-9)).At(new(Input, 5, Frequency));
        Assert.False(point.IsDiscontinuous);
        Assert.Equal((0.29 * Input) - (0.04 * 0.7), point.AverageOutputVoltageVolts, 1e-7);
        DiodeOperation diode = Assert.Single(point.Diodes);
        Assert.Equal("low", diode.Switch.Name);

        // the current in the dead times: near its peak for 1 %, near its valley for 3 % of the period
        double rise = (Input - point.AverageOutputVoltageVolts) * 0.29 / (Frequency * Stages.Henries);
        double slope = (point.AverageOutputVoltageVolts + 0.7) / (Frequency * Stages.Henries);
        double valley = point.Steady.SampleInductorCurrent("coil", [0])[0];
        double average = (0.01 * (valley + rise - (0.005 * slope))) + (0.03 * (valley + (0.015 * slope)));
        Assert.Equal(average, diode.AverageCurrentAmperes, 1e-7);
        Assert.Equal(0.7 * average, diode.DissipationWatts, 1e-7);
        Assert.Equal(valley + rise, diode.PeakCurrentAmperes, 1e-6);
        Assert.Equal(-0.7, point.Steady.SampleNodePotential("x", [0.295 / Frequency])[0]!.Value, 1e-9);
    }

    [Fact]
    public void The_high_diode_takes_a_reverse_current()
    {
        ConductionPoint point = ConductionModel.Of(Stages.WithDeadTimes(1e-9)).At(new(Input, -5, Frequency));
        Assert.Equal((0.29 * Input) + (0.04 * (Input + 0.8)), point.AverageOutputVoltageVolts, 1e-7);
        Assert.Equal("high", Assert.Single(point.Diodes).Switch.Name);
    }

    [Fact]
    public void Each_dead_time_has_the_diode_of_its_own_current()
    {
        // with little load the valley is negative: the low diode follows the peak, the high one the valley
        ConductionPoint point = ConductionModel.Of(Stages.WithDeadTimes(1e-3)).At(new(Input, 0, Frequency));
        Assert.Equal(["high", "low"], point.Diodes.Select(d => d.Switch.Name));
        Assert.All(point.Diodes, d => Assert.True(d.DissipationWatts > 0));
        Assert.Equal(Input + 0.8, point.Steady.SampleNodePotential("x", [0.9701 / Frequency])[0]!.Value, 1e-9);
    }

    [Fact]
    public void A_current_that_a_diode_lets_end_rests_until_a_switch_closes()
    {
        // the valley is just above zero as the last dead time begins
        ConductionModel model = ConductionModel.Of(Stages.WithDeadTimes(1e-3));
        ConductionPoint point = model.At(new(Input, 1, Frequency));
        Assert.True(point.IsDiscontinuous);
        Assert.InRange(point.ConductingShares[3], 1e-4, 0.0299);
        Assert.Equal(0, point.Steady.SampleInductorCurrent("coil", [0.9999 / Frequency])[0], 1e-12);
        Assert.Equal(point.AverageOutputVoltageVolts, point.Steady.SampleNodePotential("x", [0.9999 / Frequency])[0]!.Value, 1e-9);
    }

    [Fact]
    public void A_dead_time_without_a_diode_for_its_current_is_an_error()
    {
        ScNetException exception = Assert.Throws<ScNetException>(
            () => ConductionModel.Of(Stages.WithDeadTimes(1e-3, lowVolts: null, highVolts: null)).At(new(Input, 5, Frequency)));
        Diagnostic diagnostic = Assert.Single(exception.Diagnostics);
        Assert.Equal((DiagnosticCodes.NoPeriodicState, 2), (diagnostic.Code, diagnostic.Phase));
    }

    [Fact]
    public void A_capacitance_that_drives_a_diode_beyond_its_forward_voltage_is_an_error() =>
        Assert.Throws<ScNetException>(() => ConductionModel.Of(Stages.WithDeadTimes(1e-3, junction: 1e-11)).At(new(Input, 5, Frequency)));
}
