using Fractions;
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

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void Several_coils_flow_on_at_once_each_through_its_own_diode(int legs)
    {
        // each leg is high for a part of the period of its own, less the dead time; all of its dead times cost a forward voltage
        Fraction dead = new(1, 100);
        int phases = 2 * legs;
        ConverterBuilder builder = Converter.Create("legs").Input("vin").Output("vout")
            .Duties([.. Enumerable.Range(0, phases).Select(j => new Fraction(j % 2 == 0 ? 3 : 2, 5 * legs))]);
        for (int k = 0; k < legs; k++)
        {
            builder.Switch($"high {k}", "vin", $"x{k}", on: [(2 * k) + 1], 1e-6, diodeVolts: 0.8)
                .Switch($"low {k}", $"x{k}", Converter.ReferenceNode, on: [.. Enumerable.Range(1, phases).Where(p => p != (2 * k) + 1)], 1e-6, diodeVolts: 0.7)
                .Inductor($"coil {k}", $"x{k}", "vout", Stages.Henries, 1e-6);
        }

        ConductionPoint point = ConductionModel.Of(builder.Build().WithDeadTime(dead)).At(new(Input, 5 * legs, Frequency));
        double high = 0.6 / legs - 0.01;
        Assert.Equal((high * Input) - (phases * 0.01 * 0.7), point.AverageOutputVoltageVolts, 1e-4);
        Assert.Equal(legs, point.Diodes.Count);
        Assert.All(point.Diodes, d => Assert.StartsWith("low", d.Switch.Name, StringComparison.Ordinal));
        Assert.All(point.Steady.Inductors, l => Assert.Equal(5, l.AverageCurrentAmperes, 1e-3));

        // a line falls and rises by the same, so that the mean in the dead times is near that of the period
        Assert.All(point.Diodes, d => Assert.Equal(5 * phases * 0.01, d.AverageCurrentAmperes, 0.05 * 5 * phases * 0.01 + 0.02));
        double inOut = point.Steady.InputPowerWatts - point.Steady.OutputPowerWatts;
        Assert.Equal(inOut, point.DissipationWatts, 1e-10 * point.Steady.InputPowerWatts);
        Assert.Equal(point.Diodes.Sum(d => d.DissipationWatts), point.DissipationWatts, 1e-3);
    }

    [Fact]
    public void A_coil_behind_flying_capacitors_flows_on_through_two_diodes_in_series()
    {
        Fraction fifth = new(1, 5), rest = new(3, 10);
        Converter stage = Converter.Create("three levels").Input("vin").Output("vout").Duties(fifth, rest, fifth, rest)
            .Switch("u1", "vin", "t", on: 1, 1e-6, diodeVolts: 0.7).Switch("u2", "t", "x", on: 3, 1e-6, diodeVolts: 0.7)
            .Switch("d2", "x", "b", on: [1, 2, 4], 1e-6, diodeVolts: 0.7).Switch("d1", "b", Converter.ReferenceNode, on: [2, 3, 4], 1e-6, diodeVolts: 0.7)
            .Capacitor("fly", "t", "b", 1e-3).Inductor("coil", "x", "vout", Stages.Henries, 1e-3).Build();
        ConductionPoint point = ConductionModel.Of(stage.WithDeadTime(new Fraction(1, 100))).At(new(Input, 5, Frequency));

        // One active interval gives the input less the capacitor, the other the capacitor. A rising current charges late and discharges
        // late: slope · interval² / (12 C) more in each, with 3.16 A/µs some 4 µV of the average; the switches take 10 µV.
        Assert.Equal((0.19 * Input) - (4 * 0.01 * 2 * 0.7) - (5 * 1e-3), point.AverageOutputVoltageVolts, 2e-5);
        Assert.Equal(["d2", "d1"], point.Diodes.Select(d => d.Switch.Name));
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
