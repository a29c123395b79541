using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Kernel;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.Design;

/// <summary>Split-phase operation against durations derived by hand in docs/theory/split-phase.md.</summary>
/// <remarks>Source of the idea: Y. Lei, R. May and R. Pilawa-Podgurski, IEEE Trans. Power Electronics 31(1), 2016 (from memory).</remarks>
public sealed class SplitPhaseTests
{
    private static readonly Rational<BigInteger> s_one = Rational<BigInteger>.One;

    [Fact]
    public void A_quarter_Dickson_stage_connects_its_single_branch_later()
    {
        SplitPhase split = Of(InductorFed.Behind(Dickson.StepDown(4)));
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal([new(1, 8), new(3, 8), new(1, 8), new(3, 8)], split.Durations);
        Assert.Equal([1, 1, 2, 2], split.OriginalPhases);
        Assert.Equal([4], split.Mode.ClosedPhases[split.Converter.Switches.PositionOf("s1")]);
        Assert.Equal([2], split.Mode.ClosedPhases[split.Converter.Switches.PositionOf("s4")]);
        Assert.Equal([1, 2], split.Mode.ClosedPhases[split.Converter.Switches.PositionOf("s2")]);
    }

    // even n: a single capacitor against n/2 - 1 pairs, in both phases; odd n: two against (n - 3)/2 in the one, equal pairs in the other
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Dickson_stages_of_any_size_charge_softly(int n)
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(n));
        SplitPhase split = Of(stage);
        Assert.True(split.IsSoft, split.Reason);
        Assert.Equal(0, split.OhmsAtOneHertz);
        ModeAnalysis analysis = ModeAnalysis.Of(split.Converter, split.Mode);
        Assert.InRange(analysis.ChargeSharing!.OhmsAtOneHertz, 0, 1e-28);
        Assert.Equal(new Fraction(1, n), analysis.Ratio.ToFraction());
        Fraction first = new(n - 2, 4 * n), second = new(n + 2, 4 * n);
        Fraction[] expected = n == 3 ? [new(2, 3), new(1, 3)]
            : n % 2 == 0 ? [first, second, first, second]
            : [new(n - 3, 4 * n), new(n + 5, 4 * n), new(n - 1, 2 * n)];
        Assert.Equal(expected, split.Durations);
        if (n > 3)
        {
            Assert.True(ModeAnalysis.Of(stage).ChargeSharing!.OhmsAtOneHertz > 0.005);
        }
    }

    [Fact]
    public void Unequal_capacitances_give_other_durations_that_are_as_soft()
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(4)).WithValues(farads: [1.1e-6, 0.9e-6, 1.3e-6]);
        SplitPhase split = Of(stage);
        Assert.True(split.IsSoft, split.Reason);
        Assert.NotEqual(new Fraction(1, 8), split.Durations[0]);
        Assert.Equal(Fraction.One, split.Durations.Aggregate(Fraction.Zero, (a, b) => a + b));
        double scale = ModeAnalysis.Of(stage).ChargeSharing!.OhmsAtOneHertz;
        Assert.InRange(ModeAnalysis.Of(split.Converter, split.Mode).ChargeSharing!.OhmsAtOneHertz, 0, 1e-25 * scale);
    }

    // time constants of 10 ns, a period of 10 µs and an inductor that hardly notices: what charge sharing costs is seen whole
    [Fact]
    public void The_exact_two_port_loses_what_is_told_and_hardly_anything_once_split()
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(4, farads: 1e-6, ohms: 0.005), henries: 1);
        SplitPhase split = Of(stage);
        const double FrequencyHz = 1e5;
        double before = Ohms(stage), after = Ohms(split.Converter);
        double shared = ModeAnalysis.Of(stage).ChargeSharing!.Ohms(FrequencyHz);
        double conduction = ModeAnalysis.Of(split.Converter, split.Mode).FastSwitchingLimit.Ohms;
        Assert.InRange(before - after, 0.8 * shared, 1.2 * shared);
        Assert.InRange(after, 0.8 * conduction, 1.5 * conduction);
        Assert.True(after < 0.2 * before);

        static double Ohms(Converter converter) => SteadyStateModel.Of(ModeAnalysis.Of(converter)).TwoPort.At(FrequencyHz).Ohms;
    }

    [Fact]
    public void What_needs_no_split_stays_and_what_holds_no_current_says_so()
    {
        Converter soft = InductorFed.Behind(SeriesParallel.StepDown(3));
        SplitPhase same = Of(soft);
        Converter plain = Dickson.StepDown(4);
        SplitPhase hard = Of(plain);
        Assert.False(hard.IsSoft);
        Assert.Same(plain, hard.Converter);
        Assert.Contains("holds a current", hard.Reason, StringComparison.Ordinal);
        Assert.True(same.IsSoft, same.Reason);
    }

    // the single branch joined first and taken off later, where no voltages meet
    [Fact]
    public void The_least_loss_is_less_than_at_other_durations()
    {
        Converter split = Of(InductorFed.Behind(Dickson.StepDown(4))).Converter;
        Converter turned = split.WithModes(("turned", [.. split.Modes[0].ClosedPhases.Select(c => PhaseSet.Of([.. c.Select(p => p % 2 == 1 ? p + 1 : p - 1)]))]));
        Assert.Equal(split.Phases.Select(p => p.Duty), PhaseDurations.Least(Phases(split), [s_one, s_one, s_one]));
        Assert.Null(PhaseDurations.Soft(Phases(turned)[..2], [s_one, s_one, s_one]));

        if (PhaseDurations.Least(Phases(turned), [s_one, s_one, s_one]) is not { } least)
        {
            Assert.Fail("No durations.");
            return;
        }

        double lowest = Left(turned.WithDuties(least));
        int compared = 0;
        foreach ((int from, int to) in Enumerable.Range(0, 16).Select(k => (k / 4, k % 4)).Where(p => p.Item1 != p.Item2))
        {
            Fraction[] other = [.. least];
            other[from] -= new Fraction(1, 50);
            other[to] += new Fraction(1, 50);
            double left = Left(turned.WithDuties(other));
            Assert.True(left >= lowest - 1e-15, $"{left} at {string.Join(", ", other)}, but {lowest} at {string.Join(", ", least)}");
            compared += double.IsFinite(left) ? 1 : 0;
        }

        Assert.True(compared > 2, $"{compared} compared");

        static double Left(Converter converter) => ModeAnalysis.Of(converter).ChargeSharing?.OhmsAtOneHertz ?? double.PositiveInfinity;

        static SteadyPhase[] Phases(Converter converter) => [.. converter.Phases.Select(p =>
            SteadyPhase.Of(converter.Network, [s_one, s_one, s_one], [s_one], p.Number, converter.Network.ClosedIn(0, p.Number - 1).ToArray())!)];
    }

    private static SplitPhase Of(Converter converter) => SplitPhase.Of(converter, converter.Modes[0]);
}
