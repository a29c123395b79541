using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>A divider of two equal phases whose flying capacitor has a bottom plate.</summary>
public sealed class BottomPlateTests
{
    private static Converter Plated(double share, double farads = 1e-9, double ohms = 2, LoadKind load = LoadKind.Stiff) => Converter.Create("half")
        .Input("vin").Output("vout", load)
        .Capacitor("fly", "p", "n", farads, plates: new CapacitorPlates(BottomFarads: share * farads))
        .Switch("s1", "vin", "p", on: 1, ohms).Switch("s2", "n", "vout", on: 1, ohms)
        .Switch("s3", "p", "vout", on: 2, ohms).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms).Build();

    /// <summary>Three per cent of 1 nF at 10 MHz with switches of 2 Ω; figures of a separate program, in five digits.</summary>
    [Fact]
    public void A_bottom_plate_of_three_per_cent_has_the_figures_of_a_separate_program()
    {
        PreparedMode prepared = Prepare(Plated(0.03));
        PortRatios ratios = prepared.Ratios(1e-7);
        Assert.Equal(0.49628, ratios.Voltage, 5e-6);
        Assert.Equal(0.49628, ratios.Current, 5e-6);
        Assert.Equal(24.814, prepared.Ohms(1e-7), 5e-4);
        Assert.Equal(74.44e-6, ratios.InputSiemens, 5e-9);
    }

    /// <summary>docs/theory/parasitic-capacitances.md, derived by hand: nothing is left to wait for.</summary>
    [Theory]
    [InlineData(0.03)]
    [InlineData(1)]
    [InlineData(1e-12)]
    [InlineData(1e12)]
    public void A_divider_that_settles_has_the_closed_form(double share)
    {
        const double Farads = 1e-9;
        double hertz = 1e3 / Math.Max(1, share);
        PreparedMode prepared = Prepare(Plated(share, Farads));
        PortRatios ratios = prepared.Ratios(1 / hertz);
        Assert.Equal(2 / (4 + share), ratios.Voltage, 1e-15);
        Assert.Equal(ratios.Voltage, ratios.Current, 1e-15);
        double siemens = hertz * Farads * share / (4 + share), ohms = 1 / (hertz * Farads * (4 + share));
        Assert.Equal(siemens, ratios.InputSiemens, 1e-13 * siemens);
        Assert.Equal(ohms, prepared.Ohms(1 / hertz), 1e-13 * ohms);
    }

    /// <summary>
    /// Fast, the capacitor holds v and the plate u. Currents through switches of R are, in phase 1, (V - u - v)/R from the input
    /// and (u - W)/R to the output at W, in phase 2 (u + v - W)/R and u/R to the reference. The capacitor balances where
    /// V - u - v = u + v - W, the plate where u - W = -u: u = W/2, v = V/2. So I_in = (V - W)/(4R), I_out = (V - 2W)/(4R).
    /// </summary>
    [Fact]
    public void A_fast_divider_is_a_network_of_resistors()
    {
        const double Ohms = 2;
        PreparedMode prepared = Prepare(Plated(0.03, ohms: Ohms));
        PortRatios ratios = prepared.Ratios(1e-20);
        Assert.Equal(2 * Ohms, prepared.Ohms(1e-20), 1e-13);
        Assert.Equal(0.5, ratios.Voltage, 1e-13);
        Assert.Equal(0.5, ratios.Current, 1e-13);
        Assert.Equal(1 / (8 * Ohms), ratios.InputSiemens, 1e-13);
    }

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Without_a_plate_the_ratio_is_the_ideal_one_at_every_frequency(LoadKind load)
    {
        Converter converter = OperatedConverters.Half(load).Capacitor("out", "vout", Converter.ReferenceNode, 1).Build();
        foreach (double period in new[] { 1e-9, 1, 1e9 })
        {
            Assert.Equal(new PortRatios(0.5, 0.5, 0), Prepare(converter).Ratios(period));
        }
    }

    private static PreparedMode Prepare(Converter converter) =>
        PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
}
