using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Periods beyond those after which amounts have settled. A mode of charge q and rate λ dissipates T λ q²/2 there, the more the longer
/// the period, unless its charge is below 4e-15 of the flows that make it up: 1 and the amounts, times the root of all squares.
/// </summary>
public sealed class ImpedanceKernelSettledTests
{
    // rates of 1 and 1e12 settle after 1e13 seconds, of the slowest time constants and of 1e25 of the fastest
    private const double Settled = 1e13;
    private const double FastRate = 1e12;

    [Fact]
    public void Drives_of_mere_rounding_count_until_amounts_have_settled_and_no_longer()
    {
        const double charge = 3e-15;
        ImpedanceTerms terms = ModesByHand.Terms([1], [[(0, [1]), (1, [0]), (FastRate, [charge])]]);
        Assert.Equal(Settled, terms.SettledPeriod, 1e-3);
        ImpedanceKernel kernel = ImpedanceKernel.Of(terms, isTied: false);
        Assert.Equal(1 + (Settled * FastRate * charge * charge / 2), kernel.Ohms(terms.SettledPeriod), 1e-12);
        Assert.Equal(1, kernel.Ohms(Math.BitIncrement(terms.SettledPeriod)), 1e-12);
    }

    // The direction takes the whole charge of the second mode, with an amount of -1: flows of 2. Squares of 1, 1 and 1 make the bound 8e-15 √3 = 1.39e-14.
    [Theory]
    [InlineData(1e-14, false)]
    [InlineData(2e-14, true)]
    public void Amounts_are_among_the_flows_that_make_a_drive_up(double charge, bool counts) =>
        AssertBeyond(charge, counts, (0, [1, 1]));

    // the same, but that the particular flow is shifted by -1 before, to drive nothing of rate 1
    [Theory]
    [InlineData(1e-14, false)]
    [InlineData(2e-14, true)]
    public void What_the_particular_flow_was_shifted_by_is_among_the_flows_that_make_a_drive_up(double charge, bool counts) =>
        AssertBeyond(charge, counts, (1, [1, 1]));

    // Time constants 26 orders apart: amounts settle after 1e25 of the fast one, when the slow one has hardly begun. T λ q²/2 · coth(λ T/2) with λ T/2 = 5.
    [Fact]
    public void Slow_modes_go_on_while_amounts_have_settled()
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([1], [(0, [1, 1]), (1, [0, 0]), (1e-26, [1, 0])]);
        Assert.Equal(5 / Math.Tanh(5), kernel.Ohms(1e27), 1e-9);
    }

    private static void AssertBeyond(double charge, bool counts, (double Rate, double[] Charges) taken)
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([1], [(0, [1, 0]), taken, (1, [0, 0]), (FastRate, [charge, 0])]);
        double expected = 1 + (counts ? 2 * Settled * FastRate * charge * charge / 2 : 0);
        Assert.Equal(expected, kernel.Ohms(2 * Settled), 1e-9);
    }
}
