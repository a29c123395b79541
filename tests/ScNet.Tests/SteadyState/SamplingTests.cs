using System.Globalization;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

public sealed class SamplingTests
{
    private const double FrequencyHz = 3e6;

    private readonly PeriodicSteadyState _steady = Operate(OperatedConverters.Half(farads: 1e-9).Build());

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, true)]
    [InlineData(2, false)]
    [InlineData(3, false)]
    [InlineData(4, true)]
    [InlineData(6, false)]
    [InlineData(12345, true)]
    [InlineData(12346, false)]
    [InlineData(12348, true)]
    [InlineData(-1, false)]
    [InlineData(-2, false)]
    [InlineData(-3, true)]
    [InlineData(-4, true)]
    [InlineData(-12350, false)]
    public void On_a_boundary_the_later_phase_counts_in_every_period(int quarters, bool isFirstPhase)
    {
        // times that rounding puts before or after the boundary
        foreach (double time in new[] { quarters * 0.25 / FrequencyHz, quarters / (4 * FrequencyHz), 0.25 * quarters * (1 / FrequencyHz) })
        {
            Assert.Equal(isFirstPhase, _steady.SampleSwitchCurrent("s1", [time])[0] != 0);
        }
    }

    [Theory]
    [InlineData("s1")]
    [InlineData("s4")]
    public void Across_a_switch_lies_the_drop_of_its_current_while_closed_and_its_blocking_range_while_open(string name)
    {
        SwitchOperation operation = _steady.Switches.Single(s => s.Switch.Name == name);
        double[] times = [.. Enumerable.Range(0, 40).Select(i => (i + 0.5) / 40 / FrequencyHz)];
        double?[] voltages = _steady.SampleSwitchVoltage(name, times);
        double[] currents = _steady.SampleSwitchCurrent(name, times);
        bool isOpenFirst = name == "s4";
        for (int i = 0; i < times.Length; i++)
        {
            if (i < 20 == isOpenFirst)
            {
                Assert.InRange(voltages[i]!.Value, operation.BlockingVolts.Minimum!.Value - 1e-12, operation.BlockingVolts.Maximum!.Value + 1e-12);
            }
            else
            {
                Assert.Equal(operation.Switch.Ohms * currents[i], voltages[i]!.Value, 1e-12);
            }
        }

        PeriodicSteadyState rested = Operate(OperatedConverters.Half(farads: 1e-9).Build().WithDeadTime(new Fractions.Fraction(1, 10)));
        Assert.Null(rested.SampleSwitchVoltage(name, [0.45 / FrequencyHz])[0]);
    }

    [Fact]
    public void Times_are_taken_modulo_the_period()
    {
        double[] times = [.. Enumerable.Range(0, 20).Select(i => (i + 0.3) / 20 / FrequencyHz)];
        double[] expected = _steady.CapacitorVoltage("fly", times);
        foreach (int periods in new[] { -1000, -1, 1, 1000 })
        {
            double[] shifted = _steady.CapacitorVoltage("fly", [.. times.Select(t => t + (periods / FrequencyHz))]);
            Assert.Equal(expected, shifted, (a, b) => Math.Abs(a - b) < 1e-9);
        }
    }

    [Fact]
    public void The_capacitor_voltage_has_no_step_at_any_boundary()
    {
        PeriodicSteadyState steady = Operate(OperatedConverters.ThreePhases().WithDeadTime(new Fractions.Fraction(1, 50)));
        double end = 0;
        foreach (Phase phase in steady.Converter.Phases)
        {
            end += phase.Duty.ToDouble() / FrequencyHz;
            double[] around = steady.CapacitorVoltage("fly1", [end * (1 - 1e-13), end]);
            Assert.Equal(around[0], around[1], 1e-10);
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e305)]
    public void A_time_that_is_not_finite_is_refused(double time)
    {
        ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => _steady.SampleSwitchCurrent("s1", [0, time]));
        Assert.Equal("timesSeconds", thrown.ParamName);
        Assert.StartsWith("Expected finite times in seconds, but the one at index 1 is not.", thrown.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Unknown_names_and_missing_arguments_are_refused()
    {
        Assert.Throws<ArgumentException>(() => _steady.SampleSwitchCurrent("s9", [0]));
        Assert.Throws<ArgumentException>(() => _steady.SampleCapacitorVoltage("s1", [0]));
        Assert.Throws<ArgumentException>(() => _steady.SampleCapacitorCurrent("s1", [0]));
        Assert.Contains("'half' has no node 'q'", Assert.Throws<ArgumentException>(() => _steady.SampleNodePotential("q", [0])).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentNullException>(() => _steady.SampleNodePotential("p", null!));
        Assert.Throws<ArgumentNullException>(() => PeriodicSteadyState.Of(null!, _steady.Point));
        Assert.Empty(_steady.SampleSwitchCurrent("s1", []));
    }

    [Fact]
    public void A_capacitor_whose_voltage_nothing_fixes_has_a_ripple_but_no_average()
    {
        Converter series = Converter.Create("series").Input("vin").Output("vout")
            .Capacitor("a", "p", "m", 1).Capacitor("b", "m", "n", 3)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2)
            .Build();
        PeriodicSteadyState steady = Operate(series, 0.5);
        Assert.Equal(0.1 / 2 / 0.5 / 1, steady.Capacitors[0].RippleVolts, 1e-12);
        Assert.Equal(0.1 / 2 / 0.5 / 3, steady.Capacitors[1].RippleVolts, 1e-12);
        Assert.All(steady.Capacitors, c => Assert.Null(c.AverageVoltageVolts));
        Assert.Equal([null, null], steady.SampleCapacitorVoltage("a", [0, 1.5]));
        Assert.Equal([null, null], steady.SampleNodePotential("m", [0, 1.5]));
        Assert.All(steady.SampleNodePotential("p", [0, 1.5]), v => Assert.NotNull(v));
        Assert.Equal(0, steady.SampleCapacitorCurrent("a", [0.3])[0] - steady.SampleCapacitorCurrent("b", [0.3])[0], 1e-12);
        Assert.All(steady.Switches, s => Assert.True(s.BlockingVolts.IsDetermined));
    }

    [Fact]
    public void An_output_with_an_average_but_no_potential_has_no_ripple_either()
    {
        Converter converter = OperatedConverters.SeeSaw();
        PeriodicSteadyState steady = Operate(converter, 0.5);
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        Assert.Null(steady.OutputRippleVolts);
        Assert.Equal([null, null], steady.SampleNodePotential("vout", [0.1, 1.1]));
        Assert.Equal((3 * analysis.Ratio.ToDouble()) - (0.1 * steady.OutputImpedanceOhms), steady.AverageOutputVoltageVolts, 1e-12);
        Assert.Equal(steady.InputPowerWatts - steady.OutputPowerWatts, steady.DissipationWatts, 1e-12);
    }

    [Fact]
    public void A_node_that_floats_has_no_potential_and_its_switch_no_blocking_range()
    {
        // without the second half of s7, fly2 floats while fly1 delivers
        NetworkSketch sketch = NetworkSketch.Of(OperatedConverters.ThreePhases());
        sketch = sketch with { Switches = [.. sketch.Switches.Select((s, i) => i == 6 ? s with { Phases = 0b100 } : s)] };
        Converter converter = sketch.Build();
        PeriodicSteadyState steady = Operate(converter, 0.5);
        string floating = converter.Switches[6].FirstNode;
        Assert.Equal([false, true, false], steady.SampleNodePotential(floating, [0.25, 1, 1.75]).Select(v => v is null));
        Assert.False(steady.Switches[0].BlockingVolts.IsDetermined);
        Assert.False(steady.Switches[6].BlockingVolts.IsDetermined);
        Assert.True(steady.Switches[3].BlockingVolts.IsDetermined);
        Assert.Equal(steady.Switches[3].BlockingVolts, steady.Switches[3].BlockingWhereDeterminedVolts);
        double[] halving = [.. Enumerable.Range(0, 200).Select(i => 1.5 + (i / 400.0))];
        Assert.Equal(
            steady.SampleNodePotential(converter.Switches[0].SecondNode, halving).Max(v => 3 - v!.Value),
            steady.Switches[0].BlockingWhereDeterminedVolts.Maximum!.Value,
            1e-3);
        Assert.NotNull(steady.Capacitors[1].AverageVoltageVolts);
    }

    [Fact]
    public void A_switch_that_is_never_open_blocks_nothing_and_one_that_never_closes_carries_nothing()
    {
        PeriodicSteadyState steady = Operate(OperatedConverters.Half()
            .Switch("always", "vout", "x", on: [1, 2]).Capacitor("on", "x", Converter.ReferenceNode)
            .Switch("never", "vin", "vout").Switch("self", "p", "p", on: 1).Build(), 0.5);
        Assert.False(steady.Switches[4].BlockingVolts.IsDetermined);
        Assert.False(steady.Switches[4].BlockingWhereDeterminedVolts.IsDetermined);
        Assert.Equal((0, 0, 0), (steady.Switches[5].RmsCurrentAmperes, steady.Switches[5].PeakCurrentAmperes, steady.Switches[5].DissipationWatts));
        Assert.Equal(3 - steady.AverageOutputVoltageVolts, steady.Switches[5].BlockingVolts.Minimum!.Value, 1e-12);
        Assert.Equal(0, steady.Switches[6].RmsCurrentAmperes);
        Assert.Equal([0.0], steady.SampleSwitchCurrent("self", [0.1]));
    }

    [Fact]
    public void A_mode_without_a_result_is_refused()
    {
        Converter shorted = OperatedConverters.Half().Switch("bad", "vin", Converter.ReferenceNode, on: 1).Build();
        Assert.Throws<ScNetException>(() => PeriodicSteadyState.Of(ModeAnalysis.Of(shorted, shorted.Modes[0]), _steady.Point));
    }

    [Theory]
    [InlineData(0.0, 1, 1)]
    [InlineData(-1.0, 1, 1)]
    [InlineData(double.NaN, 1, 1)]
    [InlineData(1, double.NaN, 1)]
    [InlineData(1, double.NegativeInfinity, 1)]
    [InlineData(1, 1e61, 1)]
    [InlineData(1, -1e-61, 1)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 1, double.PositiveInfinity)]
    public void An_operating_point_out_of_range_is_refused(double volts, double amperes, double hertz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new OperatingPoint(volts, amperes, hertz));

    [Fact]
    public void Many_threads_may_use_one_steady_state_in_any_culture()
    {
        double[] times = [.. Enumerable.Range(0, 50).Select(i => i / 50.0 / FrequencyHz)];
        Converter converter = OperatedConverters.ThreePhases();
        PeriodicSteadyState alone = Operate(converter), shared = Operate(converter);
        double expected = alone.DissipationWatts;
        double[] samples = alone.CapacitorVoltage("fly1", times);
        Parallel.For(0, 64, i =>
        {
            CultureInfo before = CultureInfo.CurrentCulture;
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(i % 2 == 0 ? "de-DE" : "ar-SA");
            try
            {
                Assert.Equal(expected, shared.DissipationWatts);
                Assert.Equal(samples, shared.CapacitorVoltage("fly1", times));
                Assert.Equal(alone.Switches[0].BlockingVolts.ToString(), shared.Switches[0].BlockingVolts.ToString());
            }
            finally
            {
                CultureInfo.CurrentCulture = before;
            }
        });
    }

    private static PeriodicSteadyState Operate(Converter converter, double frequencyHz = FrequencyHz) =>
        PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(3, 0.1, frequencyHz));
}
