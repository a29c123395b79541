using CsCheck;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Doubled precision against fixed-point numbers of a hundred digits.</summary>
[Trait("Kind", "Law")]
public sealed class DoubleDoubleTests
{
    private static readonly Gen<double> s_numbers = Gen.Double[-1e6, 1e6].Where(x => Math.Abs(x) > 1e-6);

    [Fact]
    public void Every_operation_is_within_the_stated_rounding() => Gen.Select(s_numbers, s_numbers, s_numbers, s_numbers).Holds(
        (a, b, c, d) =>
        {
            // quotients have all digits
            DoubleDouble x = DoubleDouble.Of(a) / DoubleDouble.Of(b), y = DoubleDouble.Of(c) / DoubleDouble.Of(d);
            BigReal bigX = Exact(x), bigY = Exact(y);
            Assert.True(Off((BigReal)a / b, x) < DoubleDouble.Rounding);
            Assert.True(Off(bigX * bigY, x * y) < DoubleDouble.Rounding);
            Assert.True(Off(bigX / bigY, x / y) < DoubleDouble.Rounding);
            Assert.True(Off(bigX + bigY, x + y) < DoubleDouble.Rounding);
            Assert.True(Off(bigX - bigY, x - y) < DoubleDouble.Rounding);
            DoubleDouble root = DoubleDouble.Sqrt(x * x);
            Assert.True(Off(Exact(x * x), root * root) < 4 * DoubleDouble.Rounding);
        },
        2000);

    [Fact]
    public void Roots_of_zero_and_of_negative_numbers_are_those_of_doubles()
    {
        Assert.Equal(0, DoubleDouble.Sqrt(DoubleDouble.Of(0)).Nearest);
        Assert.True(double.IsNaN(DoubleDouble.Sqrt(DoubleDouble.Of(-1)).Nearest));
    }

    /// <summary>The derivative of √(x³/(1 + x)) − x.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(7)]
    public void Dual_numbers_carry_the_derivative(double at)
    {
        Dual<DoubleDouble> x = new(DoubleDouble.Of(at), DoubleDouble.Of(1));
        Dual<DoubleDouble> y = Dual<DoubleDouble>.Sqrt(x * x * x / (Dual<DoubleDouble>.Of(1) + x)) - x;
        double inner = at * at * at / (1 + at), slope = ((3 * at * at * (1 + at)) - (at * at * at)) / ((1 + at) * (1 + at));
        Assert.Equal(Math.Sqrt(inner) - at, y.Nearest, 1e-14);
        Assert.Equal((slope / (2 * Math.Sqrt(inner))) - 1, y.Slope.Nearest, 1e-14);
    }

    private static BigReal Exact(DoubleDouble value) => (BigReal)value.Nearest + (value - DoubleDouble.Of(value.Nearest)).Nearest;

    private static double Off(BigReal expected, DoubleDouble actual) => Math.Abs((double)((Exact(actual) - expected) / expected));
}
