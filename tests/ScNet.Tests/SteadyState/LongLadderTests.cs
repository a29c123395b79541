using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>Ladders long enough for their phases to be taken as chains of loops, against matrix exponentials of all nodes.</summary>
public sealed class LongLadderTests
{
    public static TheoryData<int, bool, bool> Ladders => new()
    {
        { 24, false, false }, { 31, false, true }, { 30, true, false }, { 36, true, true },
    };

    [Theory]
    [MemberData(nameof(Ladders))]
    public void The_impedance_of_a_long_ladder_is_that_of_its_nodal_equations(int levels, bool isStepUp, bool hasEsr)
    {
        ModeAnalysis analysis = Analyse(levels, isStepUp, hasEsr);
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        foreach (double frequencyHz in new[] { 0.1, 1, 10 }.Select(t => t * impedance.CornerFrequencyHz))
        {
            // the exponentials lose digits with the square of the ratio
            double expected = PeriodicOracle.Of(analysis).ByExponential(frequencyHz), tolerance = isStepUp ? 1e-6 : 1e-8;
            Assert.Equal(expected, impedance.Ohms(frequencyHz), tolerance * expected);
        }
    }

    // two switches side by side that lead nowhere are a loop without a capacitor
    [Fact]
    public void A_ladder_that_a_dangling_loop_keeps_from_being_chains_has_the_same_impedance()
    {
        const int Levels = 40;
        ConverterBuilder dangling = ScNet.Testing.Networks.Ladders.Builder(Levels)
            .Switch("x1", "vin", "x", on: [1, 2]).Switch("x2", "vin", "x", on: [1, 2]);
        OutputImpedance[] impedances = [.. new[] { ScNet.Testing.Networks.Ladders.Builder(Levels).Build(), dangling.Build() }
            .Select(c => c.WithValues([.. c.Capacitors.Select((_, i) => 1 + (0.7 * (i % 5)))], [.. c.Switches.Select((_, i) => 1 + (0.3 * (i % 4)))]))
            .Select(c => OutputImpedance.Of(ModeAnalysis.Of(c, c.Modes[0])))];
        foreach (double frequencyHz in new[] { 1e-3, 0.1, 1, 10, 1e3 }.Select(t => t * impedances[0].CornerFrequencyHz))
        {
            double expected = impedances[1].Ohms(frequencyHz);
            Assert.Equal(expected, impedances[0].Ohms(frequencyHz), 1e-12 * expected);
        }
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void Both_phases_of_a_long_ladder_are_chains(int levels, bool isStepUp, bool hasEsr)
    {
        ModeAnalysis analysis = Analyse(levels, isStepUp, hasEsr);
        ResistorFlows flows = ResistorFlows.Of(analysis.Converter, FullTopology.Of(analysis.Converter, analysis.Topology));
        for (int phase = 0; phase < 2; phase++)
        {
            LoopChains chains = Assert.IsType<LoopChains>(LoopChains.TryOf(analysis.Converter, analysis.Topology.Forests[phase], flows, phase));
            Assert.NotNull(PhaseTerms.TryOf(chains, flows, phase));
        }
    }

    [Theory]
    [MemberData(nameof(Ladders))]
    public void What_the_elements_of_a_long_ladder_lose_is_what_source_and_load_leave(int levels, bool isStepUp, bool hasEsr)
    {
        SteadyStateModel model = SteadyStateModel.Of(Analyse(levels, isStepUp, hasEsr));
        PeriodicSteadyState steady = model.At(new OperatingPoint(10, 0.01, 2 * model.Impedance.CornerFrequencyHz));
        Assert.Equal(steady.DissipationWatts, OperatedConverters.ElementDissipationWatts(steady), 1e-11 * steady.DissipationWatts);
        double[] times = [0, 0.3 / steady.Point.FrequencyHz, 0.8 / steady.Point.FrequencyHz];
        for (int s = 0; s < steady.Switches.Count; s++)
        {
            // a closed switch drops its resistance times its current
            Switch element = steady.Converter.Switches[s];
            double?[] first = steady.SampleNodePotential(element.FirstNode, times), second = steady.SampleNodePotential(element.SecondNode, times);
            double[] current = steady.SampleSwitchCurrent(element.Name, times);
            for (int t = 0; t < times.Length; t++)
            {
                if (steady.Mode.ClosedPhases[s].Contains(t < 2 ? 1 : 2))
                {
                    Assert.Equal(current[t] * element.Ohms, first[t]!.Value - second[t]!.Value, 1e-9 * 10 * levels);
                }
            }
        }
    }

    [Fact]
    public void Values_very_far_apart_are_left_to_dense_rotations_and_agree_with_the_limits()
    {
        Converter ladder = Ladder.StepDown(26);
        ladder = ladder.WithValues(
            [.. ladder.Capacitors.Select((_, i) => Math.Pow(10, (i % 13) - 6))], [.. ladder.Switches.Select((_, i) => Math.Pow(10, (i % 11) - 5))]);
        ModeAnalysis analysis = ModeAnalysis.Of(ladder, ladder.Modes[0]);
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        Assert.Equal(analysis.FastSwitchingLimit.Ohms, impedance.Ohms(1e40), 1e-9 * analysis.FastSwitchingLimit.Ohms);
        Assert.Equal(analysis.SlowSwitchingLimit.OhmsAtOneHertz, 1e-40 * impedance.Ohms(1e-40), 1e-9 * analysis.SlowSwitchingLimit.OhmsAtOneHertz);
    }

    private static ModeAnalysis Analyse(int levels, bool isStepUp, bool hasEsr)
    {
        Converter ladder = isStepUp ? Ladder.StepUp(levels) : Ladder.StepDown(levels);
        ladder = ladder.WithValues(
            [.. ladder.Capacitors.Select((_, i) => 1 + (0.7 * (i % 5)))],
            [.. ladder.Switches.Select((_, i) => 1 + (0.3 * (i % 4)))],
            hasEsr ? [.. ladder.Capacitors.Select((_, i) => 0.1 + (0.05 * (i % 3)))] : null);
        return ModeAnalysis.Of(ladder, ladder.Modes[0]);
    }
}
