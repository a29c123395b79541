using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>What is noted of losses that are unknown, and that nothing is noted of those that are none.</summary>
public sealed class LossNotesTests
{
    [Fact]
    public void What_has_no_plates_and_no_leak_needs_no_note_wherever_it_floats()
    {
        Converter hung = Halver(2).Switch("open", "vin", "q").Capacitor("hung", "q", "n").Capacitor("apart", "u", "w").Build();
        Assert.DoesNotContain(Terms(Sized.Of(hung, capacitor: Sized.BareCapacitor)).Notes, n => n.Element is "hung" or "apart");
        Assert.DoesNotContain(Terms(Sized.Of(hung, Sized.BareSwitch)).Notes, n => n.Kind == LossKind.Leakage && n.Element == "open");
        Assert.DoesNotContain(Terms(Sized.Of(Halver(3).Build(), capacitor: Sized.BareCapacitor)).Notes, n => n.Kind == LossKind.Plates);
    }

    // a three-level stage balances by losses alone: docs/theory/averages-with-inductors.md, "Ripple"
    [Fact]
    public void A_leak_at_a_voltage_that_only_losses_fix_is_noted()
    {
        Converter stage = InductiveStages.MultiLevel(3, new Fraction(1, 4)).Build();
        Capacitor flying = Assert.Single(stage.Capacitors);
        Assert.Contains(new LossNote(LossKind.Leakage, flying.Name, false, "as only losses fix its voltage"), Terms(Sized.Of(stage)).Notes);
        Assert.DoesNotContain(Terms(Sized.Bare(stage)).Notes, n => n.Kind == LossKind.Leakage);
    }

    // behind the capacitor, which stands at the output's average, a second coil sees no voltage
    [Fact]
    public void A_core_without_ripple_is_not_listed()
    {
        Converter stage = Converter.Create("filtered").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Switch("high", "vin", "x", 1).Switch("low", "x", "gnd", 2).Inductor("first", "x", "mid").Capacitor("between", "mid", "gnd").Inductor("second", "mid", "vout").Build();
        SizedConverter bare = Sized.Bare(stage);
        SizedConverter cored = new(stage, bare.Switches, bare.Capacitors, [.. bare.Inductors.Select(l => l with { CoreWatts = 1 })], bare.Process);
        Assert.Equal("first", Assert.Single(Terms(cored).Cores).Element);
    }

    // in the third phase the four switches and "rest" hang in the air; "rest" comes back to where it was
    [Fact]
    public void Waveforms_of_what_floats_without_a_swing_or_a_leak_need_no_note()
    {
        Converter resting = Halver(3).Capacitor("rest", "w", "u").Switch("t1", "vin", "w", [1, 2]).Switch("t2", "u", "gnd", [1, 2]).Build();
        Assert.DoesNotContain(Waveforms(Sized.Of(resting), 3, 0).Notes, n => n is { Kind: LossKind.Plates, Element: "rest" });
        Assert.Contains(Waveforms(Sized.Of(resting), 3, 0).Notes, n => n is { Kind: LossKind.Plates, Element: "fly" });
        Assert.Contains(Waveforms(Sized.Of(resting), 3, 0).Notes, n => n.Kind == LossKind.Leakage);
        Assert.DoesNotContain(Waveforms(Sized.Bare(resting), 3, 0).Notes, n => n.Kind == LossKind.Leakage);
    }

    // a large coil: 1 A in both phases, of which each switch of 0.5 Ω takes 0.5 V of 4 V. A closed switch has nothing at its junction to swing from
    [Fact]
    public void A_junction_swings_from_zero_to_what_its_switch_blocks()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Switch("high", "vin", "x", 1, 0.5).Switch("low", "x", "gnd", 2, 0.5)
            .Inductor("coil", "x", "vout", henries: 1).Build();
        LossBudget budget = Waveforms(Sized.Of(stage), 4, 1);
        double farads = 1000 / 0.5 * 1e-15 / 2;
        LossModelTests.Near(1e6 * farads * 3.5 * 3.5, Watts(budget, LossKind.Junctions, "low"), 1e-5);
        LossModelTests.Near(1e6 * farads * 4.5 * 4.5, Watts(budget, LossKind.Junctions, "high"), 1e-5);
    }

    // in phase 3 the switch "bridge" ties the capacitor's lower plate, last at 0, to m, last at 1: both lie between, and the upper plate 1/2 above.
    // Furthest is 1 for the lower plate, after 1/2 and 0: (1/4 + 1 + 1/4)/2 of each plate's capacitance, 1/40 and 1/200 of 1 nF
    [Fact]
    public void What_floats_between_bounds_counts_with_the_most_that_they_allow_and_is_noted()
    {
        LossTerms terms = Terms(Sized.Of(Halver(3).Switch("up", "vin", "m", [1, 2], 2).Switch("bridge", "m", "n", 3, 2).Build()));
        LossNote[] plates = [.. terms.Notes.Where(n => n.Kind == LossKind.Plates)];
        Assert.All(plates, n => Assert.Equal(new(LossKind.Plates, "fly", true, "with the most that the bounds of what floats in some phase allow"), n));
        Assert.Equal(2, plates.Length);
        LossModelTests.Near(0.03e-9 * 0.75, Assert.Single(terms.Terms, t => t.Kind == LossKind.Plates).Watts.HertzVolts2);
    }

    // a coil that both phases tie to the same voltage: nothing flows, and nothing is lost in straight lines or otherwise
    [Fact]
    public void Where_nothing_is_lost_no_bent_ripple_is_noted()
    {
        Converter still = Converter.Create("still").Input("vin").Output("vout").Inductor("coil", "vin", "x", henries: 1e-6, ohms: 0.1)
            .Switch("one", "x", "vout", 1, 0.1).Switch("two", "x", "vout", 2, 0.1).Build();
        LossBudget budget = LossModelTests.Budget(Sized.Bare(still), new OperatingPoint(2, 0, 1e6));
        Assert.Equal(0, budget.WattsOf(LossKind.Conduction) + budget.WattsOf(LossKind.Windings));
        Assert.Empty(budget.Notes);
    }

    // a core, and a diode that conducts at two edges
    [Fact]
    public void Losses_of_a_stage_with_a_core_and_diodes_add_up_to_those_of_their_kind()
    {
        Converter stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Switch("high", "vin", "x", 1, 0.2).Switch("low", "x", "gnd", 2, 0.1).Inductor("coil", "x", "vout", henries: 1e-6, ohms: 0.05).Build();
        SizedConverter sized = Sized.Of(stage, deadSeconds: 5e-9);
        InductorDevice core = sized.Inductors[0] with { CoreWatts = 0.2 };
        LossBudget budget = LossModelTests.Budget(new(stage, sized.Switches, sized.Capacitors, [core], sized.Process), new OperatingPoint(4, 0.5, 2e6));
        Assert.Equal(budget.Losses.Select(l => (l.Kind, l.Element)), budget.Losses.Select(l => (l.Kind, l.Element)).Distinct());
        Assert.All(Enum.GetValues<LossKind>().Where(k => k != LossKind.ChargeSharing), k => LossModelTests.Near(budget.WattsOf(k), budget.Losses.Where(l => l.Kind == k).Sum(l => l.Watts)));
        Assert.Single(budget.Losses, l => l.Element == "coil" && l.Kind == LossKind.Cores);
        Assert.Equal(3, budget.Losses.Count(l => l.Element == "coil" || l.Kind == LossKind.BodyDiodes));
    }

    // in one stage phases run differently backwards, so that the input gives another share per ampere of load than it has per volt; in the other capacitors
    // share charge
    [Theory]
    [InlineData(0.3, 0.05, false)]
    [InlineData(1, 0.05, false)]
    [InlineData(0.02, 2e5, true)]
    public void The_note_of_bent_ripple_has_what_is_counted_and_what_the_exact_solution_loses(double amperes, double hertz, bool isOfCapacitors)
    {
        Converter stage = isOfCapacitors ? NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "four-level-stage.toml")).GetConverter() : FourSwitchStage.Build();
        LossModel model = LossModel.Of(Sized.Bare(stage), ModeAnalysis.Of(stage));
        OperatingPoint slow = new(2, amperes, hertz);
        LossBudget budget = model.At(slow);
        Assert.Equal(isOfCapacitors, Math.Abs(budget.WattsOf(LossKind.ChargeSharing)) > 1e-3 * budget.WattsOf(LossKind.Conduction));
        double counted = budget.WattsOf(LossKind.Conduction) + budget.WattsOf(LossKind.ChargeSharing) + budget.WattsOf(LossKind.Windings);
        double lost = SteadyStateModel.Of(model.Analysis).At(slow).DissipationWatts;
        Assert.Equal(
            $"with ripple as straight lines: {EngineeringNumber.Of(counted, "W")} in all resistances, of which the exact solution loses {EngineeringNumber.Of(lost, "W")}",
            Assert.Single(budget.Notes).Reason);
    }

    // waveforms would not tell charge sharing from conduction, and say so
    [Fact]
    public void A_mode_of_fixed_phases_has_no_need_of_waveforms()
    {
        Converter stage = NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "four-level-stage.toml")).GetConverter();
        Assert.Empty(LossBudget.Of(Sized.Bare(stage), ModeAnalysis.Of(stage), new OperatingPoint(3.6, 0.02, 2e7)).Notes);
        Assert.Contains(LossBudget.OfWaveforms(Sized.Bare(stage), stage.Modes[0], new OperatingPoint(3.6, 0.02, 2e7)).Notes, n => n.Kind == LossKind.ChargeSharing);
    }

    private static ConverterBuilder Halver(int phases) => Converter.Create("half").Input("vin").Output("vout").Phases(phases).Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2);

    private static LossTerms Terms(SizedConverter sized) => LossTerms.Of(sized, ModeAnalysis.Of(sized.Plain));

    private static LossBudget Waveforms(SizedConverter sized, double volts, double amperes) =>
        WaveformLosses.Of(sized, SteadyStateModel.Of(ModeAnalysis.Of(sized.Plain)).At(new OperatingPoint(volts, amperes, 1e6)));

    private static double Watts(LossBudget budget, LossKind kind, string element) => Assert.Single(budget.Losses, l => l.Kind == kind && l.Element == element).Watts;
}
