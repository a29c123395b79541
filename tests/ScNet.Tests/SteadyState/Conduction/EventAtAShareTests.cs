using ScNet.SteadyState.Conduction;

namespace ScNet.Tests.SteadyState.Conduction;

/// <summary>A current that is zero to the last digit at one of the shares that are tried first.</summary>
public sealed class EventAtAShareTests
{
    [Theory]
    [InlineData(0.5, 0.5)]
    [InlineData(0.5, 0.125)]
    [InlineData(0.25, 0.25)]
    public void The_current_ends_there(double zero, double first)
    {
        double[] found = EventTimes.Find(1, shares => [zero - shares[0]], [first], out int late)!;
        Assert.Equal(-1, late);
        Assert.Equal(zero, Assert.Single(found), 1e-14);
    }
}
