using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Every value moved by its own fraction of its tolerance.</summary>
public sealed class ComponentTolerancesTests
{
    private static readonly Converter s_nominal = Converter.Create("two").Input("vin").Output("vout")
        .Capacitor("a", "p", "n", 1e-9, esrOhms: 2).Capacitor("b", "p", "n", 2e-9, esrOhms: 4)
        .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
        .Switch("s3", "p", "vout", on: 2, ohms: 3).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: 4).Build();

    private static readonly ComponentTolerances s_tolerances = new(capacitance: 0.5, onResistance: 0.25, esr: 0.125);

    [Fact]
    public void Capacitances_come_first_then_on_resistances_then_series_resistances()
    {
        Converter moved = s_tolerances.Apply(s_nominal, [1, -1, 1, -1, 0.5, 0, -1, 1]);
        Assert.Equal([1.5e-9, 1e-9], moved.Capacitors.Select(c => c.Farads), Closeness.Within(1e-24));
        Assert.Equal([1.25, 1.5, 3.375, 4], moved.Switches.Select(s => s.Ohms), Closeness.Within(1e-15));
        Assert.Equal([1.75, 4.5], moved.Capacitors.Select(c => c.EsrOhms), Closeness.Within(1e-15));
    }

    [Fact]
    public void A_kind_is_moved_as_a_whole()
    {
        Converter moved = s_tolerances.Apply(s_nominal, capacitance: 1, onResistance: -1, esr: 1);
        Assert.Equal([1.5e-9, 3e-9], moved.Capacitors.Select(c => c.Farads), Closeness.Within(1e-24));
        Assert.Equal([0.75, 1.5, 2.25, 3], moved.Switches.Select(s => s.Ohms), Closeness.Within(1e-15));
        Assert.Equal([2.25, 4.5], moved.Capacitors.Select(c => c.EsrOhms), Closeness.Within(1e-15));
    }

    [Fact]
    public void Tolerances_are_shown_in_per_cent() =>
        Assert.Equal("capacitance ±50 %, on-resistance ±25 %, ESR ±12.5 %", s_tolerances.ToString());

    [Theory]
    [InlineData(-1e-9)]
    [InlineData(1)]
    [InlineData(double.NaN)]
    public void A_fraction_that_is_negative_or_one_is_refused_by_its_name(double tolerance)
    {
        Assert.Throws<ArgumentOutOfRangeException>("capacitance", () => new ComponentTolerances(capacitance: tolerance));
        Assert.Throws<ArgumentOutOfRangeException>("onResistance", () => new ComponentTolerances(onResistance: tolerance));
        Assert.Throws<ArgumentOutOfRangeException>("esr", () => new ComponentTolerances(esr: tolerance));
    }

    [Fact]
    public void Zero_and_almost_one_are_taken()
    {
        ComponentTolerances tolerances = new(0.999999, 0, 0.999999);
        Assert.Equal((0.999999, 0, 0.999999), (tolerances.Capacitance, tolerances.OnResistance, tolerances.Esr));
    }
}
