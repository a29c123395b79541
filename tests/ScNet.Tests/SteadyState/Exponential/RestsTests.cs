using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Two orthonormal directions q = (0.6, 0.8, 0) and (0, 0, 1) out of three states, one input.</summary>
public sealed class RestsTests
{
    private static readonly double[] s_directions = [0.6, 0.8, 0, 0, 0, 1];

    /// <summary>
    /// What is left lies along p = (0.8, −0.6, 0): of [A b] p pᵀ A p pᵀ and p pᵀ b. With A p = (5, 10, ·) and b = (2, 1, ·),
    /// pᵀ A p = 4 − 6 = −2 and pᵀ b = 1.
    /// </summary>
    [Fact]
    public void A_generator_keeps_what_is_left_on_both_sides_and_of_its_inputs()
    {
        DoubleDouble[] generator = WrittenEquations.Numbers<DoubleDouble>([7.75, 2, 9, 2, 14, 2, -3, 1, 5, 8, 6, 4]);
        Rests.HoldGenerator<DoubleDouble>(WrittenEquations.Numbers<DoubleDouble>(s_directions), 3, 4, generator);
        Close([-1.28, 0.96, 0, 0.8, 0.96, -0.72, 0, -0.6, 0, 0, 0, 0], generator);
    }

    /// <summary>One plus the change loses q qᵀ of every direction: of nothing that changes it is −q qᵀ; inputs stay.</summary>
    [Fact]
    public void A_change_takes_away_what_was_there_at_the_start()
    {
        DoubleDouble[] change = WrittenEquations.Numbers<DoubleDouble>([1, 0, 0, 5, 0, 2, 0, 6, 0, 0, 3, 7]);
        Rests.HoldChange<DoubleDouble>(WrittenEquations.Numbers<DoubleDouble>(s_directions), 3, 4, change);
        Close([0.64, -0.48, 0, 5, -0.48, 1.36, 0, 6, 0, 0, 2, 7], change);
    }

    /// <summary>Each row m over the states becomes (m · p) pᵀ: (10, 5) · (0.8, −0.6) = 5, and so on.</summary>
    [Fact]
    public void An_integral_sees_nothing_of_the_directions()
    {
        DoubleDouble[] integral = WrittenEquations.Numbers<DoubleDouble>([10, 5, 3, 5, 0, 10, 4, 6, 5, 0, 9, 7]);
        Rests.HoldIntegral<DoubleDouble>(WrittenEquations.Numbers<DoubleDouble>(s_directions), 3, 4, integral);
        Close([4, -3, 0, 5, -4.8, 3.6, 0, 6, 3.2, -2.4, 0, 7], integral);
    }

    [Fact]
    public void Without_directions_nothing_changes()
    {
        DoubleDouble[] matrix = WrittenEquations.Numbers<DoubleDouble>([1, 2, 3, 4, 5, 6]);
        Rests.HoldGenerator<DoubleDouble>([], 2, 3, matrix);
        Rests.HoldChange<DoubleDouble>([], 2, 3, matrix);
        Rests.HoldIntegral<DoubleDouble>([], 2, 3, matrix);
        Close([1, 2, 3, 4, 5, 6], matrix);
    }

    private static void Close(double[] expected, DoubleDouble[] actual)
    {
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], actual[k].Nearest, 1e-14);
        }
    }
}
