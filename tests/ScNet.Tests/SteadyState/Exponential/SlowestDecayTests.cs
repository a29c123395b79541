using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>The slowest disturbance from inverses ν = 1/(1 − λ) written down.</summary>
public sealed class SlowestDecayTests
{
    [Fact]
    public void The_largest_magnitude_of_the_map_counts()
    {
        // λ = 1/2, −0.9 and 0.2
        (double decay, double periods) = SlowestDecay.Of([2, 0, 0, 0, 1 / 1.9, 0, 0, 0, 1.25], 3);
        Assert.Equal(0.9, decay, 1e-14);
        Assert.Equal(-1 / Math.Log(0.9), periods, 1e-12);
    }

    /// <summary>λ = 0.6 ± 0.3i: 1 − λ = 0.4 ∓ 0.3i, whose inverse is (0.4 ± 0.3i)/0.25 = 1.6 ± 1.2i.</summary>
    [Fact]
    public void A_pair_that_turns_decays_by_its_magnitude()
    {
        (double decay, double periods) = SlowestDecay.Of([1.6, 1.2, -1.2, 1.6], 2);
        Assert.Equal(Math.Sqrt(0.45), decay, 1e-14);
        Assert.Equal(-1 / (0.5 * Math.Log(0.45)), periods, 1e-13);
    }

    [Fact]
    public void What_hardly_decays_keeps_all_digits()
    {
        // −1/ln(1 − ε) = 1/ε − 1/2 but for a part of ε
        Assert.Equal(1e6 - 0.5, SlowestDecay.Of([1e6], 1).Periods, 1e-6);
        Assert.Equal(1, SlowestDecay.Of([1e12], 1).Periods / 1e12, 1e-12);
        Assert.Equal(1, SlowestDecay.Of([1e17], 1).Periods / 1e17, 1e-15);
        Assert.Equal(1 - 1e-12, SlowestDecay.Of([1e12], 1).Decay, 1e-16);
    }

    [Fact]
    public void What_is_gone_at_once_takes_no_time()
    {
        Assert.Equal((0, 0), SlowestDecay.Of([1], 1));
        Assert.Equal((0, 0), SlowestDecay.Of([], 0));
        Assert.Equal(0.5, SlowestDecay.Of([1, 0, 0, 2], 2).Decay, 1e-15);
    }

    [Fact]
    public void What_returns_with_all_of_it_never_decays()
    {
        // λ = −1, and λ = −3, which grows
        Assert.Equal((1, double.PositiveInfinity), SlowestDecay.Of([0.5], 1));
        (double decay, double periods) = SlowestDecay.Of([0.25], 1);
        Assert.Equal(3, decay, 1e-14);
        Assert.Equal(double.PositiveInfinity, periods);
    }

    [Fact]
    public void An_inverse_without_eigenvalues_is_refused()
    {
        InvalidOperationException thrown = Assert.Throws<InvalidOperationException>(() => SlowestDecay.Of([.. Enumerable.Repeat(double.NaN, 9)], 3));
        Assert.Equal("The eigenvalues of the map over a period were not found.", thrown.Message);
    }
}
