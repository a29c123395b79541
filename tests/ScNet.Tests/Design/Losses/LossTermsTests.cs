using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Losses;

/// <summary>The coefficients of every kind of loss, element by element, by hand.</summary>
public sealed class LossTermsTests
{
    // per ampere of load 4/3 flows in s1 in phases 1 and 2, in s2 back in phase 3, in s3 in phase 1, in s4 in phases 2 and 3, in the coil in all
    [Fact]
    public void Resistances_heat_by_load_and_ripple()
    {
        LossTerms terms = Of(Sized.Bare(FourSwitchStage.Build()));
        AssertHeat(terms, LossKind.Conduction, "s1", 0.2, 0, 1);
        AssertHeat(terms, LossKind.Conduction, "s2", 0.3, 2);
        AssertHeat(terms, LossKind.Conduction, "s3", 0.4, 0);
        AssertHeat(terms, LossKind.Conduction, "s4", 0.5, 1, 2);
        AssertHeat(terms, LossKind.Windings, "coil", 0.1, 0, 1, 2);
        Assert.Empty(terms.Notes);
        Assert.Empty(terms.Diodes);
        Assert.Empty(terms.Cores);
        Assert.Equal(terms.Terms.Select(t => t.Kind).Order(), terms.Terms.Select(t => t.Kind));
    }

    [Fact]
    public void A_core_that_loses_something_is_listed_with_its_ripple()
    {
        SizedConverter bare = Sized.Bare(FourSwitchStage.Build());
        SizedConverter cored = new(bare.Converter, bare.Switches, bare.Capacitors, [bare.Inductors[0] with { CoreWatts = 1 }], bare.Process);
        CoreTerm core = Assert.Single(Of(cored).Cores);
        Assert.Equal("coil", core.Element);
        Assert.Equal(1 / 6.0, core.RipplePerVoltSecond, 1e-15);
    }

    // s2 and s4 block 1 and 2/3 after the edge at which they open; 1000 µm per Ω⁻¹
    [Fact]
    public void Diodes_whose_switches_open_give_back_their_charge()
    {
        LossTerms terms = Of(Sized.Of(FourSwitchStage.Build(), Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = 3 }, deadSeconds: 1e-9));
        Assert.Equal(["s4", "s2", "s2", "s4"], terms.Diodes.Select(d => d.Element));
        Assert.Equal(["s2", "s4"], terms.Terms.Where(t => t.Kind == LossKind.ReverseRecovery).Select(t => t.Element));
        Assert.Equal(1000 / 0.3 * 3, Term(terms, LossKind.ReverseRecovery, "s2").HertzVolts, 1e-8);
        Assert.Equal(1000 / 0.5 * 3 * 2 / 3, Term(terms, LossKind.ReverseRecovery, "s4").HertzVolts, 1e-8);
    }

    // both ways out of s4's phases end in a diode against the current
    [Fact]
    public void Phases_without_a_diode_for_the_current_are_noted()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Switch("high", "vin", "x", 1, 1).Switch("low", "gnd", "x", 2, 1, diodeVolts: 0.9).Inductor("coil", "x", "vout", henries: 1).Build();
        LossTerms terms = Of(Sized.Of(stage, Sized.BareSwitch, deadSeconds: 1e-9));
        Assert.Equal(
            ["after phase 1, as no body diodes give the current a path", "after phase 2, as no body diodes give the current a path"],
            terms.Notes.Where(n => n is { Kind: LossKind.BodyDiodes, Element: "", IsCounted: false }).Select(n => n.Reason));
    }

    // of four phases: once, twice, once round the end of the period, and never where a switch stays closed; 2 Ω are 500 µm
    [Fact]
    public void Gates_are_driven_as_often_as_they_close()
    {
        Converter half = Half(4).Switch("twice", "vin", "p", [1, 3], 2).Switch("round", "n", "vout", [1, 3, 4], 2).Switch("never", "vout", "z", [1, 2, 3, 4], 2)
            .Switch("once", "p", "vout", 2, 2).Switch("down", "n", "gnd", 2, 2).Build();
        LossTerms terms = Of(Sized.Of(half, Sized.BareSwitch with { GateChargeCoulombsPerMicrometre = 2 }, Sized.BareCapacitor, railEfficiency: 0.8));
        const double Once = 500 * 2 * 1.5 / 0.8;
        Assert.Equal(2 * Once, Term(terms, LossKind.GateDrive, "twice").Hertz, 1e-9);
        Assert.Equal(Once, Term(terms, LossKind.GateDrive, "round").Hertz, 1e-9);
        Assert.Equal(Once, Term(terms, LossKind.GateDrive, "once").Hertz, 1e-9);
        Assert.DoesNotContain(terms.Terms, t => t is { Kind: LossKind.GateDrive, Element: "never" });
    }

    // three in series have three times the width of one, and so nine times its charge in all, at a third of the voltage each
    [Fact]
    public void Junctions_swing_by_what_their_switches_block()
    {
        Converter half = Halver(2).Build();
        SwitchDevice device = Sized.BareSwitch with { JunctionChargeCoulombsPerMicrometre = 3 };
        Assert.Equal(500 * 3 / 2.0 / 4, Term(Of(Sized.Of(half, device, Sized.BareCapacitor)), LossKind.Junctions, "s3").HertzVolts2, 1e-9);
        Assert.Equal(500 * 3 / 2.0 / 4, Term(Of(Sized.Of(half, device, Sized.BareCapacitor, inSeries: 3)), LossKind.Junctions, "s3").HertzVolts2, 1e-9);
    }

    // the bottom plate's fraction of 0.025 and the netlist's own top plate, against the output, which does not move: 1/4 of each
    [Fact]
    public void A_plate_is_that_of_the_device_or_else_of_the_netlist()
    {
        Converter half = Half(2, new CapacitorPlates(BottomFarads: 0.5, TopFarads: 0.125, BodyNode: "vout")).Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1)
            .Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Parasitic("wire", "p", "n", 1).Parasitic("jump", "gnd", "n", 3).Build();
        CapacitorDevice bottom = Sized.BareCapacitor with { BottomPlateFraction = 0.025 }, top = Sized.BareCapacitor with { TopPlateFraction = 0.01 };
        Assert.Equal((0.025 + 0.125) / 4, Of(bottom, "fly"), 1e-15);
        Assert.Equal((0.5 + 0.01) / 4, Of(top, "fly"), 1e-15);
        Assert.Equal(0.75, Of(top, "jump"), 1e-15);
        Assert.DoesNotContain(LossTermsTests.Of(Sized.Of(half, Sized.BareSwitch, top)).Terms, t => t.Element == "wire");

        double Of(CapacitorDevice device, string element) => Term(LossTermsTests.Of(Sized.Of(half, Sized.BareSwitch, device)), LossKind.Plates, element).HertzVolts2;
    }

    // 1 F are 100 m², 3 A per m² at 2 V, here at 1/2 of the input; switches of 1 Ω leak 1000 µm · 5 A in half of the time at 1/2
    [Fact]
    public void Capacitors_leak_by_the_square_and_switches_by_the_magnitude_of_their_voltage()
    {
        LossTerms terms = Of(Sized.Of(
            Halver(1).Build(), Sized.BareSwitch with { LeakageAmperesPerMicrometre = 5 }, Sized.BareCapacitor with { LeakageAmperesPerSquareMetre = 3 }, new() { FixedWatts = 7, CoulombsPerCycle = 11 }));
        Assert.Equal(300 / 2.0 / 4, Term(terms, LossKind.Leakage, "fly").Volts2, 1e-12);
        Assert.Equal(5000 * 0.25, Term(terms, LossKind.Leakage, "s2").Volts, 1e-9);
        Assert.Equal(7, Term(terms, LossKind.Control, string.Empty).Constant);
        Assert.Equal(11, Term(terms, LossKind.Control, string.Empty).HertzVolts);
        Assert.Empty(terms.Notes);
    }

    // s1 hangs on the floating plate in the third phase
    [Fact]
    public void What_rests_on_a_floating_node_is_noted_once_per_loss()
    {
        LossTerms terms = Of(Sized.Of(Halver(1).Phases(3).Build()));
        Assert.All(terms.Notes, n => Assert.True(n.IsCounted));
        Assert.All(terms.Notes, n => Assert.Equal("with what floats in some phase keeping its potential", n.Reason));
        foreach (LossKind kind in (LossKind[])[LossKind.Junctions, LossKind.Leakage])
        {
            Assert.Equal(["s1", "s2", "s3", "s4"], terms.Notes.Where(n => n.Kind == kind).Select(n => n.Element).Order());
        }
    }

    // a switch to nowhere: no current, so no leakage; its junction swings with the plate, by an assumption
    [Fact]
    public void A_switch_that_ends_in_the_air_leaks_nothing()
    {
        LossTerms terms = Of(Sized.Of(Halver(1).Switch("air", "n", "q").Capacitor("apart", "q", "r").Build()));
        Assert.DoesNotContain(terms.Terms, t => t is { Kind: LossKind.Leakage, Element: "air" or "apart" });
        Assert.DoesNotContain(terms.Notes, n => n.Kind == LossKind.Leakage);
        Assert.Contains(terms.Terms, t => t is { Kind: LossKind.Junctions, Element: "air" });
        Assert.Contains(terms.Notes, n => n is { Kind: LossKind.Junctions, Element: "air", IsCounted: true });

        // the plates of a capacitor in the air do not swing: nothing is lost, nothing to be told
        Assert.DoesNotContain(terms.Notes, n => n.Kind == LossKind.Plates);
    }

    // a capacitor of unknown voltage hangs on the swinging plate; what leaks through the open switch nobody can tell
    [Fact]
    public void A_leakage_across_an_unknown_voltage_is_noted_and_not_counted()
    {
        LossTerms terms = Of(Sized.Of(Halver(1).Switch("open", "vin", "q").Capacitor("hung", "q", "n").Build()));
        Assert.DoesNotContain(terms.Terms, t => t is { Kind: LossKind.Leakage, Element: "open" });
        LossNote note = Assert.Single(terms.Notes, n => n.Kind == LossKind.Leakage);
        Assert.Equal(new(LossKind.Leakage, "open", false, "as nothing bounds the voltage across it"), note);
    }

    [Fact]
    public void Where_averages_carry_no_load_conduction_counts_as_charge_sharing()
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(3)).WithDuties([new(1, 2), new(1, 2)]);
        ModeAnalysis analysis = ModeAnalysis.Of(stage);
        Assert.False(analysis.CarriesLoad);
        LossTerms terms = LossTerms.Of(Sized.Of(stage, deadSeconds: 1e-9), analysis);
        Assert.DoesNotContain(terms.Terms, t => t.Kind is LossKind.Conduction or LossKind.Windings);
        Assert.Contains(terms.Notes, n => n == new LossNote(LossKind.Conduction, string.Empty, false, "as averages carry no load: all that the output impedance takes counts as charge sharing"));
        Assert.Empty(terms.Diodes);
    }

    private static void AssertHeat(LossTerms terms, LossKind kind, string element, double ohms, params int[] phases)
    {
        LossPolynomial heat = Term(terms, kind, element);
        double load = 0, mixed = 0, own = 0;
        foreach (int j in phases)
        {
            (double duty, double mean, double rise) = (FourSwitchStage.Duties[j].ToDouble(), FourSwitchStage.Means[j], FourSwitchStage.Rises[j]);
            load += duty * 16 / 9;
            mixed += duty * 2 * 4 / 3 * mean;
            own += duty * ((mean * mean) + (rise * rise / 12));
        }

        Assert.Equal(ohms * load, heat.Current2, 1e-14);
        Assert.Equal(ohms * mixed, heat.CurrentVoltsPerHertz, 1e-15);
        Assert.Equal(ohms * own, heat.Volts2PerHertz2, 1e-16);
    }

    private static LossPolynomial Term(LossTerms terms, LossKind kind, string element) => Assert.Single(terms.Terms, t => t.Kind == kind && t.Element == element).Watts;

    private static LossTerms Of(SizedConverter sized) => LossTerms.Of(sized, ModeAnalysis.Of(sized.Plain));

    private static ConverterBuilder Halver(double ohms) => Half(2).Switch("s1", "vin", "p", 1, ohms).Switch("s2", "n", "vout", 1, ohms)
        .Switch("s3", "p", "vout", 2, ohms).Switch("s4", "n", "gnd", 2, ohms);

    private static ConverterBuilder Half(int phases, CapacitorPlates? plates = null) =>
        Converter.Create("Half").Input("vin").Output("vout").Phases(phases).Capacitor("fly", "p", "n", plates: plates);
}
