using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>The shares that are asked for, and the currents that are taken for zero.</summary>
public sealed class EventShareTests
{
    [Fact]
    public void No_share_beyond_the_whole_phase_is_asked_for()
    {
        List<double> asked = [];
        double[] found = EventTimes.Find(
            2,
            shares =>
            {
                asked.AddRange(shares);
                return [0.75 - shares[0], 0.5 - shares[1]];
            },
            [1, 1],
            out _)!;
        Assert.Equal([0.75, 0.5], found, Closeness.Within(1e-13));
        Assert.All(asked, share => Assert.InRange(share, 0, 1));
    }

    // 1e-14 of the largest current
    [Fact]
    public void Currents_of_just_the_tolerance_are_zero()
    {
        double[] found = EventTimes.Find(2, _ => [1e-14, -1e-14], [1, 1], out int late)!;
        Assert.Equal([1.0, 1.0], found);
        Assert.Equal(-1, late);
    }

    /// <summary>Above zero at 0.3, 0.6 and 1, below it from 0.4 to 0.5.</summary>
    [Fact]
    public void A_current_that_is_back_above_zero_ends_at_its_first_zero()
    {
        double[] found = EventTimes.Find(1, shares => [(shares[0] - 0.4) * (shares[0] - 0.5)], [0.3], out int late)!;
        Assert.Equal(0.4, Assert.Single(found), 1e-14);
        Assert.Equal(-1, late);
    }

    [Fact]
    public void A_current_that_is_positive_at_all_doubled_shares_is_looked_for_at_every_64th()
    {
        List<double> asked = [];
        Assert.Null(EventTimes.Find(
            1,
            shares =>
            {
                asked.AddRange(shares);
                return [(shares[0] - 0.5) * (shares[0] - 0.5)];
            },
            [0.4],
            out int late));
        Assert.Equal(0, late);
        Assert.Equal([0.4, 0.8, 1, .. Enumerable.Range(1, 63).Select(k => k / 64.0)], asked);
    }
}
