using CsCheck;

namespace ScNet.Tests;

[Trait("Kind", "Law")]
public sealed class PhaseSetTests
{
    [Fact]
    public void The_default_is_no_phase()
    {
        PhaseSet set = default;

        Assert.Empty(set);
        Assert.Equal((PhaseSet.None, "[]"), (set, set.ToString()));
        Assert.False(set.Contains(1));
        Assert.Equal(PhaseSet.Of(), set);
        Assert.Equal(PhaseSet.Of().GetHashCode(), set.GetHashCode());
    }

    [Fact]
    public void Order_and_repeats_do_not_matter() => Gen.Int[1, 9].Array[0, 8].Holds(numbers =>
    {
        PhaseSet set = PhaseSet.Of(numbers);
        PhaseSet reversed = PhaseSet.Of([.. numbers.Reverse(), .. numbers]);

        Assert.Equal(numbers.Distinct().Order(), set);
        Assert.True(set == reversed);
        Assert.False(set != reversed);
        Assert.Equal(set.GetHashCode(), reversed.GetHashCode());
        Assert.All(Enumerable.Range(0, 11), n => Assert.Equal(numbers.Contains(n), set.Contains(n)));
    });

    [Fact]
    public void Numbers_and_collections_convert()
    {
        PhaseSet one = 1;
        PhaseSet several = [3, 1];

        Assert.Equal(("[1]", "[1, 3]"), (one.ToString(), several.ToString()));
        Assert.Equal(one, PhaseSet.FromInt32(1));
        Assert.Equal(3, several[1]);
        Assert.NotEqual(one, several);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void A_number_below_one_is_refused(int number) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PhaseSet.Of(1, number));
}
