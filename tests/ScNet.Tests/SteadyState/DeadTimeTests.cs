using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

public sealed class DeadTimeTests
{
    private static readonly Fraction s_interval = new(1, 20);

    [Fact]
    public void Dead_time_equals_a_converter_with_open_phases_built_by_hand()
    {
        Converter dead = OperatedConverters.Loaded(0.3).WithDeadTime(s_interval);
        Converter byHand = Converter.Create("half").Input("vin").Output("vout", LoadKind.Current).Duties(0.45, 0.05, 0.45, 0.05)
            .Capacitor("fly", "p", "n", 2).Capacitor("out", "vout", Converter.ReferenceNode, 0.5, 0.3)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 3).Switch("s4", "n", Converter.ReferenceNode, on: 3).Build();
        Assert.Equal(byHand.Phases.Select(p => (p.Name, p.Duty)), dead.Phases.Select(p => (p.Name, p.Duty)));
        Assert.Equal(byHand.Modes[0].ClosedPhases, dead.Modes[0].ClosedPhases);
        Assert.Equal(byHand.Nodes, dead.Nodes);
        Assert.Equal((byHand.Name, byHand.Load, byHand.InputNode, byHand.OutputNode), (dead.Name, dead.Load, dead.InputNode, dead.OutputNode));
        OperatingPoint point = new(3, 0.2, 0.3);
        PeriodicSteadyState expected = PeriodicSteadyState.Of(ModeAnalysis.Of(byHand, byHand.Modes[0]), point);
        PeriodicSteadyState actual = PeriodicSteadyState.Of(ModeAnalysis.Of(dead, dead.Modes[0]), point);
        Assert.Equal(expected.OutputImpedanceOhms, actual.OutputImpedanceOhms);
        Assert.Equal(expected.OutputRippleVolts, actual.OutputRippleVolts);
        Assert.Equal(expected.Switches.Select(s => (s.RmsCurrentAmperes, s.BlockingVolts)), actual.Switches.Select(s => (s.RmsCurrentAmperes, s.BlockingVolts)));
    }

    [Fact]
    public void In_the_dead_time_no_switch_conducts_and_the_output_falls_in_a_straight_line()
    {
        Converter dead = OperatedConverters.Loaded(0).WithDeadTime(s_interval);
        PeriodicSteadyState steady = PeriodicSteadyState.Of(ModeAnalysis.Of(dead, dead.Modes[0]), new OperatingPoint(3, 0.2, 0.5));
        double[] times = [0.91, 0.94, 0.97];
        Assert.All(dead.Switches, s => Assert.Equal([0, 0, 0], steady.SampleSwitchCurrent(s.Name, times)));
        double?[] output = steady.SampleNodePotential("vout", times);
        Assert.Equal(-0.2 * 0.03 / 0.5, output[1]!.Value - output[0]!.Value, 1e-12);
        Assert.Equal(-0.2 * 0.03 / 0.5, output[2]!.Value - output[1]!.Value, 1e-12);
        Assert.Equal([null, null, null], steady.SampleNodePotential("p", times));
        Assert.All(steady.Switches, s => Assert.False(s.BlockingVolts.IsDetermined));
        Assert.All(steady.Switches, s => Assert.True(s.BlockingWhereDeterminedVolts.IsDetermined));
    }

    [Fact]
    public void Dead_time_raises_the_fast_limit_by_the_shorter_duty_and_leaves_the_slow_one()
    {
        Converter half = OperatedConverters.Half().Build();
        ModeAnalysis with = Dead(half), without = ModeAnalysis.Of(half, half.Modes[0]);
        Assert.Equal(without.Ratio, with.Ratio);
        Assert.Equal(without.FastSwitchingLimit.Ohms / 0.9, with.FastSwitchingLimit.Ohms, 1e-12);
        Assert.Equal(without.SlowSwitchingLimit.OhmsAtOneHertz, with.SlowSwitchingLimit.OhmsAtOneHertz, 1e-12);
    }

    [Fact]
    public void A_vanishing_dead_time_changes_nothing()
    {
        foreach ((string name, Func<Converter> create) in OperatedConverters.All.Where(c => c.Key != "dead time"))
        {
            Converter converter = create(), dead = converter.WithDeadTime(new Fraction(1, 1_000_000_000));
            double expected = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0])).Ohms(0.3);
            double actual = OutputImpedance.Of(ModeAnalysis.Of(dead, dead.Modes[0])).Ohms(0.3);
            Assert.True(Math.Abs(expected - actual) < 1e-6 * expected, $"{name}: expected {expected:R}, but got {actual:R}.");
        }
    }

    [Fact]
    public void Modes_values_and_names_are_kept()
    {
        Converter gears = NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-gears.toml")).GetConverter();
        Converter dead = gears.WithDeadTime(s_interval);
        Assert.True(gears.Modes.Count > 1);
        Assert.Equal(gears.Modes.Select(m => m.Name), dead.Modes.Select(m => m.Name));
        Assert.Equal(gears.Capacitors.Select(c => (c.Name, c.Farads, c.EsrOhms)), dead.Capacitors.Select(c => (c.Name, c.Farads, c.EsrOhms)));
        Assert.Equal(gears.Switches.Select(s => (s.Name, s.Ohms)), dead.Switches.Select(s => (s.Name, s.Ohms)));
        foreach ((Mode before, Mode after) in gears.Modes.Zip(dead.Modes))
        {
            Assert.Equal(before.ClosedPhases.Select(set => PhaseSet.Of([.. set.Select(p => (2 * p) - 1)])), after.ClosedPhases);
        }

        Assert.All(gears.Modes, m => Assert.Equal(ModeAnalysis.Of(gears, m).Ratio, ModeAnalysis.Of(dead, dead.Modes[m.Name]).Ratio));
    }

    [Fact]
    public void Named_phases_keep_their_names_and_intervals_are_named_after_them()
    {
        Assert.Equal(
            ["charge", "charge, dead time", "deliver", "deliver, dead time", "halve", "halve, dead time"],
            OperatedConverters.ThreePhases().WithDeadTime(s_interval).Phases.Select(p => p.Name));
        Assert.Equal(
            ["a", "a, dead time'", "a, dead time", "a, dead time, dead time"],
            OperatedConverters.Half().PhaseNames("a", "a, dead time").Build().WithDeadTime(s_interval).Phases.Select(p => p.Name));
        Assert.Equal(["1", "2", "3", "4"], OperatedConverters.Half().Build().WithDeadTime(s_interval).Phases.Select(p => p.Name));
    }

    [Fact]
    public void An_interval_that_is_not_positive_or_not_shorter_than_every_phase_is_refused()
    {
        Converter converter = OperatedConverters.All["parallel flying capacitors, unequal duties"]();
        foreach (Fraction wrong in new[] { Fraction.Zero, new Fraction(-1, 10), new Fraction(3, 10), Fraction.One, Fraction.NaN, Fraction.PositiveInfinity })
        {
            ArgumentOutOfRangeException thrown = Assert.Throws<ArgumentOutOfRangeException>(() => converter.WithDeadTime(wrong));
            Assert.Contains("positive and shorter than the shortest phase", thrown.Message, StringComparison.Ordinal);
        }

        Assert.Equal(new Fraction(1, 1000), converter.WithDeadTime(new Fraction(299, 1000)).Phases[0].Duty);
    }

    private static ModeAnalysis Dead(Converter converter)
    {
        Converter dead = converter.WithDeadTime(s_interval);
        return ModeAnalysis.Of(dead, dead.Modes[0]);
    }
}
