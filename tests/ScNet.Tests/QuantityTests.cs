using System.Numerics;
using CsCheck;
using Fractions;

namespace ScNet.Tests;

[Trait("Kind", "Law")]
public sealed class QuantityTests
{
    [Fact]
    public void The_magnitude_keeps_the_kind_of_a_quantity()
    {
        Assert.Equal([Quantity.Exact(1, 2), Quantity.Exact(1, 2), Quantity.Zero], new[] { Quantity.Exact(-1, 2), Quantity.Exact(1, 2), Quantity.Zero }.Select(q => q.Abs()));
        Assert.Equal(Quantity.Numeric(2.5), Quantity.Numeric(-2.5).Abs());
        Assert.Equal(Quantity.Undetermined, Quantity.Undetermined.Abs());
    }

    private static readonly Fraction s_huge = new(BigInteger.Pow(10, 30), 7);

    [Fact]
    public void The_default_is_undetermined_and_has_no_value()
    {
        Quantity quantity = default;

        Assert.Equal(QuantityKind.Undetermined, quantity.Kind);
        Assert.Equal(Quantity.Undetermined, quantity);
        Assert.False(quantity.IsDetermined);
        Assert.Equal("?", quantity.ToString());
        Assert.Equal(quantity, -quantity);
        Assert.False(quantity.TryGetFraction(out _));
        Assert.Throws<InvalidOperationException>(() => quantity.ToFraction());
        Assert.Throws<InvalidOperationException>(() => quantity.ToDouble());
        Assert.False(quantity.TryGetSign(out int sign) || sign != 0);
        Assert.False(quantity.TryGetDouble(out double value) || value != 0);
    }

    [Fact]
    public void Undetermined_is_not_zero() => Assert.NotEqual(Quantity.Zero, Quantity.Undetermined);

    [Theory]
    [InlineData(2, 4, "1/2")]
    [InlineData(2, -4, "-1/2")]
    [InlineData(-6, -3, "2")]
    [InlineData(0, -7, "0")]
    [InlineData(long.MaxValue, 1, "9223372036854775807")]
    [InlineData(long.MinValue, -1, "9223372036854775808")]
    [InlineData(1, long.MinValue, "-1/9223372036854775808")]
    public void An_exact_quantity_is_reduced(long numerator, long denominator, string expected)
    {
        Quantity quantity = Quantity.Exact(numerator, denominator);

        Assert.Equal(expected, quantity.ToString());
        Assert.Equal(new Fraction(numerator) / new Fraction(denominator), quantity.ToFraction());
        Assert.Equal(quantity.ToFraction().Numerator.Sign, quantity.Sign);
    }

    [Fact]
    public void A_denominator_of_zero_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Quantity.Exact(1, 0));
        Assert.Throws<ArgumentException>(() => Quantity.Exact(Fraction.PositiveInfinity));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    public void A_number_that_is_not_finite_is_refused(double value) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Quantity.Numeric(value));

    [Fact]
    public void Big_values_keep_every_digit()
    {
        Quantity quantity = s_huge;

        Assert.Equal("1000000000000000000000000000000/7", quantity.ToString());
        Assert.Equal(s_huge, quantity.ToFraction());
        Assert.Equal("-1000000000000000000000000000000/7", (-quantity).ToString());
        Assert.Equal(1e30 / 7, quantity.ToDouble(), 1e15);
        Assert.Equal((1, -1), (quantity.Sign, (-quantity).Sign));
    }

    [Fact]
    public void Equal_fractions_are_equal_and_hash_alike_however_they_were_made() => Gen.Select(Gen.Long, Gen.Long, Gen.Int[1, 1000], Gen.Bool).Holds(
        (numerator, denominator, factor, big) =>
        {
            if (denominator == 0)
            {
                return;
            }

            BigInteger scale = big ? BigInteger.Pow(factor, 20) : factor;
            Quantity plain = Quantity.Exact(numerator, denominator);
            Quantity unreduced = new Fraction(numerator * scale, denominator * scale, false);
            Assert.True(plain == unreduced);
            Assert.False(plain != unreduced);
            Assert.True(plain.Equals((object)unreduced));
            Assert.Equal(plain.GetHashCode(), unreduced.GetHashCode());
            Assert.Equal(plain.ToString(), unreduced.ToString());
            Assert.Equal(plain, -(-plain));
        });

    [Fact]
    public void Equal_big_values_are_equal_and_hash_alike()
    {
        Quantity left = s_huge;
        Quantity right = new Fraction(s_huge.Numerator * 6, s_huge.Denominator * 6, false);

        Assert.Equal(left, right);
        Assert.Equal(left.GetHashCode(), right.GetHashCode());
        Assert.NotEqual(left, -right);
    }

    [Fact]
    public void Exact_and_numeric_are_different_outcomes_even_with_the_same_value()
    {
        Assert.NotEqual(Quantity.Exact(1, 2), Quantity.Numeric(0.5));
        Assert.Equal(Quantity.Numeric(0.5), Quantity.Numeric(0.5));
        Assert.Equal(Quantity.Numeric(0.5).GetHashCode(), Quantity.Numeric(0.5).GetHashCode());
        Assert.NotEqual(Quantity.Numeric(0.5), Quantity.Numeric(0.25));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void Text_is_the_same_under_every_culture(string culture)
    {
        System.Globalization.CultureInfo before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = new System.Globalization.CultureInfo(culture);
            Assert.Equal("0.333333", Quantity.Numeric(1.0 / 3).ToString());
            Assert.Equal("-1.50", Quantity.Numeric(-1.5).ToString("F2", System.Globalization.CultureInfo.CurrentCulture));
            Assert.Equal("-1/3", Quantity.Exact(-1, 3).ToString());
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Whole_numbers_and_fractions_convert()
    {
        Quantity two = 2;
        Quantity third = new Fraction(1, 3);

        Assert.Equal(("2", "1/3"), (two.ToString(), third.ToString()));
        Assert.Equal((two, third), (Quantity.FromInt32(2), Quantity.FromFraction(new Fraction(1, 3))));
        Assert.Equal(-two, Quantity.Negate(two));
    }
}
