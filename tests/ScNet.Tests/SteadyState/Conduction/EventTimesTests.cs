using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>Times of currents that are given as functions of the shares, so that the zeros are known.</summary>
public sealed class EventTimesTests
{
    [Theory]
    [InlineData(0.3, 1)]
    [InlineData(0.3, 0.01)]
    [InlineData(0.5, 0.2)]
    [InlineData(1e-6, 1)]
    [InlineData(0.999, 0.7)]
    public void A_straight_current_ends_at_its_zero(double zero, double first) =>
        Assert.Equal(zero, One(s => 1 - (s / zero), first, -1)!.Value, 1e-14);

    [Fact]
    public void A_current_that_is_zero_only_as_its_phase_ends_lasts_the_whole_phase() => Assert.Null(One(s => 1 - s, 0.25, 0));

    // s³ = c and t³ = c, with slopes so large that what rounding leaves of the currents is never small, though no share is nearer
    [Theory]
    [InlineData(0.75)]
    [InlineData(0.7)]
    [InlineData(0.8)]
    public void Currents_of_which_rounding_leaves_much_end_at_the_nearest_share(double cube)
    {
        double[] found = Several(s => [1e12 * (cube - (s[0] * s[0] * s[0])), 1e12 * (cube - (s[1] * s[1] * s[1]))], [1, 1], -1)!;
        Assert.Equal([Math.Cbrt(cube), Math.Cbrt(cube)], found, Closeness.Within(3e-16));
    }

    [Fact]
    public void A_ringing_current_ends_at_its_first_zero() =>
        Assert.Equal(0.05, One(s => Math.Cos(10 * Math.PI * s), 0.01, -1)!.Value, 1e-14);

    [Fact]
    public void Shares_are_doubled_from_the_first_one_up_to_the_whole_phase()
    {
        List<double> asked = [];
        Assert.Null(One(
            s =>
            {
                asked.Add(s);
                return 1;
            },
            0.3,
            0));
        Assert.Equal([0.3, 0.6, 1], asked[..3]);
    }

    [Fact]
    public void No_share_below_twice_the_least_one_is_asked_for()
    {
        List<double> asked = [];
        Assert.Null(One(
            s =>
            {
                asked.Add(s);
                return -1;
            },
            0,
            -1));
        Assert.Equal([2e-9, 1e-9], asked);
    }

    [Fact]
    public void Where_there_is_no_periodic_state_there_is_no_time_and_no_event_is_late()
    {
        Assert.Null(EventTimes.Find(1, _ => null, [1], out int late));
        Assert.Equal(-1, late);
        Assert.Null(EventTimes.Find(2, _ => null, [1, 1], out late));
        Assert.Equal(-1, late);
    }

    [Fact]
    public void Currents_that_depend_on_both_shares_are_ended_together()
    {
        // 1 = s + t and 0.8 = 2 t, by hand
        Assert.Equal([0.6, 0.4], Several(s => [1 - s[0] - s[1], 0.8 - (2 * s[1])], [1, 1], -1)!, Closeness.Within(1e-13));
        Assert.Equal([0.6, 0.4], Several(s => [1 - s[0] - s[1], 0.8 - (2 * s[1])], [0.1, 0.2], -1)!, Closeness.Within(1e-13));

        // s² + t = 0.49 and s + t² = 0.64 at s = 0.6, t = 0.2 is 0.56 and 0.64
        Assert.Equal([0.6, 0.2], Several(s => [0.56 - (s[0] * s[0]) - s[1], 0.64 - s[0] - (s[1] * s[1])], [1, 1], -1)!, Closeness.Within(1e-13));
    }

    [Fact]
    public void Three_currents_are_ended_together() => Assert.Equal(
        [0.5, 0.25, 0.75], Several(s => [1 - s[0] - (2 * s[1]), 1.25 - s[0] - s[2], 1 - s[1] - s[2]], [1, 1, 1], -1)!, Closeness.Within(1e-13));

    [Fact]
    public void A_zero_far_below_the_first_share_is_reached_in_steps_of_a_quarter() =>
        Assert.Equal([0.01, 0.3], Several(s => [(0.01 / s[0]) - 1, (0.3 / s[1]) - 1], [1, 1], -1)!, Closeness.Within(1e-13));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_current_that_lasts_the_whole_phase_is_late(int late) =>
        Assert.Null(Several(s => [.. s.Select((share, k) => (k == late ? 2 : 0.5) - share)], [1, 1], late));

    [Fact]
    public void A_current_that_is_zero_just_as_its_phase_ends_is_not_late() =>
        Assert.Equal([1, 0.5], Several(s => [1 - s[0], 0.5 - s[1]], [1, 1], -1)!, Closeness.Within(1e-13));

    [Fact]
    public void Currents_that_no_share_tells_apart_have_no_times() =>
        Assert.Null(Several(s => [0.5 - s[0], 0.4 - s[0]], [1, 1], -1));

    [Fact]
    public void A_state_that_is_lost_on_the_way_leaves_no_times() =>
        Assert.Null(Several(s => s[1] is 1 or > 0.9999 ? [0.5 - s[0], 0.4 - s[1]] : null, [1, 1], -1));

    [Fact]
    public void Every_current_is_bracketed_with_the_others_at_the_ends_found_before()
    {
        List<double[]> asked = [];
        Assert.Equal(
            [0.7, 0.4],
            Several(
                s =>
                {
                    asked.Add([.. s]);
                    return [0.7 - s[0], 0.4 - s[1]];
                },
                [0.5, 0.5],
                -1)!,
            Closeness.Within(1e-13));
        Assert.Equal([[0.5, 1], [1, 1], [1, 0.5], [1, 0.5]], asked[..4]);
    }

    [Fact]
    public void Currents_of_very_different_steepness_end_together() => Assert.Equal(
        [1.0 / 3, 0.7], Several(s => [1e9 * ((1 / 27.0) - (s[0] * s[0] * s[0])), 0.49 - (s[1] * s[1])], [1, 1], -1)!, Closeness.Within(1e-13));

    [Fact]
    public void Currents_that_never_settle_are_given_up_after_a_hundred_steps()
    {
        // from 1 to 0.25 and back for ever; each step asks once where it is and once beside it for each event
        int asked = 0;
        Assert.Null(Several(
            s =>
            {
                asked++;
                return [0.5 - s[0], s[1] > 0.5 ? 0.25 - s[1] : 1 - s[1]];
            },
            [1, 1],
            -1));
        Assert.Equal(2 + (100 * 3), asked);
    }

    private static double? One(Func<double, double> current, double first, int expectedLate)
    {
        double[]? found = EventTimes.Find(1, shares => [current(Assert.Single(shares))], [first], out int late);
        Assert.Equal(expectedLate, late);
        return found is null ? null : Assert.Single(found);
    }

    private static double[]? Several(Func<double[], double[]?> currents, double[] first, int expectedLate)
    {
        double[]? found = EventTimes.Find(first.Length, currents, first, out int late);
        Assert.Equal(expectedLate, late);
        return found;
    }
}
