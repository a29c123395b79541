using System.Numerics;
using Fractions;
using ScNet.Design;
using ScNet.Kernel;

namespace ScNet.Tests.Design;

/// <summary>
/// Durations by hand. A load current of one charges a capacitor between input and output by one per period spent so, and
/// discharges one at the output; one that hangs at the reference alone rests, and where all rest the input carries the load.
/// </summary>
public sealed class PhaseDurationsTests
{
    private static readonly (string First, string Second) s_charged = ("vin", "vout"), s_discharged = ("vout", "gnd");
    private static readonly (string First, string Second) s_resting = ("apart", "gnd"), s_restingToo = ("beside", "gnd");

    [Fact]
    public void A_capacitor_is_charged_as_long_as_it_is_discharged() =>
        Assert.Equal([new(1, 2), new(1, 2)], Soft([1], [s_charged], [s_discharged])!);

    [Fact]
    public void What_is_only_charged_has_no_durations()
    {
        Assert.Null(Soft([1], [s_charged], [s_charged]));
        Assert.Null(Soft([1, 1], [s_charged, s_resting], [s_resting, s_charged], [s_discharged, s_resting]));

        // (1, 0), (0, 1), (1, 1) and (1, -1): twice the first and once the second together never fall
        Assert.Null(Soft([1, 1], [s_charged, s_resting], [s_resting, s_charged], [("vin", "m"), ("m", "vout")], [("vin", "m"), ("vout", "m")]));
    }

    // corners (1/2, 1/2, 0) and (1/2, 0, 1/2)
    [Fact]
    public void Two_ways_to_discharge_share_the_time() =>
        Assert.Equal([new(1, 2), new(1, 4), new(1, 4)], Soft([1], [s_charged], [s_discharged], [s_discharged])!);

    // four corners, a half for one of the first two and one of the last two
    [Fact]
    public void Two_ways_to_charge_and_two_to_discharge_have_a_quarter_each() => Assert.Equal(
        Enumerable.Repeat(new Fraction(1, 4), 4), Soft([1], [s_charged], [s_charged], [s_discharged], [s_discharged])!);

    // corners (1, 0) and (0, 1)
    [Fact]
    public void Without_capacitors_phases_last_the_same() => Assert.Equal([new(1, 2), new(1, 2)], Soft([], [], [])!);

    // without the first two, which balance each other, the last two are still free
    [Fact]
    public void Phases_of_the_same_effect_last_as_long()
    {
        Fraction[] durations = Soft([1], [s_charged], [s_discharged], [s_resting], [s_resting])!;
        Assert.Equal(durations[0], durations[1]);
        Assert.Equal(durations[2], durations[3]);
        Assert.Equal(Fraction.One, (durations[0] + durations[2]) * 2);
        Assert.All(durations, d => Assert.True(d.IsPositive));
    }

    // charges (1, 0), (0, 1), (-1, -1) and (1, -1): corners (1/3, 1/3, 1/3, 0) and (0, 1/2, 1/4, 1/4); without the second phase the last
    // would be -1/2 long, without the third the first -1
    [Fact]
    public void Corners_at_which_a_phase_would_be_negative_take_no_part() => Assert.Equal(
        [new(1, 6), new(5, 12), new(7, 24), new(1, 8)],
        Soft([1, 1], [s_charged, s_resting], [s_resting, s_charged], [("vout", "m"), ("m", "gnd")], [("vin", "m"), ("vout", "m")])!);

    // together 1 F and 3 F deliver 1/4 and 3/4, in all as much as they were charged; they rise alike before each time
    [Fact]
    public void Voltages_meet_where_phases_join_capacitors()
    {
        (string, string)[] first = [s_charged, s_resting], second = [s_resting, s_charged], both = [s_discharged, s_discharged];
        Assert.Equal([new(1, 8), new(3, 8), new(1, 2)], Soft([1, 3], first, second, both)!);
        Assert.Equal([new(1, 8), new(3, 8), new(1, 2)], Least([1, 3], first, second, both)!);
        Assert.Equal([new(1, 16), new(3, 16), new(1, 4), new(1, 16), new(3, 16), new(1, 4)], Soft([1, 3], first, second, both, first, second, both)!);
        Assert.Null(Soft([1, 3], first, both, second, both));
    }

    // 1 F charged by d and 2 F by g, each alone, meet in between, two equal times by the third that is charged and discharged in series:
    // 2·energy lost d² - 3 (d/3)² = 2d²/3 and 2 (g/2)² - 3 (g/3)² = g²/6, least for d + g = 1/2 at 4d = g
    [Fact]
    public void The_impulses_of_two_phases_lose_the_least_together()
    {
        (string, string)[][] phases =
        [
            [s_charged, s_resting, s_restingToo], [("vout", "m"), ("vout", "m"), ("m", "gnd")],
            [s_resting, s_charged, s_restingToo], [("vout", "m"), ("vout", "m"), ("gnd", "m")],
        ];
        Assert.Equal([new(1, 10), new(1, 4), new(2, 5), new(1, 4)], Least([1, 2, 5], phases)!);
        Assert.Null(Soft([1, 2, 5], phases));
    }

    // another 1 F joins them that is never charged alone: d² - 4 (d/4)² = 3d²/4 and 2 (g/2)² - 4 (g/4)² = g²/4, least at 3d = g
    [Fact]
    public void Several_loops_of_a_phase_have_impulses_of_their_own() => Assert.Equal(
        [new(1, 8), new(1, 4), new(3, 8), new(1, 4)],
        Least(
            [1, 2, 1, 5],
            [s_charged, s_resting, s_restingToo, ("aside", "gnd")],
            [("vout", "m"), ("vout", "m"), ("vout", "m"), ("m", "gnd")],
            [s_resting, s_charged, s_restingToo, ("aside", "gnd")],
            [("vout", "m"), ("vout", "m"), ("vout", "m"), ("gnd", "m")])!);

    // 1 F charged for d = 1/2, another discharged for e, then both for f = 1/2 - e: they differ by d + e, least where e is nothing
    [Fact]
    public void Where_the_least_loss_leaves_a_phase_no_time_there_are_no_durations() => Assert.Null(
        Least([1, 1], [s_charged, s_resting], [s_resting, s_discharged], [s_discharged, s_discharged]));

    private static Fraction[]? Soft(int[] farads, params (string First, string Second)[][] phases) => PhaseDurations.Soft(Phases(farads, phases), Elastances(farads));

    private static Fraction[]? Least(int[] farads, params (string First, string Second)[][] phases) => PhaseDurations.Least(Phases(farads, phases), Elastances(farads));

    private static Rational<BigInteger>[] Elastances(int[] farads) => Array.ConvertAll(farads, f => Rational<BigInteger>.Of(1, f));

    private static SteadyPhase[] Phases(int[] farads, (string First, string Second)[][] phases) => [.. phases.Select((phase, j) =>
    {
        ConverterBuilder wired = Converter.Create("phase").Input("vin").Output("vout", LoadKind.Current);
        for (int i = 0; i < phase.Length; i++)
        {
            wired = wired.Capacitor($"c{i}", phase[i].First, phase[i].Second, farads[i]);
        }

        bool isDirect = !phase.Any(c => c.First == "vout" || c.Second == "vout");
        return SteadyPhase.Of(wired.Switch("direct", "vin", "vout", 1).Build().Network, Elastances(farads), [Rational<BigInteger>.One], j + 1, [isDirect])!;
    })];
}
