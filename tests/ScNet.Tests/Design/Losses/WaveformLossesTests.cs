using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>Losses read off waveforms that are known by hand: a halving converter without load, whose voltages stand still within each phase.</summary>
public sealed class WaveformLossesTests
{
    private const double Volts = 3, Hertz = 20e6, Half = 1.5;

    // 1 nF and four switches of 2 Ω, 500 µm each; every node and every open switch swings by 1.5 V and back
    [Fact]
    public void A_halving_converter_without_load_loses_what_its_swings_cost()
    {
        LossBudget budget = Of(Sized.Of(Halver().Build(), control: new() { FixedWatts = 3e-6, CoulombsPerCycle = 1e-13 }, railEfficiency: 0.8));
        foreach (string name in (string[])["s1", "s2", "s3", "s4"])
        {
            Near(Hertz * 500 * 2e-15 * 1.5 / 0.8, Watts(budget, LossKind.GateDrive, name));
            Near(Hertz * 500 * 1e-15 / 2 * Half * Half, Watts(budget, LossKind.Junctions, name));
            Near(500e-9 * 0.5 * Half, Watts(budget, LossKind.Leakage, name));
        }

        Near(Hertz * (0.025 + 0.005) * 1e-9 * Half * Half, Watts(budget, LossKind.Plates, "fly"));
        Near(1e-7 * 1e-2 / 2 * Half * Half, Watts(budget, LossKind.Leakage, "fly"));
        Near(3e-6 + (1e-13 * Hertz * Volts), Watts(budget, LossKind.Control, string.Empty));
        Assert.Equal(new LossNote(LossKind.ChargeSharing, string.Empty, true, "within conduction, from which waveforms do not tell it"), Assert.Single(budget.Notes));
        Assert.Equal(budget.Losses.Select(l => l.Kind).Order(), budget.Losses.Select(l => l.Kind));
        Assert.Equal(Half, budget.OutputVolts, 1e-12);
    }

    // nine times the charge of the gate, as each is three times as wide; a third of the voltage across each junction; six volts of rating
    [Fact]
    public void Stacks_of_three_swing_and_leak_by_their_devices()
    {
        LossBudget budget = Of(Sized.Of(Halver().Build(), inSeries: 3));
        Near(Hertz * 9 * 500 * 2e-15 * 1.5, Watts(budget, LossKind.GateDrive, "s1"));
        Near(Hertz * 500 * 1e-15 / 2 * Half * Half, Watts(budget, LossKind.Junctions, "s1"));
        Near(3 * 500e-9 * 0.5 * Half, Watts(budget, LossKind.Leakage, "s1"));
        Near(3e-7 * 1e-2 / 6 * Half * Half, Watts(budget, LossKind.Leakage, "fly"));
    }

    // in a third phase everything is open: the capacitor keeps its place, and what leaks across s1 and s3, which hang on it, is unknown there
    [Fact]
    public void What_floats_keeps_its_place_and_is_noted()
    {
        LossBudget budget = Of(Sized.Of(Halver().Phases(3).Build()));
        Near(Hertz * (0.025 + 0.005) * 1e-9 * Half * Half, Watts(budget, LossKind.Plates, "fly"));
        Near(Hertz * 500 * 1e-15 / 2 * Half * Half, Watts(budget, LossKind.Junctions, "s2"));
        Near(500e-9 / 3 * Half, Watts(budget, LossKind.Leakage, "s1"));
        Assert.Equal(
            ["fly", "fly"],
            budget.Notes.Where(n => n is { Kind: LossKind.Plates, IsCounted: true, Reason: "with what floats in some phase keeping its potential" }).Select(n => n.Element));
        Assert.Equal(
            ["s1", "s2", "s3", "s4"],
            budget.Notes.Where(n => n is { Kind: LossKind.Junctions, IsCounted: true, Reason: "with what floats in some phase keeping its potential" }).Select(n => n.Element));
        Assert.Equal(
            ["s1", "s2", "s3", "s4"],
            budget.Notes.Where(n => n is { Kind: LossKind.Leakage, IsCounted: false, Reason: "where nothing fixes the voltage across it" }).Select(n => n.Element));
    }

    [Fact]
    public void What_nothing_fixes_at_all_is_noted_and_not_counted()
    {
        Converter idle = Halver().Capacitor("apart", "q", "r").Switch("air", "n", "q").Parasitic("wire", "q", "gnd", 1e-12).Build();
        LossBudget budget = Of(Sized.Of(idle));
        Assert.Equal(
            ["as nothing fixes the potential of r", "as nothing fixes the potential of q"],
            budget.Notes.Where(n => n is { Kind: LossKind.Plates, Element: "apart", IsCounted: false }).Select(n => n.Reason));
        Assert.Equal("as nothing fixes the voltage across it", Assert.Single(budget.Notes, n => n is { Kind: LossKind.Junctions, Element: "air", IsCounted: false }).Reason);
        Assert.Equal("as nothing fixes the potential of q", Assert.Single(budget.Notes, n => n.Element == "wire").Reason);
        Assert.DoesNotContain(budget.Losses, l => l.Element is "apart" or "air" or "wire");
        Assert.DoesNotContain(Of(Sized.Bare(Halver().Capacitor("apart", "q", "r").Build())).Notes, n => n.Kind is LossKind.Plates or LossKind.Leakage);
    }

    // against the output, which stands still: the swing of the node itself; against the other plate none
    [Fact]
    public void A_capacitance_swings_by_the_potential_of_one_node_against_the_other()
    {
        Converter wired = Halver(new CapacitorPlates(BottomFarads: 5e-12, TopFarads: 7e-12, BodyNode: "vout")).Parasitic("wire", "p", "n", 1e-12).Parasitic("jump", "gnd", "n", 3e-12)
            .Parasitic("input", "vin", "p", 2e-12).Build();
        LossBudget budget = Of(Sized.Bare(wired));
        Near(Hertz * 12e-12 * Half * Half, Watts(budget, LossKind.Plates, "fly"));
        Near(Hertz * 3e-12 * Half * Half, Watts(budget, LossKind.Plates, "jump"));
        Near(Hertz * 2e-12 * Half * Half, Watts(budget, LossKind.Plates, "input"));
        Assert.InRange(budget.Losses.Where(l => l.Element == "wire").Sum(l => l.Watts), 0, 1e-20);
    }

    // of four phases: twice, once round the end of the period, never
    [Fact]
    public void Gates_are_driven_as_often_as_they_close()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Phases(4).Capacitor("fly", "p", "n", 1e-9)
            .Switch("twice", "vin", "p", [1, 3], 2).Switch("round", "n", "vout", [1, 3, 4], 2).Switch("never", "vout", "z", [1, 2, 3, 4], 2)
            .Switch("once", "p", "vout", 2, 2).Switch("down", "n", "gnd", 2, 2).Build();
        LossBudget budget = Of(Sized.Of(half));
        const double Once = Hertz * 500 * 2e-15 * 1.5;
        Near(2 * Once, Watts(budget, LossKind.GateDrive, "twice"));
        Near(Once, Watts(budget, LossKind.GateDrive, "round"));
        Near(Once, Watts(budget, LossKind.GateDrive, "once"));
        Assert.DoesNotContain(budget.Losses, l => l is { Kind: LossKind.GateDrive, Element: "never" });
    }

    // Tellegen: what goes in and not out is lost, in switches, series resistances and windings
    [Fact]
    public void Conduction_and_windings_are_input_less_output_power()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout", LoadKind.Current).Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Switch("high", "vin", "x", 1, 0.1).Switch("low", "x", "gnd", 2, 0.2).Inductor("coil", "x", "vout", 1e-6, 0.3).Capacitor("out", "vout", "gnd", 1e-6, 0.4).Build();
        SizedConverter sized = Sized.Bare(stage);
        PeriodicSteadyState steady = SteadyStateModel.Of(ModeAnalysis.Of(stage)).At(new OperatingPoint(4, 1, 1e6));
        LossBudget budget = WaveformLosses.Of(sized, steady);
        Assert.Equal(["high", "low", "out"], budget.Losses.Where(l => l.Kind == LossKind.Conduction).Select(l => l.Element));
        Assert.Equal("coil", Assert.Single(budget.Losses, l => l.Kind == LossKind.Windings).Element);
        double lost = steady.InputPowerWatts - steady.OutputPowerWatts;
        Near(lost, budget.WattsOf(LossKind.Conduction) + budget.WattsOf(LossKind.Windings), 1e-9);
    }

    private static LossBudget Of(SizedConverter sized) => WaveformLosses.Of(sized, SteadyStateModel.Of(ModeAnalysis.Of(sized.Plain)).At(new OperatingPoint(Volts, 0, Hertz)));

    // both plates of a capacitor are listed by themselves
    private static double Watts(LossBudget budget, LossKind kind, string element) => budget.Losses.Where(l => l.Kind == kind && l.Element == element).Sum(l => l.Watts);

    private static ConverterBuilder Halver(CapacitorPlates? plates = null) => Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", 1e-9, plates: plates)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2);

    private static void Near(double expected, double actual, double tolerance = 1e-10) => LossModelTests.Near(expected, actual, tolerance);
}
