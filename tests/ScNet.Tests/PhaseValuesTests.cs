using System.Numerics;
using Fractions;

namespace ScNet.Tests;

public sealed class PhaseValuesTests
{
    [Fact]
    public void The_peak_is_the_value_of_the_largest_magnitude() =>
        Assert.Equal(Quantity.Exact(-2, 3), Of(Quantity.Exact(1, 2), Quantity.Exact(-2, 3), 0).Peak());

    [Theory]
    [InlineData(1, -1)]
    [InlineData(-1, 1)]
    public void The_positive_one_wins_a_tie(int first, int second) => Assert.Equal(Quantity.Exact(1), Of(first, second).Peak());

    [Fact]
    public void One_undetermined_phase_makes_the_peak_undetermined() =>
        Assert.Equal(Quantity.Undetermined, Of(5, Quantity.Undetermined, 1).Peak());

    [Fact]
    public void The_peak_of_zeros_is_zero() => Assert.Equal(Quantity.Zero, Of(0, 0).Peak());

    [Fact]
    public void Exact_and_numeric_values_compare() =>
        Assert.Equal(Quantity.Numeric(-0.75), Of(Quantity.Exact(1, 2), Quantity.Numeric(-0.75)).Peak());

    [Fact]
    public void Exact_values_compare_exactly_where_doubles_cannot_tell()
    {
        Quantity larger = new Fraction(BigInteger.Pow(10, 40) + 1, BigInteger.Pow(10, 40));

        Assert.Equal(larger, Of(-1, larger, 1).Peak());
        Assert.Equal(-larger, Of(1, -larger, 1).Peak());
    }

    [Fact]
    public void A_table_gives_one_row_per_element()
    {
        PhaseTable table = Tables.Of([1, 2, 3, 4], 2, 2);

        Assert.Equal(["[1, 2]", "[3, 4]"], table.Select(v => v.ToString()));
        Assert.Equal(Quantity.Exact(4), table[1][2]);
        Assert.Throws<ArgumentOutOfRangeException>(() => table[2]);
        foreach (int number in (int[])[0, 3])
        {
            ArgumentOutOfRangeException exception = Assert.Throws<ArgumentOutOfRangeException>(() => table[0][number]);
            Assert.Equal(number, exception.ActualValue);
            Assert.StartsWith("Expected a phase number from 1 to 2.", exception.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Equal_values_are_equal_and_hash_alike()
    {
        PhaseTable table = Tables.Of([1, 2, 1, 2, 2, 1], 3, 2);

        Assert.True(table[0] == table[1]);
        Assert.True(table[0] != table[2]);
        Assert.True(table[0].Equals((object)table[1]));
        Assert.Equal(table[0].GetHashCode(), table[1].GetHashCode());
    }

    [Fact]
    public void The_default_is_empty()
    {
        Assert.Empty(default(PhaseValues));
        Assert.Equal("[]", default(PhaseValues).ToString());
    }

    private static PhaseValues Of(params Quantity[] values) => Tables.Row(values);
}
