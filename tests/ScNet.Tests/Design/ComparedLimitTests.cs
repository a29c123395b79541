using CsCheck;
using ScNet.Design;

namespace ScNet.Tests.Design;

[Trait("Kind", "Law")]
public sealed class ComparedLimitTests
{
    private static readonly Gen<(int Coefficient, double Value)[]> s_elements =
        Gen.Select(Gen.Int[0, 50], Gen.Double[0.01, 100]).Array[1, 8];

    [Fact]
    public void The_best_split_is_never_worse_than_any_other()
    {
        s_elements.Holds(elements =>
        {
            ComparedLimit limit = Limit(elements);
            Assert.True(limit.BestSplitOhms <= limit.OwnProportionsOhms * (1 + 1e-12));
        });
    }

    [Fact]
    public void Values_in_proportion_to_the_roots_of_the_coefficients_reach_the_best_split()
    {
        s_elements.Holds(elements =>
        {
            ComparedLimit limit = Limit([.. elements.Where(e => e.Coefficient > 0).Select(e => (e.Coefficient, Math.Sqrt(e.Coefficient)))]);
            Assert.Equal(limit.BestSplitOhms!.Value, limit.OwnProportionsOhms!.Value, 1e-12 * limit.BestSplitOhms.Value);
        });
    }

    [Fact]
    public void The_own_proportions_do_not_depend_on_the_scale_of_the_values()
    {
        ComparedLimit small = ComparedLimit.Of(["a", "b"], [Quantity.Exact(1, 9), Quantity.Exact(1, 9)], [1e-12, 2e-12], 1);
        ComparedLimit large = ComparedLimit.Of(["a", "b"], [Quantity.Exact(1, 9), Quantity.Exact(1, 9)], [1, 2], 1);
        Assert.Equal(0.5, small.OwnProportionsOhms!.Value, 1e-12);
        Assert.Equal(0.5, large.OwnProportionsOhms!.Value, 1e-12);
    }

    [Fact]
    public void An_undetermined_coefficient_is_named_and_leaves_no_figure()
    {
        ComparedLimit limit = ComparedLimit.Of(["a", "b"], [Quantity.Exact(1), Quantity.Undetermined], [1, 1], 1);
        Assert.Null(limit.OwnProportionsOhms);
        Assert.Null(limit.BestSplitOhms);
        Assert.Equal(["b"], limit.Undetermined);
    }

    [Fact]
    public void A_numeric_coefficient_makes_the_best_split_an_estimate()
    {
        Assert.True(ComparedLimit.Of(["a"], [Quantity.Numeric(0.25)], [1], 1).DependsOnComponentValues);
        Assert.False(ComparedLimit.Of(["a"], [Quantity.Exact(1, 4)], [1], 1).DependsOnComponentValues);
    }

    [Fact]
    public void No_elements_have_no_impedance()
    {
        ComparedLimit limit = ComparedLimit.Of([], [], [], 1);
        Assert.Equal(0, limit.OwnProportionsOhms);
        Assert.Equal(0, limit.BestSplitOhms);
    }

    private static ComparedLimit Limit((int Coefficient, double Value)[] elements) => ComparedLimit.Of(
        [.. elements.Select((_, i) => $"e{i}")],
        [.. elements.Select(e => Quantity.Exact(e.Coefficient))],
        [.. elements.Select(e => e.Value)],
        total: 3);
}
