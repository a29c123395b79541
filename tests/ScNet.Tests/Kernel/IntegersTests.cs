using System.Numerics;
using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class IntegersTests
{
    [Fact]
    public void The_greatest_common_divisor_agrees_with_the_librarys_for_big_integers() =>
        Gen.Select(Gen.Long[-long.MaxValue, long.MaxValue], Gen.Long[-long.MaxValue, long.MaxValue], Gen.Long[1, 1000]).Holds((a, b, k) =>
        {
            (a, b) = (a / 1000 * k / k, b / 1000);
            BigInteger expected = BigInteger.GreatestCommonDivisor(a * (BigInteger)k, b * (BigInteger)k);
            Assert.Equal(expected.IsZero ? 1 : expected, Integers.Gcd(a * (BigInteger)k, b * (BigInteger)k));
            Assert.Equal(expected.IsZero ? 1 : expected, Integers.Gcd(a * k, b * k));
        });

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(0, -7, 7)]
    [InlineData(-12, 18, 6)]
    [InlineData(1, long.MaxValue, 1)]
    [InlineData(long.MaxValue, long.MaxValue, long.MaxValue)]
    [InlineData(7_540_113_804_746_346_429, 4_660_046_610_375_530_309, 1)]
    public void Hand_made_cases_hold_on_both_kinds_of_integers(long a, long b, long expected)
    {
        // the last case: neighbouring Fibonacci numbers, the longest run of remainders there is in 63 bits
        Assert.Equal(expected, Integers.Gcd(a, b));
        Assert.Equal(expected, Integers.Gcd((BigInteger)a, b));
    }

    [Fact]
    public void An_overflow_is_not_forgotten_at_the_next()
    {
        bool hasOverflown = false;
        Integers.Multiply(1 << 20, 1 << 20, ref hasOverflown);
        Assert.True(hasOverflown);
        Integers.Multiply(1 << 20, 1 << 20, ref hasOverflown);
        Assert.True(hasOverflown);
        Integers.Multiply(2, 3, ref hasOverflown);
        Assert.True(hasOverflown);
    }

    [Fact]
    public void The_smallest_machine_integer_has_no_magnitude_and_overflows()
    {
        Assert.Throws<OverflowException>(() => Integers.Gcd(long.MinValue, 6L));
        Assert.Throws<OverflowException>(() => Integers.Gcd(6L, long.MinValue));
        Assert.Equal(2, Integers.Gcd((BigInteger)long.MinValue, 6));
    }
}
