using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Modes by hand: of charge q, rate λ and duty D one mode makes T λ q²/2 · coth(λ D T/2) of a period T.</summary>
public sealed class ImpedanceTermsTests
{
    [Fact]
    public void Modes_of_two_phases_are_a_hyperbolic_cotangent_each()
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([0.25, 0.75], [(8, [0.5])], [(2, [3])]);
        foreach (double period in (double[])[1e-3, 0.7, 20])
        {
            double expected = (period * 8 * 0.25 / 2 / Math.Tanh(8 * 0.25 * period / 2)) + (period * 2 * 9 / 2 / Math.Tanh(2 * 0.75 * period / 2));
            Assert.Equal(expected, kernel.Ohms(period), 1e-13 * expected);

            // 8 · 0.25 is more than 2 · 0.75
            Assert.Equal(period, kernel.LargestExponent(period), 1e-14 * period);
        }

        Assert.Equal(0, kernel.Directions);
        Assert.Equal(new PortRatios(0.5, 0.5, 0), kernel.Ratios(1));
    }

    [Fact]
    public void Currents_that_do_not_change_dissipate_the_same_at_every_period()
    {
        // q²/D of each, and one direction that takes the better part: (1 + a)²/0.25 + a²/0.75 is least at a = −3/4
        ImpedanceKernel kernel = ModesByHand.Kernel([0.25, 0.75], [(0, [1, 1])], [(0, [0, 1])]);
        Assert.Equal([1, 1, 1], new[] { 1e-9, 1, 1e9 }.Select(kernel.Ohms), Closeness.Within(1e-15));
        Assert.Equal(0, kernel.LargestExponent(1));
        double[] amounts = [7];
        kernel.Amounts(1, amounts, reversed: false);
        Assert.Equal(-0.75, amounts[0], 1e-15);
    }

    [Fact]
    public void Beyond_the_settled_period_amounts_and_what_is_tied_stay()
    {
        // λ = 2 settles after 1e13/2 seconds; there coth is one
        (double, double[])[][] modes = [[(2, [1])], []];
        ImpedanceKernel free = Kernel([0.5, 0.5], modes), tied = Kernel([0.5, 0.5], modes, isTied: true);
        Assert.Equal(1e20, free.Ohms(1e20), 1e8);
        Assert.Equal(5e12, tied.Ohms(1e20), 1);
        Assert.Equal(1e12, tied.Ohms(1e12), 1);
    }

    [Fact]
    public void Beyond_the_settled_period_what_the_input_takes_falls_with_the_period()
    {
        // one direction of rate 2 takes 3 from the input: T · 9/(T λ q²/2) while it settles, then that over the period
        ImpedanceKernel kernel = Kernel([0.5, 0.5], [[(2, [0, 1])], []], inputs: [3]);
        double[] amounts = [7];
        kernel.InputAmounts(1e20, amounts, reversed: false);
        Assert.Equal(3, amounts[0], 1e-9);
        Assert.Equal(9e-20, kernel.Ratios(1e20).InputSiemens, 1e-29);
        Assert.Equal(9e-12, kernel.Ratios(1e12).InputSiemens, 1e-21);
    }

    [Theory]
    [InlineData(1e-15, false)]
    [InlineData(1e-14, true)]
    public void A_long_period_does_not_magnify_drives_of_mere_rounding(double charge, bool counts)
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([0.5, 0.5], [(0, [1]), (1, [charge])], []);
        double expected = 2 + (counts ? 0.5e50 * charge * charge : 0);
        Assert.Equal(expected, kernel.Ohms(1e50), 1e-12 * expected);
    }

    /// <summary>A drive below 4e-15 of its rate times the root of the sum of squares of its phase's charges is their rounding: of a charge of 10, 4e-14.</summary>
    [Theory]
    [InlineData(3e-14, false)]
    [InlineData(5e-14, true)]
    public void What_is_mere_rounding_is_measured_by_the_charges_of_the_phase(double charge, bool counts)
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([0.5, 0.5], [(0, [10]), (1, [charge])], []);
        double expected = 200 + (counts ? 0.5e50 * charge * charge : 0);
        Assert.Equal(expected, kernel.Ohms(1e50), 1e-12 * expected);
    }

    /// <summary>
    /// The particular flow and half of a direction against it make 0.5²/0.5 of either phase. With charges of 1 in both the root is that of 2,
    /// and flows of 1 and 1/2 add up: 4e-15 · 1.5 · 1.414 = 8.5e-15.
    /// </summary>
    [Theory]
    [InlineData(8e-15, false)]
    [InlineData(9e-15, true)]
    public void Charges_of_directions_count_among_those_of_the_phase(double charge, bool counts)
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([0.5, 0.5], [(0, [1, 1]), (1, [charge, 0])], [(0, [0, 1])]);
        double expected = 1 + (counts ? 0.5e50 * charge * charge : 0);
        Assert.Equal(expected, kernel.Ohms(1e50), 1e-12 * expected);
    }

    [Theory]
    [InlineData(2, 50, 5e12)]
    [InlineData(50, 2, 5e12)]
    [InlineData(1, 1e-28, 1e13)]
    [InlineData(1, 1e-27, 1e25)]
    [InlineData(1e-20, 1e-28, 1e41)]
    [InlineData(0, 4, 2.5e12)]
    [InlineData(0, 0, 0)]
    public void The_settled_period_is_many_of_the_slowest_time_constants_or_of_the_fastest(double first, double second, double seconds) =>
        Assert.Equal(seconds, ModesByHand.Terms([0.5, 0.5], [[(first, [1])], [(second, [1])]]).SettledPeriod, 1e-14 * seconds);

    [Fact]
    public void The_flow_in_use_is_the_one_given_and_its_shift()
    {
        // Two directions of one mode each, q = 1 and 2 of rates 4 and 9, and particular charges 3 and −2: shifts of −3 and 1 free it of both.
        ImpedanceTerms terms = ModesByHand.Terms([0.5, 0.5], [[(4, [3, 1, 0])], [(9, [-2, 0, 2])]], inputs: [5, 7]);
        Assert.Equal([-3, 1], terms.Shift, Closeness.Within(1e-15));
        Assert.Equal(4, terms.Shifted, 1e-15);
        Assert.Equal(0, terms.Constant, 1e-14);
        Assert.Equal([0, 0], terms.ConstantLinear, Closeness.Within(1e-14));
        Assert.Equal([2, 0, 0, 8], terms.ConstantSquare, Closeness.Within(1e-14));
        Assert.Equal([5, 7], terms.Input);
        Assert.Equal(0.5 - 15 + 7, terms.OwnInput, 1e-14);
        Assert.Equal([4, 9], terms.Modes.Rates);
        Assert.Equal([0.5, 0.5], terms.Modes.Duties);
    }

    [Fact]
    public void A_direction_that_moves_no_capacitor_takes_nothing_from_the_input()
    {
        ImpedanceTerms terms = ModesByHand.Terms([0.5, 0.5], [[(4, [3, 1, 0])], [(0, [-2, 0, 2])]], inputs: [5, 7]);
        Assert.Equal([5, 0], terms.Input);
        Assert.Equal(0.5 - 15, terms.OwnInput, 1e-14);
        Assert.Empty(ModesByHand.Terms([0.5, 0.5], [[(4, [3, 1, 0])], [(0, [-2, 0, 2])]], inputs: [0, 0]).Input);
    }

    private static ImpedanceKernel Kernel(double[] duties, (double Rate, double[] Charges)[][] phases, bool isTied = false, double[]? inputs = null) =>
        ImpedanceKernel.Of(ModesByHand.Terms(duties, phases, inputs), isTied);
}
