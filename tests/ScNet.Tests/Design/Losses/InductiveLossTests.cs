using Fractions;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

/// <summary>Stages with inductors: straight-line ripple against the exact periodic solution, and body diodes.</summary>
public sealed class InductiveLossTests
{
    private static readonly Converter s_stage = Converter.Create("step-down").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
        .Switch("high", "vin", "x", 1, 0.2).Switch("low", "x", "gnd", 2, 0.1).Inductor("coil", "x", "vout", henries: 1e-6, ohms: 0.05).Build();

    // Erickson and Maksimovic, chapter 2 (from memory): ripple D (1 - D) V/(f L), a triangle in every phase
    [Fact]
    public void Conduction_of_a_step_down_stage_is_the_textbooks()
    {
        const double volts = 4, amperes = 0.5, hertz = 2e6, duty = 0.25;
        LossBudget budget = LossModelTests.Budget(Sized.Bare(s_stage), new OperatingPoint(volts, amperes, hertz));
        double ripple = duty * (1 - duty) * volts / (hertz * 1e-6), square = (amperes * amperes) + (ripple * ripple / 12);
        LossModelTests.Near(0.2 * duty * square, WattsOf(budget, LossKind.Conduction, "high"));
        LossModelTests.Near(0.1 * (1 - duty) * square, WattsOf(budget, LossKind.Conduction, "low"));
        LossModelTests.Near(0.05 * square, WattsOf(budget, LossKind.Windings, "coil"));
    }

    public static TheoryData<string> Stages => ["step-down", "current load", "four levels", "series charged", "two coils", "series resistance"];

    // resistances and capacitors bend the lines the less the shorter the period: what they change in what the load costs
    // falls with its square, and in what ripple costs, which itself falls with the square, with the period at least
    [Theory]
    [MemberData(nameof(Stages))]
    public void Straight_lines_come_to_the_exact_periodic_solution_with_the_square_of_the_period(string name)
    {
        Converter converter = Stage(name);
        LossModel model = LossModel.Of(Sized.Bare(converter), ModeAnalysis.Of(converter));
        Assert.DoesNotContain(model.Notes, n => n.Kind is LossKind.Conduction or LossKind.Windings);
        foreach (double amperes in (double[])[0, 1])
        {
            (double total, double error) = Error(model, new OperatingPoint(1, amperes, 8));
            double later = Error(model, new OperatingPoint(1, amperes, 32)).Watts;
            Assert.True(error < 0.05 * total, $"{amperes} A: an error of {error} W in {total} W");
            Assert.True(later < (error / 10) + 1e-12, $"{amperes} A: {error} W falls to {later} W only");
        }
    }

    // 470 nF and 470 nH: at 200 kHz the capacitors swing by more than they hold
    [Fact]
    public void Where_straight_lines_are_far_from_the_exact_solution_a_note_has_both_figures()
    {
        Converter stage = NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "four-level-stage.toml")).GetConverter();
        LossModel model = LossModel.Of(Sized.Bare(stage), ModeAnalysis.Of(stage));
        Assert.Empty(model.At(new OperatingPoint(3.6, 0.02, 2e7)).Notes);
        OperatingPoint slow = new(3.6, 0.02, 2e5);
        LossNote note = Assert.Single(model.At(slow).Notes);
        Assert.True(note.IsCounted);
        double lost = SteadyStateModel.Of(model.Analysis).At(slow).DissipationWatts;
        Assert.EndsWith($"the exact solution loses {EngineeringNumber.Of(lost, "W")}", note.Reason, StringComparison.Ordinal);
    }

    // a half-bridge: its low switch's diode takes the current at both edges, at the valley and at the peak of the ripple
    [Fact]
    public void The_body_diode_of_the_low_switch_carries_the_current_twice_a_period()
    {
        const double volts = 4, amperes = 0.5, hertz = 2e6, dead = 5e-9;
        SizedConverter sized = Sized.Of(s_stage, Sized.BareSwitch, deadSeconds: dead);
        LossBudget budget = LossModelTests.Budget(sized, new OperatingPoint(volts, amperes, hertz));
        LossModelTests.Near(hertz * dead * 0.7 * 2 * amperes, budget.WattsOf(LossKind.BodyDiodes));
        Assert.Equal("low", Assert.Single(budget.Losses, l => l.Kind == LossKind.BodyDiodes).Element);

        // with a ripple of 0.375 A peak to peak and no load the current changes hands between the edges
        LossModelTests.Near(hertz * dead * 0.7 * 0.375, LossModelTests.Budget(sized, new OperatingPoint(volts, 0, hertz)).WattsOf(LossKind.BodyDiodes));
    }

    // after the dead time before the high switch closes, the diode of the low one gives back what it has stored, at the input voltage; before the
    // low one closes nothing has to be taken back
    [Fact]
    public void A_body_diode_gives_back_its_charge_once_a_period()
    {
        const double volts = 4, hertz = 2e6;
        SizedConverter sized = Sized.Of(s_stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = 5e-15 }, deadSeconds: 5e-9);
        LossBudget budget = LossModelTests.Budget(sized, new OperatingPoint(volts, 0.5, hertz));
        Loss loss = Assert.Single(budget.Losses, l => l.Kind == LossKind.ReverseRecovery);
        Assert.Equal("low", loss.Element);
        LossModelTests.Near(hertz * (1000 / 0.1) * 5e-15 * volts, loss.Watts);
        Assert.Equal(0, LossModelTests.Budget(Sized.Of(s_stage, Sized.BareSwitch with { RecoveryCoulombsPerMicrometre = 5e-15 }), new OperatingPoint(volts, 0.5, hertz)).WattsOf(LossKind.ReverseRecovery));
    }

    // a ripple of 0.375 A peak to peak by hand, at 2 MHz; half of it in another period twice as short
    [Theory]
    [InlineData(2e6, 0.375)]
    [InlineData(4e6, 0.1875)]
    public void A_core_loses_by_powers_of_frequency_and_ripple(double hertz, double ripple)
    {
        SizedConverter bare = Sized.Bare(s_stage);
        InductorDevice core = bare.Inductors[0] with { CoreWatts = 0.2, CoreFrequencyExponent = 1.3, CoreRippleExponent = 2.2 };
        SizedConverter sized = new(s_stage, bare.Switches, bare.Capacitors, [core], bare.Process);
        LossBudget budget = LossModelTests.Budget(sized, new OperatingPoint(4, 0.5, hertz));
        double watts = 0.2 * Math.Pow(hertz / 1e6, 1.3) * Math.Pow(ripple, 2.2);
        LossModelTests.Near(watts, budget.WattsOf(LossKind.Cores));
        Assert.Equal("coil", Assert.Single(budget.Losses, l => l.Kind == LossKind.Cores).Element);
        LossModelTests.Near(watts, LossBudget.OfWaveforms(sized, s_stage.Modes[0], new OperatingPoint(4, 0.5, hertz)).WattsOf(LossKind.Cores), 0.05);
    }

    // every pair of a multi-level stage changes twice a period, each time through one diode
    [Fact]
    public void Every_change_of_a_multi_level_stage_costs_one_diode()
    {
        Converter stage = Stage("four levels");
        LossBudget budget = LossModelTests.Budget(Sized.Of(stage, Sized.BareSwitch, Sized.BareCapacitor, deadSeconds: 1e-4), new OperatingPoint(1, 1, 1));
        Assert.Equal(["d1", "d2", "d3"], budget.Losses.Where(l => l.Kind == LossKind.BodyDiodes).Select(l => l.Element));
        LossModelTests.Near(6 * 1e-4 * 0.7, LossModelTests.Budget(Sized.Of(stage, Sized.BareSwitch, Sized.BareCapacitor, deadSeconds: 1e-4), new OperatingPoint(1e-9, 1, 1)).WattsOf(LossKind.BodyDiodes), 1e-6);
        Assert.Empty(budget.Notes);
    }

    [Fact]
    public void A_dead_time_costs_nothing_without_inductors()
    {
        Converter half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();
        Assert.Equal(0, LossModelTests.Budget(Sized.Of(half, deadSeconds: 1e-9), new OperatingPoint(1, 1, 1)).WattsOf(LossKind.BodyDiodes));
    }

    // a three-level stage balances by losses alone: docs/theory/averages-with-inductors.md, "Ripple"
    [Fact]
    public void Ripple_that_only_losses_fix_is_named_and_not_counted()
    {
        Converter stage = InductiveStages.MultiLevel(3, new Fraction(1, 4)).Build();
        LossModel model = LossModel.Of(Sized.Of(stage), ModeAnalysis.Of(stage));
        Assert.Contains(model.Notes, n => n is { Kind: LossKind.Windings, Element: "coil", IsCounted: false });
        Assert.True(model.At(new OperatingPoint(1, 0.1, 10)).WattsOf(LossKind.Conduction) > 0);
    }

    private static (double TotalWatts, double Watts) Error(LossModel model, OperatingPoint point)
    {
        LossBudget budget = model.At(point);
        PeriodicSteadyState exact = SteadyStateModel.Of(model.Analysis).At(point);
        double total = 0, error = 0;
        foreach (SwitchOperation s in exact.Switches)
        {
            Add(s.DissipationWatts, WattsOf(budget, LossKind.Conduction, s.Switch.Name));
        }

        foreach (CapacitorOperation c in exact.Capacitors)
        {
            Add(c.DissipationWatts, WattsOf(budget, LossKind.Conduction, c.Capacitor.Name));
        }

        foreach (InductorOperation l in exact.Inductors)
        {
            Add(l.DissipationWatts, WattsOf(budget, LossKind.Windings, l.Inductor.Name));
        }

        return (total, error);

        void Add(double expected, double actual)
        {
            total += expected;
            error += Math.Abs(expected - actual);
        }
    }

    private static double WattsOf(LossBudget budget, LossKind kind, string element) => budget.Losses.Where(l => l.Kind == kind && l.Element == element).Sum(l => l.Watts);

    private static Converter Stage(string name) => name switch
    {
        "step-down" => InductiveStages.StepDown(new Fraction(2, 5)).Build(),
        "current load" => InductiveStages.StepDown(new Fraction(2, 5), LoadKind.Current).Build(),
        "four levels" => InductiveStages.MultiLevel(4, new Fraction(1, 5)).Build(),
        "series charged" => InductiveStages.SeriesCharged(new Fraction(1, 5)).Build(),

        // two stages side by side, one half a period later, with two switches in parallel in one of them
        "two coils" => Converter.Create("two coils").Input("vin").Output("vout").Duties(new Fraction(2, 5), new Fraction(1, 10), new Fraction(2, 5), new Fraction(1, 10))
            .Switch("h1", "vin", "x", 1, 1).Switch("h1b", "vin", "x", 1, 3).Switch("l1", "x", "gnd", [2, 3, 4], 1).Inductor("a", "x", "vout", 1, 0.1)
            .Switch("h2", "vin", "y", 3, 1).Switch("l2", "y", "gnd", [1, 2, 4], 1).Inductor("b", "y", "vout", 2, 0.3).Build(),

        // a current load whose ripple goes through the series resistance of the output capacitor
        _ => Converter.Create("series resistance").Input("vin").Output("vout", LoadKind.Current).Duties(new Fraction(2, 5), new Fraction(3, 5))
            .Switch("high", "vin", "x", 1, 1).Switch("low", "x", "gnd", 2, 1).Inductor("coil", "x", "vout", 1, 0.1).Capacitor("out", "vout", "gnd", 3, 0.5).Build(),
    };
}
