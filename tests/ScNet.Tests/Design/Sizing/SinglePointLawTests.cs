using ScNet.Design.Sizing;

namespace ScNet.Tests.Design.Sizing;

public sealed class SinglePointLawTests
{
    // 2/(4 · 5) + 3/6 + 5 (7 · 4 + 11 · 6)
    [Fact]
    public void A_loss_is_charge_sharing_conduction_and_what_swings() =>
        Assert.Equal(0.1 + 0.5 + (5 * (28 + 66)), new SinglePointLaw(2, 3, 7, 11).LossWatts(5, 4, 6), 1e-12);

    [Fact]
    public void All_but_plates_cost_something()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new SinglePointLaw(0, 1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SinglePointLaw(1, 0, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new SinglePointLaw(1, 1, 1, 0));
        Assert.Equal(0, new SinglePointLaw(1, 1, 0, 1).JoulesPerFarad);
    }

    [Theory]
    [InlineData(0, 1, 1)]
    [InlineData(1, 0, 1)]
    [InlineData(1, 1, 0)]
    public void Nothing_is_zero_at_a_loss(double hertz, double farads, double siemens) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SinglePointLaw(1, 1, 1, 1).LossWatts(hertz, farads, siemens));

    [Fact]
    public void An_optimum_of_nothing_is_refused_by_name()
    {
        SinglePointLaw law = new(1, 1, 1, 1);
        Assert.Equal("farads", Assert.Throws<ArgumentOutOfRangeException>(() => SinglePointOptimum.OfFrequency(law, 0, 1)).ParamName);
        Assert.Equal("siemens", Assert.Throws<ArgumentOutOfRangeException>(() => SinglePointOptimum.OfFrequency(law, 1, 0)).ParamName);
        Assert.Equal("farads", Assert.Throws<ArgumentOutOfRangeException>(() => SinglePointOptimum.OfFrequencyAndConductance(law, 0)).ParamName);
        Assert.Equal("areaSquareMetres", Assert.Throws<ArgumentOutOfRangeException>(() => SinglePointOptimum.OfArea(law, 0, 1, 1)).ParamName);
    }
}
