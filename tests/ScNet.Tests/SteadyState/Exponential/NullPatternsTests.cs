using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Null vectors of small reduced forms by hand.</summary>
public sealed class NullPatternsTests
{
    [Fact]
    public void Leading_entries_other_than_one_are_cleared_by_their_common_multiple()
    {
        // 4 a + 2 c - 3 d = 0 and 6 b - 5 c = 0: the third entry is the common multiple of 4 and 6
        List<int[]> patterns = NullPatterns.Of([4, 0, 2, -3, 0, 6, -5, 0], columns: 4, rank: 2);
        Assert.Equal(2, patterns.Count);
        Assert.Equal([-6, 10, 12, 0], patterns[0]);
        Assert.Equal([3, 0, 0, 4], patterns[1]);
    }

    [Fact]
    public void A_column_that_no_row_meets_is_free_by_itself()
    {
        List<int[]> patterns = NullPatterns.Of([0, 2, 0, 0, 0, 3], columns: 3, rank: 2);
        Assert.Equal([1, 0, 0], Assert.Single(patterns));
    }

    [Fact]
    public void Rows_without_a_leading_entry_are_left_out()
    {
        List<int[]> patterns = NullPatterns.Of([1, 1, 0, 0], columns: 2, rank: 1);
        Assert.Equal([-1, 1], Assert.Single(patterns));
    }

    [Fact]
    public void Without_rows_every_column_is_free()
    {
        List<int[]> patterns = NullPatterns.Of([], columns: 2, rank: 0);
        Assert.Equal([1, 0], patterns[0]);
        Assert.Equal([0, 1], patterns[1]);
    }

    [Fact]
    public void A_form_of_full_rank_has_none() => Assert.Empty(NullPatterns.Of([1, 0, 0, 1], columns: 2, rank: 2));
}
