using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>The stretches of a network, what conducts in them, how long they last and what flows as they begin and end.</summary>
public sealed class ConductionStretchesTests
{
    private const double Input = 10;

    [Fact]
    public void A_phase_that_a_current_ends_is_followed_by_one_with_every_switch_open()
    {
        ConductionNetwork network = Of(Stages.StepDown(new(3, 10)), [[], []], [false, true]);
        Assert.Equal([new(0, false, false), new(1, false, true), new(1, true, false)], network.Stretches);
        Assert.Equal([[true, false], [false, true], [false, false]], network.Structure.Network.Closed);
        Assert.Empty(network.Diodes);
        Assert.Equal([0.3, 0.35, 0.35], network.Solver.Fine.Duties.Select(d => d.Nearest), Closeness.Within(1e-15));
    }

    [Fact]
    public void Series_resistances_conduct_after_an_event_as_before_it()
    {
        ConductionNetwork network = Of(Stages.StepDown(new(3, 10), load: LoadKind.Current), [[], []], [false, true]);
        Assert.Equal([[true, false, true], [false, true, true], [false, false, true]], network.Structure.Network.Closed);
    }

    [Fact]
    public void Diodes_are_resistors_of_their_phases_up_to_the_event()
    {
        ConductionNetwork network = Of(Stages.WithDeadTimes(0.01), [[], [1], [], [1, 0]], [false, false, false, true]);
        Assert.Equal([0, 1], network.Diodes);
        Assert.Equal([2, 3], new[] { network.DiodeResistor(0), network.DiodeResistor(1) });
        Assert.Equal(2, network.Structure.Network.FirstDiode);
        Assert.Equal(
            [[true, false, false, false], [false, false, false, true], [false, true, false, false], [false, false, true, true], [false, false, false, false]],
            network.Structure.Network.Closed);
        NodePair low = network.Structure.Network.Resistors[3];
        Assert.Equal(network.Structure.Network.Resistors[1], low);
        Assert.Equal([0.29, 0.01, 0.67, 0.015, 0.015], network.Solver.Fine.Duties.Select(d => d.Nearest), Closeness.Within(1e-15));
    }

    [Fact]
    public void Events_take_their_share_of_a_phase_and_the_rest_lasts_what_is_left()
    {
        ConductionNetwork network = Of(Stages.StepDown(new(3, 10)), [[], []], [false, true]);
        double[] phases = [3e-7, 7e-7];
        ConductionSolution solution = ConductionSolution.TryOf(network, phases, [1], [0.25], Input, 0.2)!;
        Assert.Equal([3e-7, 1.75e-7], solution.ConductingSeconds, Closeness.Within(1e-21));
        Assert.Equal([3e-7, 7e-7], solution.PhaseSeconds, Closeness.Within(1e-21));
        Assert.Equal([0.3, 0.175, 0.525], solution.Period.Solver.Fine.Duties.Select(d => d.Nearest), Closeness.Within(1e-15));
        Assert.Equal([3e-7, 7e-7], phases);
    }

    /// <summary>
    /// An ideal step-down stage at a duty of 0.3 in 1 µs: 3 V out, 7 V across 1 µH for 0.3 µs, a swing of 2.1 A about the load.
    /// </summary>
    [Theory]
    [InlineData(2, 0.95, 3.05, 3.05, false)]
    [InlineData(0.5, -0.55, 1.55, 1.55, true)]
    [InlineData(-2, -3.05, -0.95, 3.05, false)]
    public void Currents_swing_about_the_load(double load, double valley, double peak, double largest, bool passes)
    {
        ConductionPeriod period = Period(Stages.StepDown(new(3, 10)), [3e-7, 7e-7], load);
        Assert.Equal(3, period.OutputVolts, 1e-6);
        Assert.Equal([valley, peak], new[] { period.StartCurrent(0, 0), period.EndCurrent(0, 0) }, Closeness.Within(1e-6));
        Assert.Equal([peak, valley], new[] { period.StartCurrent(1, 0), period.EndCurrent(1, 0) }, Closeness.Within(1e-6));
        Assert.Equal(largest, period.LargestCurrent(0), 1e-6);
        foreach (int stretch in (int[])[0, 1])
        {
            Assert.Equal(passes, period.PassesZero(stretch, 0, mayTurn: false));
            Assert.Equal(passes, period.PassesZero(stretch, 0, mayTurn: true));
            (double least, double greatest) = period.AtEnds(stretch, period.Solver.Fine.Row(period.Solver.Fine.Inductors, 0));
            Assert.Equal([valley, peak], new[] { least, greatest }, Closeness.Within(1e-6));
        }
    }

    [Fact]
    public void A_current_that_returns_passes_zero_only_where_it_may_turn()
    {
        // 1 µH and 2 nF ring four times in the second phase, about the load of 10 mA by far more than that
        const double Ring = 2.80993e-7;
        Converter stage = Stages.StepDown(new(1, 20), 0.05, LoadKind.Current, 2e-9);
        ConductionPeriod[] periods = [.. Enumerable.Range(0, 8).Select(k => Period(stage, [3e-8, (4 + (k / 8.0)) * Ring], 0.01))];
        Assert.All(periods, p => Assert.True(p.PassesZero(1, 0, mayTurn: true)));
        Assert.All(periods, p => Assert.Equal(p.StartCurrent(1, 0) * p.EndCurrent(1, 0) < 0, p.PassesZero(1, 0, mayTurn: false)));
        Assert.Contains(periods, p => p.StartCurrent(1, 0) > 0 && p.EndCurrent(1, 0) > 0);
        Assert.Contains(periods, p => p.EndCurrent(1, 0) < 0);
    }

    private static ConductionPeriod Period(Converter converter, double[] seconds, double loadAmperes) => ConductionPeriod.TryOf(
        Of(converter, [[], []], [false, false]),
        [.. seconds.Select(DoubleDouble.Of)],
        DoubleDouble.Of(seconds[0]) + DoubleDouble.Of(seconds[1]),
        Input,
        loadAmperes)!;

    private static ConductionNetwork Of(Converter converter, int[][] conducting, bool[] endsEarly) =>
        ConductionNetwork.Of(converter, converter.Modes[0], Input, conducting, endsEarly);
}
