using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Equations with and without a skew part, of constant currents and one mode of rate 2 that no flow drives.</summary>
public sealed class ImpedanceKernelSymmetryTests
{
    // Charges of 5 + a and of b. With the skew part a + 2 b = -5 and b - 2 a = 0, so that a = -1 and b = -2: 4² + 2². With the phases reversed b = 2.
    [Fact]
    public void Directions_that_move_one_another_alone_are_no_symmetric_equations()
    {
        ImpedanceTerms terms = ModesByHand.Terms([1], [[(0, [5, 1, 0]), (0, [0, 0, 1]), (2, [0, 0, 0])]], skew: ([0, 2, -2, 0], [0, 0]));
        ImpedanceKernel kernel = ImpedanceKernel.Of(terms, isTied: false);
        Assert.Equal(20, kernel.Ohms(1), 1e-12);
        double[] amounts = new double[2];
        kernel.Amounts(1, amounts, reversed: false);
        Assert.Equal([-1, -2], amounts, Closeness.Within(1e-14));
        kernel.Amounts(1, amounts, reversed: true);
        Assert.Equal([-1, 2], amounts, Closeness.Within(1e-14));
    }

    // the particular flow alone is moved by the direction, by 3 each second: a = -(1 + 3), and charges of 1 + a dissipate 9; reversed a = -(1 - 3)
    [Fact]
    public void A_direction_that_moves_the_particular_flow_has_another_amount_with_the_phases_reversed()
    {
        ImpedanceTerms terms = ModesByHand.Terms([1], [[(0, [1, 1]), (2, [0, 0])]], skew: ([0], [3]));
        ImpedanceKernel kernel = ImpedanceKernel.Of(terms, isTied: false);
        Assert.Equal(9, kernel.Ohms(1), 1e-12);
        double[] amounts = new double[1];
        kernel.Amounts(1, amounts, reversed: true);
        Assert.Equal(2, amounts[0], 1e-14);
    }

    // twice the same direction takes the charge of the first mode together, whatever the share of either: 3² of the second is left
    [Fact]
    public void Directions_that_repeat_each_other_take_together_what_one_of_them_would()
    {
        ImpedanceKernel kernel = ModesByHand.Kernel([1], [(0, [1, 2, 2]), (0, [3, 0, 0])]);
        Assert.Equal(9, kernel.Ohms(1), 1e-12);
        double[] amounts = new double[2];
        kernel.Amounts(1, amounts, reversed: false);
        Assert.Equal(-0.5, amounts.Sum(), 1e-12);
    }
}
