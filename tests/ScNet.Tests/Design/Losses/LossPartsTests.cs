using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Losses;

/// <summary>Cores, diodes and the shares of charge sharing, by their formulas.</summary>
public sealed class LossPartsTests
{
    // 5e5 A per volt and second at 4 V and 2 MHz: 1 A; 8 V: 2 A
    [Fact]
    public void A_core_loses_by_the_powers_of_its_device()
    {
        InductorDevice device = new() { Name = "coil", Source = "invented", Henries = 1, Ohms = 0, CoreWatts = 0.25, CoreFrequencyExponent = 3, CoreRippleExponent = 2 };
        CoreTerm term = new("coil", device, 5e5);
        Assert.Equal(0.25 * 8, term.At(4, 2e6), 1e-12);
        Assert.Equal(0.25 * 8 * 4, term.At(8, 2e6), 1e-12);
        Assert.Equal(0.25 * 27 * 9, CoreTerm.Of(device, 3e6, 3), 1e-12);
    }

    // 2 · 10 Hz · 0.5 s · 0.7 V · |3 · 2 A - 4 · 5 V / 10 Hz|
    [Theory]
    [InlineData(-4, 3.5 * 4)]
    [InlineData(4, 3.5 * 8)]
    [InlineData(-20, 3.5 * 4)]
    public void A_diode_carries_the_current_at_its_edge_for_the_dead_time(double perVoltSecond, double watts) =>
        Assert.Equal(watts, new DiodeTerm("low", 0.7, 3, perVoltSecond).At(volts: 5, amperes: 2, hertz: 10, deadSeconds: 0.5), 1e-12);

    // both capacitors of a Dickson divider by three have the coefficient 1/9: k/C is 1/9 and 1/18
    [Fact]
    public void The_smaller_of_two_equally_charged_capacitors_has_the_larger_share()
    {
        Converter third = Dickson.StepDown(3).WithValues(farads: [1e-6, 2e-6]);
        IReadOnlyList<(string Name, double Share)> shares = SharingShares.Of(ModeAnalysis.Of(third));
        Assert.Equal(third.Capacitors.Select(c => c.Name), shares.Select(s => s.Name));
        Assert.Equal(2.0 / 3, shares[0].Share, 1e-12);
        Assert.Equal(1.0 / 3, shares[1].Share, 1e-12);
    }

    [Fact]
    public void A_capacitor_that_shares_no_charge_has_no_share()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("in", "vin", "gnd").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Equal([("fly", 1.0)], SharingShares.Of(ModeAnalysis.Of(half)));
    }

    [Fact]
    public void What_is_left_of_soft_charging_belongs_to_the_converter_as_a_whole() =>
        Assert.Equal([(string.Empty, 1.0)], SharingShares.Of(ModeAnalysis.Of(InductorFed.Behind(SeriesParallel.StepDown(3)))));
}
