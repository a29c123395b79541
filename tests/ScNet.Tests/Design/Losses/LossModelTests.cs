using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.SteadyState;

namespace ScNet.Tests.Design.Losses;

public sealed class LossModelTests
{
    // 1 nF, four switches of 2 Ω: 500 µm each. At 3 V the capacitor holds 1.5 V, every switch blocks 1.5 V in its off-phase.
    private static readonly Converter s_half = Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Build();

    private static readonly OperatingPoint s_point = new(3, 0.01, 20e6);

    [Fact]
    public void Losses_of_a_halving_converter_by_hand()
    {
        ControlOverhead control = new() { FixedWatts = 3e-6, CoulombsPerCycle = 1e-13 };
        LossBudget budget = Budget(Sized.Of(s_half, control: control, railEfficiency: 0.8), s_point);
        const double f = 20e6, i = 0.01;

        // R_FSL = 4 · 2 Ω · 2 · (1/2)² = 4 Ω; the exact impedance of one capacitor: (1/4C f) coth(T/(8 R C)), R = 2 · 2 Ω in each phase
        Near(4 * i * i, budget.WattsOf(LossKind.Conduction));
        double ohms = 1 / (4e-9 * f * Math.Tanh(0.5 / f / (2 * 4e-9)));
        Near((ohms - 4) * i * i, budget.WattsOf(LossKind.ChargeSharing));
        Near(f * 4 * 500 * 2e-15 * 1.5 / 0.8, budget.WattsOf(LossKind.GateDrive));
        Near(f * 0.5 * 4 * (500 * 1e-15 / 2) * 2 * 1.5 * 1.5, budget.WattsOf(LossKind.Junctions));

        // the bottom plate goes from 1.5 V to 0 and back, the positive one from 3 V to 1.5 V
        Near(f * 0.5 * (0.025 + 0.005) * 1e-9 * 2 * 1.5 * 1.5, budget.WattsOf(LossKind.Plates));

        // 0.1 mm² at 1.5 of 2 V, 1.5 V across it; four switches of 0.5 µA in half of the time
        Near((1e-7 * 1e-2 * 0.75 * 1.5) + (4 * 500e-9 * 0.5 * 1.5), budget.WattsOf(LossKind.Leakage));
        Near(3e-6 + (1e-13 * f * 3), budget.WattsOf(LossKind.Control));
        Near(1.5 - (ohms * i), budget.OutputVolts);
        Near(budget.InputWatts - budget.OutputWatts, Enum.GetValues<LossKind>().Sum(budget.WattsOf));
        Near(budget.OutputWatts / budget.InputWatts, budget.Efficiency!.Value);
        Assert.Empty(budget.Notes);
    }

    [Fact]
    public void Losses_of_the_elements_add_up_to_those_of_their_kind()
    {
        LossBudget budget = Budget(Sized.Of(s_half), s_point);
        Assert.All(Enum.GetValues<LossKind>(), kind => Near(budget.WattsOf(kind), budget.Losses.Where(l => l.Kind == kind).Sum(l => l.Watts)));
        Assert.Equal(["s1", "s2", "s3", "s4"], budget.Losses.Where(l => l.Kind == LossKind.GateDrive).Select(l => l.Element));
        Assert.Equal(["fly"], budget.Losses.Where(l => l.Kind == LossKind.ChargeSharing).Select(l => l.Element));
        Assert.All(budget.Losses, l => Assert.True(l.Watts > 0));
    }

    [Fact]
    public void Every_kind_has_a_formula_and_a_source()
    {
        Assert.Equal(Enum.GetValues<LossKind>(), LossBudget.Formulas.Select(f => f.Kind));
        Assert.Equal(LossModel.KindCount, Enum.GetValues<LossKind>().Length);
        Assert.All(LossBudget.Formulas, f => Assert.True(f.Formula.Length > 0 && f.Source.Length > 0));
    }

    // n in series: n² of the width and of the capacitor's area, each at 1/n of the voltage; docs/theory/stress.md
    [Fact]
    public void Stacks_cost_the_square_of_their_number_in_gates_and_plates_and_nothing_in_junctions()
    {
        LossBudget one = Budget(Sized.Of(s_half), s_point), three = Budget(Sized.Of(s_half, inSeries: 3), s_point);
        Near(9 * one.WattsOf(LossKind.GateDrive), three.WattsOf(LossKind.GateDrive));
        Near(9 * one.WattsOf(LossKind.Plates), three.WattsOf(LossKind.Plates));
        Near(one.WattsOf(LossKind.Junctions), three.WattsOf(LossKind.Junctions));
    }

    [Fact]
    public void A_budget_by_kinds_allocates_nothing()
    {
        LossModel model = LossModel.Of(Sized.Of(s_half), ModeAnalysis.Of(s_half));
        var watts = new double[LossModel.KindCount];
        model.WattsAt(3, 0.01, 20e6, 10, watts);
        Assert.Equal(0, Allocations.Of(() => model.WattsAt(3, 0.02, 20e6, 10, watts)));
        Assert.Throws<ArgumentException>(() => model.WattsAt(3, 0.01, 20e6, 10, new double[LossModel.KindCount - 1]));
    }

    [Fact]
    public void A_plate_that_floats_for_a_phase_and_does_not_leak_keeps_its_potential()
    {
        Converter resting = Converter.Create("Half").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Build();
        LossBudget budget = Budget(Sized.Of(resting), s_point);
        Near(Budget(Sized.Of(s_half), s_point).WattsOf(LossKind.Plates), budget.WattsOf(LossKind.Plates));
        Assert.Contains(budget.Notes, n => n is { Kind: LossKind.Plates, Element: "fly", IsCounted: true });
    }

    [Fact]
    public void Parasitic_capacitances_of_the_netlist_count_by_their_own_names()
    {
        Converter wired = Converter.Create("Half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", farads: 1e-9)
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2)
            .Parasitic("wire", "n", "gnd", 1e-12).Build();
        LossBudget budget = Budget(Sized.Bare(wired), s_point);
        Near(20e6 * 1e-12 * 1.5 * 1.5, Assert.Single(budget.Losses, l => l.Element == "wire").Watts);
    }

    [Fact]
    public void A_corner_keeps_the_dead_time()
    {
        Process process = Sized.Of(s_half, deadSeconds: 1e-9).Process;
        Assert.Equal(1e-9, process.At(new Corner("slow", ResistanceFactor: 1.3)).DeadTimeSeconds);
    }

    internal static LossBudget Budget(SizedConverter sized, OperatingPoint point) => LossModel.Of(sized, ModeAnalysis.Of(sized.Converter)).At(point);

    internal static void Near(double expected, double actual, double tolerance = 1e-12) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance * Math.Abs(expected), $"Expected {expected:R}, but got {actual:R}.");
}
