using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Tests.Topologies;

/// <summary>Laws of combinations on pairs of families drawn at random; common practice, no source.</summary>
[Trait("Kind", "Law")]
public sealed class CombineTests
{
    private static readonly Func<LoadKind, Converter>[] s_families =
    [
        load => SeriesParallel.StepDown(2, load: load), load => SeriesParallel.StepUp(3, load: load), load => Ladder.StepDown(3, load: load),
        load => Ladder.StepUp(4, load: load), load => Dickson.StepDown(4, load: load), load => Fibonacci.StepUp(3, load: load),
        load => Doubler.StepDown(2, load: load), load => CockcroftWalton.StepUp(4, load: load), load => FractionalDivider.Of(2, 3, load: load),
        load => FractionalDivider.Of(5, 4, load: load), load => PolarityInverter.Of(2, 3, load: load), load => PolarityInverter.StepUp(2, load: load),
        load => RecursiveCascade.StepDown(3, 5, load: load),
    ];

    // Families by ratio: 1/3, 4, 3/8 in two phases; 5/8 and 1/4 in several.
    private static readonly Converter[][] s_equals =
    [
        [SeriesParallel.StepDown(3), Ladder.StepDown(3), Dickson.StepDown(3), Fibonacci.StepDown(2), CockcroftWalton.StepDown(2), FractionalDivider.Of(1, 3)],
        [SeriesParallel.StepUp(4), Ladder.StepUp(4), Dickson.StepUp(4), Doubler.StepUp(2), CockcroftWalton.StepUp(3), FractionalDivider.Of(4, 1), RecursiveCascade.StepUp(2, 1)],
        [RecursiveCascade.StepDown(3, 3), Combine.Cascade(SeriesParallel.StepDown(2), FractionalDivider.Of(3, 4))],
        [BinaryConverter.StepDown(3, 5), BinaryConverter.StepDown(3, 5)],
        [BinaryConverter.StepDown(2, 1), BinaryConverter.StepDown(2, 1)],
    ];

    private static readonly Gen<Pair> s_pairs =
        from first in Gen.Int[0, s_families.Length - 1]
        from second in Gen.Int[0, s_families.Length - 1]
        from firstLoad in Gen.Enum<LoadKind>()
        from secondLoad in Gen.Enum<LoadKind>()
        select new Pair(s_families[first](firstLoad), s_families[second](secondLoad));

    private static readonly Gen<(Converter First, Converter Second, int Rotation)> s_equalPairs =
        from ratio in Gen.Int[0, s_equals.Length - 1]
        from first in Gen.Int[0, s_equals[ratio].Length - 1]
        from second in Gen.Int[0, s_equals[ratio].Length - 1]
        from rotation in Gen.Int[0, s_equals[ratio][0].Phases.Count - 1]
        from seed in Gen.Int[0, 1000]
        select (Revalued(s_equals[ratio][first], seed), Revalued(s_equals[ratio][second], seed + 1), rotation);

    [Fact]
    public void Ratios_of_a_cascade_multiply_and_topology_decides_the_flow() => ForEachCascade((first, second, whole) =>
    {
        AssertEqual(first.Ratio.ToFraction() * second.Ratio.ToFraction(), whole.Ratio, "ratio");
        Assert.Equal(FlowDetermination.Topology, whole.ChargeFlow.DeterminedBy);
        Assert.Empty(whole.Diagnostics);
    });

    [Fact]
    public void Charges_before_a_converter_are_scaled_by_its_ratio_and_voltages_behind_one_by_its() => ForEachCascade((first, second, whole) =>
    {
        Fraction before = second.Ratio.ToFraction();
        Fraction behind = first.Ratio.ToFraction();
        Converter converter = whole.Converter;
        for (int s = 0; s < first.Converter.Switches.Count; s++)
        {
            int i = converter.Switches.PositionOf($"1.{first.Converter.Switches[s].Name}");
            AssertScaled(first.ChargeFlow.Switches[s], before, whole.ChargeFlow.Switches[i]);
            AssertScaled(first.BlockingVoltages.Switches[s], 1, whole.BlockingVoltages.Switches[i]);
            AssertEqual(first.FastSwitchingLimit.SwitchCoefficients[s].ToFraction() * before * before, whole.FastSwitchingLimit.SwitchCoefficients[i], "fast");
        }

        for (int s = 0; s < second.Converter.Switches.Count; s++)
        {
            int i = converter.Switches.PositionOf($"2.{second.Converter.Switches[s].Name}");
            AssertScaled(second.ChargeFlow.Switches[s], 1, whole.ChargeFlow.Switches[i]);
            AssertScaled(second.BlockingVoltages.Switches[s], behind, whole.BlockingVoltages.Switches[i]);
            Assert.Equal(second.FastSwitchingLimit.SwitchCoefficients[s], whole.FastSwitchingLimit.SwitchCoefficients[i]);
        }

        for (int c = 0; c < second.Converter.Capacitors.Count; c++)
        {
            int i = converter.Capacitors.PositionOf($"2.{second.Converter.Capacitors[c].Name}");
            AssertScaled(second.ChargeFlow.Capacitors[c], 1, whole.ChargeFlow.Capacitors[i]);
            AssertEqual(second.IdealPoint.CapacitorVoltages[c].ToFraction() * behind, whole.IdealPoint.CapacitorVoltages[i], "voltage");
        }
    });

    [Fact]
    public void The_capacitor_between_takes_what_the_second_does_not_draw() => ForEachCascade((first, second, whole) =>
    {
        bool isStiff = first.Converter.Load == LoadKind.Stiff;
        Assert.Equal(isStiff, whole.Converter.Capacitors.Any(c => c.Name == "dc1"));
        int dc = whole.Converter.Capacitors.PositionOf(isStiff ? "dc1" : "1.out");
        AssertEqual(first.Ratio.ToFraction(), whole.IdealPoint.CapacitorVoltages[dc], "voltage");
        for (int j = 0; j < whole.Converter.Phases.Count; j++)
        {
            // With a current load 'out' absorbed what the constant current did not take.
            Fraction delivered = first.ChargeFlow.Output[j + 1].ToFraction()
                + (isStiff ? 0 : first.ChargeFlow.Capacitors[^1][j + 1].ToFraction());
            AssertEqual((delivered * second.Ratio.ToFraction()) - second.ChargeFlow.Input[j + 1].ToFraction(), whole.ChargeFlow.Capacitors[dc][j + 1], "dc");
        }
    });

    [Fact]
    public void Output_impedances_of_a_cascade_add_once_referred_to_the_output() => ForEachCascade((first, second, whole) =>
    {
        double square = Math.Pow(second.Ratio.ToDouble(), 2);
        Assert.Equal((first.FastSwitchingLimit.Ohms * square) + second.FastSwitchingLimit.Ohms, whole.FastSwitchingLimit.Ohms, 9);
        double between = first.Converter.Load == LoadKind.Stiff ? whole.SlowSwitchingLimit.Coefficients[^1].ToDouble()
            : (whole.SlowSwitchingLimit.Coefficients[first.Converter.Capacitors.Count - 1].ToDouble()
                - (first.SlowSwitchingLimit.Coefficients[^1].ToDouble() * square));
        Assert.Equal(
            (first.SlowSwitchingLimit.OhmsAtOneHertz * square) + second.SlowSwitchingLimit.OhmsAtOneHertz + between,
            whole.SlowSwitchingLimit.OhmsAtOneHertz, 9);
    });

    [Fact]
    public void Three_in_a_row_are_two_and_then_one()
    {
        Converter[] three = [SeriesParallel.StepDown(2), FractionalDivider.Of(3, 2), Ladder.StepUp(3)];
        ModeAnalysis row = FamilyTests.Analyse(Combine.Cascade(three));
        ModeAnalysis nested = FamilyTests.Analyse(Combine.Cascade(Combine.Cascade(three[0], three[1]), three[2]));
        Assert.Equal(Quantity.Exact(9, 4), row.Ratio);
        Assert.Equal(row.Ratio, nested.Ratio);
        Assert.Equal(row.SlowSwitchingLimit.OhmsAtOneHertz, nested.SlowSwitchingLimit.OhmsAtOneHertz, 12);
        Assert.Equal(row.FastSwitchingLimit.Ohms, nested.FastSwitchingLimit.Ohms, 12);
        Assert.Equal("Series-parallel 2:1 then Fractional 3/2 then Ladder 1:3", row.Converter.Name);
        Assert.Contains(nested.Converter.Capacitors, c => c.Name == "1.dc1");
    }

    [Fact]
    public void A_doubler_is_a_cascade_of_two_to_one_cells()
    {
        ModeAnalysis cascade = FamilyTests.Analyse(Combine.Cascade([.. Enumerable.Repeat(SeriesParallel.StepUp(2), 4)], dcFarads: 1));
        ModeAnalysis doubler = FamilyTests.Analyse(Doubler.StepUp(4));
        Assert.Equal(doubler.Ratio, cascade.Ratio);
        Assert.Equal(doubler.SlowSwitchingLimit.OhmsAtOneHertz, cascade.SlowSwitchingLimit.OhmsAtOneHertz, 12);
        Assert.Equal(doubler.FastSwitchingLimit.Ohms, cascade.FastSwitchingLimit.Ohms, 12);
    }

    [Fact]
    public void Conductances_of_parallel_converters_add_in_step_and_interleaved() => s_equalPairs.Holds(
        (first, second, rotation) =>
        {
            (ModeAnalysis a, ModeAnalysis b) = (FamilyTests.Analyse(first), FamilyTests.Analyse(second));
            ModeAnalysis both = FamilyTests.Analyse(Combine.Parallel(first, second, rotation));
            Assert.Equal(a.Ratio, both.Ratio);
            AssertClose(Together(a.SlowSwitchingLimit.OhmsAtOneHertz, b.SlowSwitchingLimit.OhmsAtOneHertz), both.SlowSwitchingLimit.OhmsAtOneHertz);
            AssertClose(Together(a.FastSwitchingLimit.Ohms, b.FastSwitchingLimit.Ohms), both.FastSwitchingLimit.Ohms);
        },
        count: 200);

    [Fact]
    public void Two_equal_converters_side_by_side_have_half_the_output_impedance_and_interleaved_the_same_flow_in_every_phase()
    {
        Converter one = Dickson.StepDown(5);
        ModeAnalysis alone = FamilyTests.Analyse(one);
        ModeAnalysis both = FamilyTests.Analyse(Combine.Parallel(one, one, rotation: 1));
        AssertClose(alone.SlowSwitchingLimit.OhmsAtOneHertz / 2, both.SlowSwitchingLimit.OhmsAtOneHertz);
        AssertClose(alone.FastSwitchingLimit.Ohms / 2, both.FastSwitchingLimit.Ohms);
        Assert.NotEqual(alone.ChargeFlow.Output[1], alone.ChargeFlow.Output[2]);
        AssertClose(both.ChargeFlow.Output[1].ToDouble(), both.ChargeFlow.Output[2].ToDouble());
    }

    [Fact]
    public void Converters_of_different_ratios_side_by_side_are_a_conflict() => Assert.Contains(
        Assert.Throws<ScNetException>(() => FamilyTests.Analyse(Combine.Parallel(Dickson.StepDown(2), Dickson.StepDown(3)))).Diagnostics,
        d => d.Code == DiagnosticCodes.VoltageConflict);

    private static void ForEachCascade(Action<ModeAnalysis, ModeAnalysis, ModeAnalysis> law) => s_pairs.Holds(
        pair => law(FamilyTests.Analyse(pair.First), FamilyTests.Analyse(pair.Second), FamilyTests.Analyse(Combine.Cascade(pair.First, pair.Second))),
        count: 150,
        print: pair => $"{pair.First} ({pair.First.Load}), {pair.Second} ({pair.Second.Load})");

    private static Converter Revalued(Converter converter, int seed)
    {
        Random random = new(seed);
        return converter.WithValues(
            [.. converter.Capacitors.Select(_ => 0.5 + random.NextDouble())],
            [.. converter.Switches.Select(_ => 0.5 + random.NextDouble())]);
    }

    private static double Together(double left, double right) => left * right / (left + right);

    private static void AssertScaled(PhaseValues expected, Fraction factor, PhaseValues actual)
    {
        for (int number = 1; number <= expected.PhaseCount; number++)
        {
            AssertEqual(expected[number].ToFraction() * factor, actual[number], $"phase {number}");
        }
    }

    private static void AssertEqual(Fraction expected, Quantity actual, string what) =>
        Assert.True(Quantity.Exact(expected) == actual, $"{what}: expected {expected}, but got {actual}.");

    private static void AssertClose(double expected, double actual) =>
        Assert.InRange(Math.Abs(actual - expected) / Math.Abs(expected), 0, 1e-9);

    private sealed record Pair(Converter First, Converter Second);
}
