using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Analysis;

namespace ScNet.Tests.Laws;

/// <summary>What nodes, elements and phases are called, and in which order they stand, does not matter.</summary>
[Trait("Kind", "Law")]
public sealed class RelabellingLaws
{
    [Fact]
    public void Other_numbers_of_nodes_and_elements_change_nothing() => Check((sketch, order, analysis) =>
    {
        int[] nodes = [0, 1, 2, .. Permutation(sketch.NodeCount - 3, order).Select(n => n + 3)];
        int[] capacitors = Permutation(sketch.Capacitors.Count, order);
        int[] switches = Permutation(sketch.Switches.Count, order);
        ModeAnalysis other = LawSample.Analyse(sketch with
        {
            Capacitors = [.. capacitors.Select(c => sketch.Capacitors[c]).Select(c => c with { Positive = nodes[c.Positive], Bottom = nodes[c.Bottom] })],
            Switches = [.. switches.Select(s => sketch.Switches[s]).Select(s => s with { First = nodes[s.First], Second = nodes[s.Second] })],
        });
        AssertSamePoint(analysis, other, capacitors, switches, Enumerable.Range(0, sketch.PhaseCount).ToArray());
        AssertSameFlow(analysis, other, capacitors, switches, Enumerable.Range(0, sketch.PhaseCount).ToArray());
    });

    [Fact]
    public void Another_first_phase_turns_the_flow_with_it() => Check((sketch, order, analysis) =>
    {
        int turn = 1 + (order % (sketch.PhaseCount - 1));
        int[] phases = [.. Enumerable.Range(0, sketch.PhaseCount).Select(j => (j + turn) % sketch.PhaseCount)];
        ModeAnalysis other = LawSample.Analyse(WithPhases(sketch, phases));
        AssertSamePoint(analysis, other, All(sketch.Capacitors), All(sketch.Switches), phases);
        AssertSameFlow(analysis, other, All(sketch.Capacitors), All(sketch.Switches), phases);
    });

    [Fact]
    public void Any_order_of_the_phases_gives_the_same_ratio_and_voltages() => Check((sketch, order, analysis) =>
    {
        int[] phases = Permutation(sketch.PhaseCount, order);
        ModeAnalysis other = LawSample.Analyse(WithPhases(sketch, phases));
        AssertSamePoint(analysis, other, All(sketch.Capacitors), All(sketch.Switches), phases);
    });

    [Fact]
    public void An_exchange_of_terminals_turns_the_signs() => Check((sketch, _, analysis) =>
    {
        ModeAnalysis other = LawSample.Analyse(sketch with
        {
            Capacitors = [.. sketch.Capacitors.Select(c => c with { Positive = c.Bottom, Bottom = c.Positive })],
            Switches = [.. sketch.Switches.Select(s => s with { First = s.Second, Second = s.First })],
        });
        LawSample.AssertSame(analysis.Ratio, other.Ratio, "ratio");
        for (int c = 0; c < sketch.Capacitors.Count; c++)
        {
            LawSample.AssertSame(-analysis.IdealPoint.CapacitorVoltages[c], other.IdealPoint.CapacitorVoltages[c], $"c{c}");
            AssertOpposite(analysis.ChargeFlow.Capacitors[c], other.ChargeFlow.Capacitors[c], $"c{c}");
        }

        for (int s = 0; s < sketch.Switches.Count; s++)
        {
            AssertOpposite(analysis.ChargeFlow.Switches[s], other.ChargeFlow.Switches[s], $"s{s}");
            AssertOpposite(analysis.BlockingVoltages.Switches[s], other.BlockingVoltages.Switches[s], $"s{s}");
        }
    });

    private static void Check(Action<NetworkSketch, int, ModeAnalysis> law, [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        Gen.Select(RandomNetworks.Any, Gen.Int[0, 1000]).Holds(
            (sketch, order) =>
            {
                if (LawSample.Try(sketch).Analysis is { } analysis)
                {
                    Interlocked.Increment(ref checkedCount);
                    law(sketch, order, analysis);
                }
            },
            count: 1000,
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= 200, $"Only {checkedCount} of 1000 networks had a result.");
    }

    private static int[] All<T>(IReadOnlyList<T> elements) => [.. Enumerable.Range(0, elements.Count)];

    private static int[] Permutation(int count, int seed)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        new Random(seed).Shuffle(order);
        return order;
    }

    // phases[j] is the old phase that takes place in the new phase j
    private static NetworkSketch WithPhases(NetworkSketch sketch, int[] phases) => sketch with
    {
        Duties = [.. phases.Select(old => sketch.Duties[old])],
        Switches = [.. sketch.Switches.Select(s => s with { Phases = phases.Select((old, j) => ((s.Phases >> old) & 1) << j).Sum() })],
    };

    private static void AssertSamePoint(ModeAnalysis expected, ModeAnalysis actual, int[] capacitors, int[] switches, int[] phases)
    {
        LawSample.AssertSame(expected.Ratio, actual.Ratio, "ratio");
        for (int c = 0; c < capacitors.Length; c++)
        {
            LawSample.AssertSame(expected.IdealPoint.CapacitorVoltages[capacitors[c]], actual.IdealPoint.CapacitorVoltages[c], $"c{c}");
        }

        for (int s = 0; s < switches.Length; s++)
        {
            AssertSame(expected.BlockingVoltages.Switches[switches[s]], actual.BlockingVoltages.Switches[s], phases, $"s{s}");
        }
    }

    private static void AssertSameFlow(ModeAnalysis expected, ModeAnalysis actual, int[] capacitors, int[] switches, int[] phases)
    {
        Assert.Equal(expected.ChargeFlow.DeterminedBy, actual.ChargeFlow.DeterminedBy);
        AssertSame(expected.ChargeFlow.Input, actual.ChargeFlow.Input, phases, "input");
        AssertSame(expected.ChargeFlow.Output, actual.ChargeFlow.Output, phases, "output");
        for (int c = 0; c < capacitors.Length; c++)
        {
            AssertSame(expected.ChargeFlow.Capacitors[capacitors[c]], actual.ChargeFlow.Capacitors[c], phases, $"c{c}");
        }

        for (int s = 0; s < switches.Length; s++)
        {
            AssertSame(expected.ChargeFlow.Switches[switches[s]], actual.ChargeFlow.Switches[s], phases, $"s{s}");
        }

        LawSample.AssertNear(expected.SlowSwitchingLimit.OhmsAtOneHertz, actual.SlowSwitchingLimit.OhmsAtOneHertz, "slow");
        LawSample.AssertNear(expected.FastSwitchingLimit.Ohms, actual.FastSwitchingLimit.Ohms, "fast");
    }

    private static void AssertSame(PhaseValues expected, PhaseValues actual, int[] phases, string what)
    {
        for (int j = 0; j < phases.Length; j++)
        {
            LawSample.AssertSame(expected[phases[j] + 1], actual[j + 1], what);
        }
    }

    private static void AssertOpposite(PhaseValues expected, PhaseValues actual, string what)
    {
        for (int number = 1; number <= expected.PhaseCount; number++)
        {
            LawSample.AssertSame(-expected[number], actual[number], what);
        }
    }
}
