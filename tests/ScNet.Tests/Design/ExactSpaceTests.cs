using System.Numerics;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Kernel;

namespace ScNet.Tests.Design;

public sealed class ExactSpaceTests
{
    // x + y = 3 and x - y = 1; with a third unknown of which nothing is said
    [Fact]
    public void Linear_equations_have_their_solution_and_leave_the_rest_free()
    {
        VoltageSpace<BigInteger> space = ExactSpace.Where(3, [Row(1, 1, 0, -3), Row(1, -1, 0, -1)])!;
        Assert.Equal(Row(2, 1), space.Origin[..2]);
        Assert.Equal([false, false, true], Enumerable.Range(0, 3).Select(space.Moves));
        Assert.Equal(Row(0, 0, 0), ExactSpace.Where(3, [])!.Origin);
        Assert.Equal(3, ExactSpace.Where(3, [])!.Movements.Count);
    }

    [Fact]
    public void Equations_that_contradict_each_other_have_none() => Assert.Null(ExactSpace.Where(2, [Row(1, 1, -3), Row(2, 2, -5)]));

    [Fact]
    public void A_product_of_three_sums_over_all_places()
    {
        Assert.Equal(Row(70 + 8)[0], ExactSpace.Product(Row(2, 3, 0, 1), Row(5, 0, 7, 2), Row(7, 1, 1, 4)));
        Assert.True(ExactSpace.Product([], [], []).IsZero);
    }

    private static Rational<BigInteger>[] Row(params int[] values) => [.. values.Select(v => Rational<BigInteger>.Of(v))];
}
