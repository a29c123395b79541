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

    /// <summary>Two dividers that share no node but input, output and reference are two parts; a wire between them makes one.</summary>
    [Fact]
    public void Parasitic_capacitances_put_onto_a_converter_of_independent_parts_join_them()
    {
        Converter plain = Converter.Create("two halves").Input("vin").Output("vout")
            .Capacitor("fly1", "p1", "n1", 1e-9).Capacitor("fly2", "p2", "n2", 3e-9)
            .Switch("s1", "vin", "p1", on: 1).Switch("s2", "n1", "vout", on: 1).Switch("s3", "p1", "vout", on: 2).Switch("s4", "n1", "gnd", on: 2)
            .Switch("t1", "vin", "p2", on: 2).Switch("t2", "n2", "vout", on: 2).Switch("t3", "p2", "vout", on: 1).Switch("t4", "n2", "gnd", on: 1)
            .Build();
        ModeAnalysis analysis = ModeAnalysis.Of(plain, plain.Modes[0]);
        SteadyStateModel model = SteadyStateModel.Of(analysis);
        Assert.Equal(2, model.Prepared.Parts.Length);
        Converter wired = plain.WithParasitics([CapacitorPlates.None, CapacitorPlates.None], [new Parasitic("wire", "n1", "n2", 1e-10)]);
        SteadyStateModel joined = model.WithValuesOf(wired);
        Assert.Single(joined.Prepared.Parts);
        PortOracle.Ports expected = new PortOracle(wired, wired.Modes[0]).ByExponential(1e7);
        Assert.Equal(expected.Voltage, joined.Prepared.Ratios(1e-7).Voltage, 1e-12);
        Assert.Equal(expected.Ohms, joined.Prepared.Ohms(1e-7), 1e-11 * expected.Ohms);
        Assert.Equal(2, model.WithValuesOf(plain).Prepared.Parts.Length);
    }

    private static PreparedMode Prepare(Converter converter) =>
        PreparedMode.Of(converter, ModeAnalysis.Of(converter, converter.Modes[0]).Topology);
}
