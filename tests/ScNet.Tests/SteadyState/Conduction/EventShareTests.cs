using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>The shares that are asked for where several currents end, and the currents that are taken for zero.</summary>
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
}
