using ScNet.Design.Sizing;
using ScNet.Devices;

namespace ScNet.Tests.Design.Sizing;

public sealed class AreaBudgetTests
{
    [Theory]
    [InlineData(1e-6, null, null, true)]
    [InlineData(null, 1e-6, 2e-6, true)]
    [InlineData(null, 1e-6, null, false)]
    [InlineData(null, null, 2e-6, false)]
    public void Both_kinds_are_bounded_by_a_total_or_by_an_area_each(double? total, double? ofCapacitors, double? ofSwitches, bool isBounded) =>
        Assert.Equal(isBounded, new AreaBudget(total, ofCapacitors, ofSwitches).IsBounded);

    [Fact]
    public void A_multiple_multiplies_every_area()
    {
        Assert.Equal(new AreaBudget(8, 4, 2), new AreaBudget(4, 2, 1).Times(2));
        Assert.Equal(new AreaBudget(null, null, 2), new AreaBudget(null, null, 1).Times(2));
    }

    [Fact]
    public void Areas_are_told_in_square_millimetres() =>
        Assert.Equal("2 mm² in all, 1.5 mm² of capacitors, 0.5 mm² of switches", new AreaBudget(2e-6, 1.5e-6, 0.5e-6).ToString());

    [Fact]
    public void No_area_is_zero()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new AreaBudget(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AreaBudget(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new AreaBudget(1, 1, 0));
    }

    // n (√(k a) + s)²: two devices of 2 · 4 m² each per unit, factor 2, spacing 3 m: 2 (√16 + 3)² at one unit, 2 (√64 + 3)² at four
    [Fact]
    public void An_area_law_grows_with_its_value_and_the_root_of_it()
    {
        AreaLaw law = AreaLaw.Of(new ElementOption<CapacitorDevice>(
            new() { Name = "c", Source = "invented", RatedVolts = 1, FaradsPerSquareMetre = 0.25, StackAreaFactor = 2, GuardMetres = 3 }, 2));
        Assert.Equal(2 * 7 * 7, law.At(1), 1e-12);
        Assert.Equal(2 * 11 * 11, law.At(4), 1e-12);
    }
}
