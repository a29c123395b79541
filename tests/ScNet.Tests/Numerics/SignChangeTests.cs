using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Between which values a function changes its sign.</summary>
public sealed class SignChangeTests
{
    [Theory]
    [InlineData(-1, 2, true)]
    [InlineData(2, -1, true)]
    [InlineData(-1e-300, 1e-300, true)]
    [InlineData(double.NegativeInfinity, double.Epsilon, true)]
    [InlineData(-1, -2, false)]
    [InlineData(1, 2, false)]
    [InlineData(0, 2, false)]
    [InlineData(0, -2, false)]
    [InlineData(2, 0, false)]
    [InlineData(-2, 0, false)]
    [InlineData(0, 0, false)]
    [InlineData(double.NaN, 1, false)]
    [InlineData(double.NaN, -1, false)]
    public void A_sign_changes_between_numbers_of_opposite_signs_alone(double atLow, double atHigh, bool expected) =>
        Assert.Equal(expected, SignChange.LiesBetween(atLow, atHigh));
}
