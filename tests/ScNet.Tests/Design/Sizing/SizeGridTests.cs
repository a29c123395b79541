using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

public sealed class SizeGridTests
{
    [Theory]
    [InlineData(0, 1e-12)]
    [InlineData(0.1, 0)]
    [InlineData(-1, 1e-12)]
    [InlineData(0.1, double.NaN)]
    public void A_step_is_above_zero(double micrometres, double squareMetres) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SizeGrid(micrometres, squareMetres));

    [Fact]
    public void Both_steps_are_told_in_their_units()
    {
        // 2.5e-11 m² are 25 µm²
        Assert.Equal("0.5 µm, 25 µm²", new SizeGrid(0.5, 2.5e-11).ToString());
    }
}
