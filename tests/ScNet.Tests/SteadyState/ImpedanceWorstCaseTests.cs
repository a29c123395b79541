using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>When extremes that were found are certain.</summary>
public sealed class ImpedanceWorstCaseTests
{
    [Theory]
    [InlineData(1, 2, true, true)]
    [InlineData(1.1, 1.9, false, false)]
    [InlineData(1 + 5e-10, 2 - 1e-9, true, true)]
    [InlineData(1 + 1e-9, 2 * (1 - 1e-9), true, true)]
    [InlineData(1 + 2e-9, 2 - 4e-9, false, false)]
    [InlineData(1, 1.9, true, false)]
    [InlineData(1.1, 2, false, true)]
    public void An_extreme_is_certain_where_it_meets_the_bound(double minimum, double maximum, bool isMinimumCertain, bool isMaximumCertain)
    {
        ImpedanceWorstCase worst = new(new(minimum, maximum), new(1, 2));
        Assert.Equal((isMinimumCertain, isMaximumCertain), (worst.IsMinimumCertain, worst.IsMaximumCertain));
    }

    [Fact]
    public void An_impedance_of_zero_is_certain_where_that_is_the_bound()
    {
        ImpedanceWorstCase worst = new(new(0, 0), new(0, 0));
        Assert.True(worst.IsMinimumCertain);
        Assert.True(worst.IsMaximumCertain);
    }

    [Fact]
    public void Nothing_is_certain_where_either_range_is_not_known()
    {
        foreach (ImpedanceWorstCase worst in (ImpedanceWorstCase[])[new(new(1, 2), default), new(default, new(1, 2)), new(default, default)])
        {
            Assert.False(worst.IsMinimumCertain);
            Assert.False(worst.IsMaximumCertain);
        }
    }

    [Fact]
    public void Both_ranges_are_shown() => Assert.Equal("1 to 2 Ω, certainly within 0.5 to 3 Ω", new ImpedanceWorstCase(new(1, 2), new(0.5, 3)).ToString());
}
