using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

[Trait("Kind", "Law")]
public sealed class StressLaws
{
    [Fact]
    public void A_change_of_a_mode_to_itself_is_its_normal_stress() => LawSample.Check((sketch, analysis) =>
    {
        ModeStress stress = ModeStress.Of(analysis, RatedNetworks.OneVolt);
        ModeChange change = ModeChange.Of(stress, stress);
        Assert.Empty(change.Surges);
        bool isComplete = analysis.IdealPoint.CapacitorVoltages.All(v => v.IsDetermined);
        for (int s = 0; s < stress.Switches.Count; s++)
        {
            for (int j = 0; j < sketch.PhaseCount; j++)
            {
                VoltageSpan own = stress.Switches[s].Phases[j + 1], changed = change.OpenSwitches[s].Phases[j + 1];
                if (isComplete && own.Basis == VoltageBasis.Fixed)
                {
                    Assert.Equal(own, changed);
                }
            }
        }
    });

    [Fact]
    public void Bounds_hold_the_ideal_point_and_the_narrower_assumption() => LawSample.Check((sketch, analysis) =>
    {
        ModeStress held = ModeStress.Of(analysis, RatedNetworks.OneVolt, false);
        ModeStress leaking = ModeStress.Of(analysis, RatedNetworks.OneVolt);
        for (int s = 0; s < sketch.Switches.Count; s++)
        {
            for (int j = 0; j < sketch.PhaseCount; j++)
            {
                VoltageSpan narrow = held.Switches[s].Phases[j + 1], wide = leaking.Switches[s].Phases[j + 1];
                Quantity ideal = analysis.BlockingVoltages.Switches[s][j + 1];
                Assert.Equal(ideal.IsDetermined, narrow.Basis == VoltageBasis.Fixed);
                if (ideal.IsDetermined)
                {
                    Assert.Equal(ideal, Quantity.Exact(narrow.PerVoltOfInput.Minimum!.Value));
                    Assert.Equal(ideal, Quantity.Exact(narrow.PerVoltOfInput.Maximum!.Value));
                }

                if (narrow.IsDetermined && wide.IsDetermined)
                {
                    Assert.True(wide.PerVoltOfInput.Minimum!.Value <= narrow.PerVoltOfInput.Minimum!.Value && wide.PerVoltOfInput.Maximum!.Value >= narrow.PerVoltOfInput.Maximum!.Value);
                }
            }
        }
    });

    [Fact]
    public void Twice_the_input_voltage_is_twice_the_stress() => LawSample.Check((sketch, analysis) =>
    {
        ModeStress once = ModeStress.Of(analysis, new Interval<double>(1, 2)), twice = ModeStress.Of(analysis, new Interval<double>(2, 4));
        for (int s = 0; s < sketch.Switches.Count; s++)
        {
            Assert.Equal(once.Switches[s].Phases, twice.Switches[s].Phases);
            Assert.Equal(2 * once.Switches[s].PeakPositive?.Volts, twice.Switches[s].PeakPositive?.Volts);
            Assert.Equal(2 * once.Switches[s].PeakNegative?.Volts, twice.Switches[s].PeakNegative?.Volts);
        }

        ModeChange slow = ModeChange.Of(once, once), fast = ModeChange.Of(twice, twice);
        Assert.Equal(2 * slow.PeakStressVolts, fast.PeakStressVolts);
    });

    [Fact]
    public void Another_order_of_elements_changes_no_bound() => CheckChanges((sketch, phasesOfB, seed) =>
    {
        int[] capacitors = Permutation(sketch.Capacitors.Count, seed), switches = Permutation(sketch.Switches.Count, seed);
        NetworkSketch other = sketch with
        {
            Capacitors = [.. capacitors.Select(c => sketch.Capacitors[c])],
            Switches = [.. switches.Select(s => sketch.Switches[s])],
        };
        ModeStress own = RatedNetworks.First(RatedNetworks.TwoModes(sketch, phasesOfB));
        ModeStress turned = RatedNetworks.First(RatedNetworks.TwoModes(other, [.. switches.Select(s => phasesOfB[s])]));
        for (int j = 0; j < sketch.PhaseCount; j++)
        {
            ChangedPhase change = new(own, own.Corners[0], own.Analysis.Converter.Modes[1], j), same = new(turned, turned.Corners[0], turned.Analysis.Converter.Modes[1], j);
            for (int s = 0; s < switches.Length; s++)
            {
                Assert.Equal(own.Switches[switches[s]].Phases[j + 1], turned.Switches[s].Phases[j + 1]);
                Assert.Equal(change.Across(switches[s]), same.Across(s));
            }
        }
    });

    // The literal definition as oracle: nodal analysis with the closed switches' own resistances, and any others.
    [Fact]
    public void The_bounds_of_a_change_hold_for_any_resistances() => CheckChanges((sketch, phasesOfB, seed) =>
    {
        Random random = new(seed);
        ModeStress from = RatedNetworks.First(RatedNetworks.TwoModes(sketch, phasesOfB));
        for (int j = 0; j < sketch.PhaseCount; j++)
        {
            ChangedPhase change = new(from, from.Corners[0], from.Analysis.Converter.Modes[1], j);
            double[] ohms = [.. sketch.Switches.Select(_ => Math.Pow(10, (4 * random.NextDouble()) - 2))];
            double[] potentials = SurgeOracle.Potentials(sketch, from.Analysis, phasesOfB, j, ohms);
            for (int s = 0; s < sketch.Switches.Count; s++)
            {
                VoltageSpan span = change.Across(s);
                double actual = potentials[sketch.Switches[s].First] - potentials[sketch.Switches[s].Second];
                if (span.IsDetermined && span.Basis != VoltageBasis.Floating)
                {
                    Assert.InRange(actual, span.PerVoltOfInput.Minimum!.Value.ToDouble() - 1e-3, span.PerVoltOfInput.Maximum!.Value.ToDouble() + 1e-3);
                }
            }
        }
    });

    // fly2 idles in the old mode with anything from 1/3 to 1/2, what the other modes leave it with
    [Fact]
    public void The_bounds_of_a_change_hold_for_all_that_an_idle_capacitor_may_hold()
    {
        Converter gears = RatedNetworks.GearsWithIdle();
        ConverterStress stress = RatedNetworks.Stress(gears);
        NetworkSketch sketch = NetworkSketch.Of(gears);
        Random random = new(7);
        for (int trial = 0; trial < 60; trial++)
        {
            Mode to = gears.Modes[trial % 3];
            ModeChange change = stress.Change("without", to.Name);
            int[] phases = [.. to.ClosedPhases.Select(on => on.Aggregate(0, (bits, number) => bits | 1 << (number - 1)))];
            double[] ohms = [.. sketch.Switches.Select(_ => Math.Pow(10, (4 * random.NextDouble()) - 2))];
            Dictionary<int, double> idle = new() { [1] = (1 + (0.5 * random.NextDouble())) / 3 };
            for (int j = 0; j < 2; j++)
            {
                double[] potentials = SurgeOracle.Potentials(sketch, stress["without"].Analysis, phases, j, ohms, idle);
                for (int s = 0; s < sketch.Switches.Count; s++)
                {
                    bool isClosed = (phases[s] >> j & 1) == 1;
                    VoltageSpan span = (isClosed ? change.ClosedSwitches : change.OpenSwitches)[s].Phases[j + 1];
                    double actual = potentials[sketch.Switches[s].First] - potentials[sketch.Switches[s].Second];
                    Assert.InRange(actual, span.PerVoltOfInput.Minimum!.Value.ToDouble() - 1e-3, span.PerVoltOfInput.Maximum!.Value.ToDouble() + 1e-3);
                }
            }
        }
    }

    // With one spanning tree of small resistances among large ones, the potentials come close to those of the tree.
    [Fact]
    public void The_bounds_of_a_change_are_reached_by_some_resistances()
    {
        NetworkSketch gears = NetworkSketch.Of(RatedNetworks.Example("memory-gears"));
        int[] half = [1, 0, 1, 2, 2, 2, 2, 1, 1];
        ModeStress from = RatedNetworks.First(RatedNetworks.TwoModes(gears, half));
        ChangedPhase change = new(from, from.Corners[0], from.Analysis.Converter.Modes[1], 0);
        for (int s = 0; s < gears.Switches.Count; s++)
        {
            double low = double.MaxValue, high = double.MinValue;
            for (int tree = 0; tree < 1 << gears.Switches.Count; tree++)
            {
                double[] ohms = [.. gears.Switches.Select((_, k) => (tree >> k & 1) == 1 ? 1e-2 : 1e2)];
                double[] potentials = SurgeOracle.Potentials(gears, from.Analysis, half, 0, ohms);
                double actual = potentials[gears.Switches[s].First] - potentials[gears.Switches[s].Second];
                (low, high) = (Math.Min(low, actual), Math.Max(high, actual));
            }

            Assert.Equal(change.Across(s).PerVoltOfInput.Minimum!.Value.ToDouble(), low, 1e-3);
            Assert.Equal(change.Across(s).PerVoltOfInput.Maximum!.Value.ToDouble(), high, 1e-3);
        }
    }

    private static void CheckChanges(Action<NetworkSketch, int[], int> law, [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        Gen.Select(RandomNetworks.Mutated, Gen.Int[0, 15].Array[40], Gen.Int[0, 1000]).Holds(
            (sketch, phases, seed) =>
            {
                if (sketch.Switches.Count <= phases.Length && LawSample.Try(sketch).HasResult)
                {
                    Interlocked.Increment(ref checkedCount);
                    law(sketch, phases[..sketch.Switches.Count], seed);
                }
            },
            count: 600,
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= 100, $"Only {checkedCount} of 600 networks had a result.");
    }

    private static int[] Permutation(int count, int seed)
    {
        int[] order = [.. Enumerable.Range(0, count)];
        new Random(seed).Shuffle(order);
        return order;
    }
}
