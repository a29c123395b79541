using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Rows reduced by hand.</summary>
public sealed class RowReductionTests
{
    /// <summary>
    /// (1, 4, 2) by 4; (3, 2, 5) less twice that is (2.5, 0, 4), by 4; half of it off the first.
    /// </summary>
    [Fact]
    public void Each_row_has_a_one_where_the_others_vanish()
    {
        PlainReal[] rows = WrittenEquations.Numbers<PlainReal>([1, 4, 2, 3, 2, 5]);
        Assert.Equal([1, 2], RowReduction.Reduce<PlainReal>(rows, 2, 3));
        Assert.Equal([-0.0625, 1, 0, 0.625, 0, 1], WrittenEquations.Doubles<PlainReal>(rows));
    }

    [Fact]
    public void The_largest_magnitude_is_chosen_and_the_first_of_equal_ones()
    {
        PlainReal[] rows = WrittenEquations.Numbers<PlainReal>([1, -2, 2, 0.5]);
        Assert.Equal([1], RowReduction.Reduce<PlainReal>(rows, 1, 4));
        Assert.Equal([-0.5, 1, -1, -0.25], WrittenEquations.Doubles<PlainReal>(rows));
        rows = WrittenEquations.Numbers<PlainReal>([4, -3, 2, -8]);
        Assert.Equal([3], RowReduction.Reduce<PlainReal>(rows, 1, 4));
        Assert.Equal([-0.5, 0.375, -0.25, 1], WrittenEquations.Doubles<PlainReal>(rows));
    }

    /// <summary>The first row (4, 0, 0) has nothing to take off the second, the second (0, 0, 2) a quarter of the third's.</summary>
    [Fact]
    public void Rows_that_vanish_at_the_one_of_another_stay()
    {
        PlainReal[] rows = WrittenEquations.Numbers<PlainReal>([4, 0, 0, 0, 1, 2, 0, 8, 4]);
        Assert.Equal([0, 2, 1], RowReduction.Reduce<PlainReal>(rows, 3, 3));

        // second (0, 1/2, 1); third less four of it (0, 6, 0)
        Assert.Equal([1, 0, 0, 0, 0, 1, 0, 1, 0], WrittenEquations.Doubles<PlainReal>(rows));
    }

    [Fact]
    public void The_ones_are_exact_whatever_the_rounding_of_quotients()
    {
        PlainReal[] rows = WrittenEquations.Numbers<PlainReal>([0.1, 49, 3, 7]);
        Assert.Equal([1, 0], RowReduction.Reduce<PlainReal>(rows, 2, 2));
        Assert.Equal([0, 1, 1, 0], WrittenEquations.Doubles<PlainReal>(rows));
    }
}
