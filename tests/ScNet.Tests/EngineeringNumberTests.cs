namespace ScNet.Tests;

public sealed class EngineeringNumberTests
{
    [Theory]
    [InlineData(2.5e8, "250 MX")]
    [InlineData(1.2e-9, "1.2 nX")]
    [InlineData(0.0, "0 X")]
    [InlineData(1.0, "1 X")]
    [InlineData(-0.0471234, "-47.12 mX")]
    [InlineData(999.94, "999.9 X")]
    [InlineData(999.96, "1 kX")]
    [InlineData(-999.96, "-1 kX")]
    [InlineData(1e-6, "1 µX")]
    [InlineData(1e-18, "1 aX")]
    [InlineData(9.9996e-19, "1 aX")]
    [InlineData(1.5e-19, "1.5E-19 X")]
    [InlineData(9.99e20, "999 EX")]
    [InlineData(1e21, "1E+21 X")]
    [InlineData(5e-324, "4.941E-324 X")]
    [InlineData(double.MaxValue, "1.798E+308 X")]
    [InlineData(double.PositiveInfinity, "∞ X")]
    [InlineData(double.NegativeInfinity, "-∞ X")]
    [InlineData(double.NaN, "?")]
    [InlineData(null, "?")]
    public void A_value_has_four_digits_a_prefix_and_its_unit(double? value, string expected)
    {
        using CultureScope scope = new("de-DE");
        Assert.Equal(expected, EngineeringNumber.Of(value, "X"));
    }
}
