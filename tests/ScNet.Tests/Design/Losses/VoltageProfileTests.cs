using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

public sealed class VoltageProfileTests
{
    // steps of 2, -3 and, back to the start, 1
    [Fact]
    public void Fixed_voltages_have_one_sum_of_squares()
    {
        VoltageProfile fixedVolts = Of((1, 1), (3, 3), (0, 0));
        Assert.Equal((4 + 9 + 1) / 2.0, fixedVolts.HalfSquares());
        Assert.True(fixedVolts.IsFixed);
        Assert.False(Of((1, 1), (3, 3.5)).IsFixed);
        Assert.Equal(0, Of((7, 7)).HalfSquares());
    }

    // each by hand: the ends of the bounds that lie farthest apart
    [Fact]
    public void Bounds_allow_the_largest_sum_of_squares_among_their_ends()
    {
        Assert.Equal(9, Of((-3, 1), (0, 0)).HalfSquares());
        Assert.Equal(9, Of((-1, 3), (0, 0)).HalfSquares());

        // through -1: 1 + 9 + 4, through 2: 4 + 0 + 4
        Assert.Equal(7, Of((0, 0), (-1, 2), (2, 2)).HalfSquares());

        // -1 then 2, or 2 then -1: 1 + 9 + 4
        Assert.Equal(7, Of((0, 0), (-1, 2), (-1, 2), (0, 0)).HalfSquares());
    }

    [Fact]
    public void The_largest_sum_of_squares_is_that_of_all_choices_of_ends()
    {
        Random random = new(5);
        for (int trial = 0; trial < 50; trial++)
        {
            (double Low, double High)[] phases = [.. Enumerable.Range(0, 1 + (trial % 5)).Select(_ => (Low: random.Next(-4, 5), Width: random.Next(0, 3)))
                .Select(p => ((double)p.Low, (double)(p.Low + p.Width)))];
            double most = Enumerable.Range(0, 1 << phases.Length).Max(choice =>
            {
                double[] volts = [.. phases.Select((p, j) => (choice >> j & 1) == 0 ? p.Low : p.High)];
                return volts.Select((v, j) => v - volts[(j + 1) % volts.Length]).Sum(step => step * step) / 2;
            });
            Assert.Equal(most, Of(phases).HalfSquares());
        }
    }

    [Fact]
    public void The_mean_magnitude_weighs_the_longer_bound_of_each_phase_with_its_duty()
    {
        Assert.Equal((0.25 * 3) + (0.75 * 2), Of((-3, 1), (-1, 2)).MeanMagnitude([0.25, 0.75]));
        Assert.Equal(0.5 * 4, Of((-4, -4), (0, 0)).MeanMagnitude([0.5, 0.5]));
    }

    // from 10 … 12 less 1 … 4: 6 … 11, then 11 exactly: a step of 5 at most, there and back
    [Fact]
    public void The_bounds_of_a_difference_are_those_of_the_farthest_ends()
    {
        VoltageProfile difference = VoltageProfile.Difference(Of((10, 12), (11, 11)), Of((1, 4), (0, 0)))!;
        Assert.Equal(25, difference.HalfSquares());
        Assert.Equal(11, difference.MeanMagnitude([0.5, 0.5]));
        Assert.False(difference.IsFixed);
    }

    [Fact]
    public void A_difference_knows_no_more_than_both_of_its_voltages()
    {
        VoltageProfile plain = Of((1, 1)), relative = new([(1, 1)], isRelative: true), floating = new([(1, 1)], floats: true);
        Assert.Null(VoltageProfile.Difference(plain, null));
        Assert.Null(VoltageProfile.Difference(null, plain));
        Assert.Equal((false, false), Flags(VoltageProfile.Difference(plain, plain)!));
        Assert.Equal((true, false), Flags(VoltageProfile.Difference(relative, plain)!));
        Assert.Equal((true, false), Flags(VoltageProfile.Difference(plain, relative)!));
        Assert.Equal((false, true), Flags(VoltageProfile.Difference(floating, plain)!));
        Assert.Equal((false, true), Flags(VoltageProfile.Difference(plain, floating)!));
    }

    [Fact]
    public void But_for_a_constant_only_the_changes_are_known()
    {
        VoltageProfile relative = Of((1, 1), (3, 3)).ButForAConstant();
        Assert.Equal((true, false), Flags(relative));
        Assert.Equal(4, relative.HalfSquares());
        Assert.Equal((true, true), Flags(new VoltageProfile([(0, 1)], floats: true).ButForAConstant()));
    }

    private static (bool IsRelative, bool Floats) Flags(VoltageProfile profile) => (profile.IsRelative, profile.Floats);

    private static VoltageProfile Of(params (double Low, double High)[] phases) => new(phases);
}
