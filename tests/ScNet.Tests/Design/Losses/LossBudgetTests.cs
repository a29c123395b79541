using Fractions;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Losses;
using ScNet.SteadyState;
using ScNet.Tests.SteadyState.Conduction;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Losses;

public sealed class LossBudgetTests
{
    private static readonly Converter s_half = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Build();

    // 2 A at 3 V, and losses of 1, 2 and 4 W, two of one kind
    [Fact]
    public void Powers_add_up_and_kinds_are_summed()
    {
        LossBudget budget = Budget(3, [new(LossKind.Conduction, "a", 1), new(LossKind.Conduction, "b", 2), new(LossKind.Leakage, "a", 4)], 2);
        Assert.Equal((6, 7, 13), (budget.OutputWatts, budget.TotalLossWatts, budget.InputWatts));
        Assert.Equal((3, 4, 0), (budget.WattsOf(LossKind.Conduction), budget.WattsOf(LossKind.Leakage), budget.WattsOf(LossKind.Cores)));
        Assert.Equal(6 / 13.0, budget.Efficiency);
        Assert.EndsWith(": 3 V output, 46.15 %; Conduction 3 W, Leakage 4 W", budget.ToString(), StringComparison.Ordinal);
    }

    // driven by the load: no output power, or none from the input; without load: none; fed by what should be lost: none from the input
    [Theory]
    [InlineData(-2, 7)]
    [InlineData(-2, 1)]
    [InlineData(0, 7)]
    [InlineData(2, -6)]
    public void There_is_no_efficiency_without_output_and_input_power(double amperes, double watts)
    {
        LossBudget budget = Budget(3, [new(LossKind.Control, string.Empty, watts)], amperes);
        Assert.Null(budget.Efficiency);
        Assert.Contains(": 3 V output, no efficiency; Control ", budget.ToString(), StringComparison.Ordinal);
    }

    // by the average output current of triangles with a rest: 2/(1 + √(1 + 4K/D²))
    [Fact]
    public void A_mode_whose_phase_a_current_ends_is_served_by_waveforms_and_has_no_model()
    {
        Converter stage = Stages.StepDown(new Fraction(1, 4), 1e-5);
        LossBudget budget = LossBudget.Of(Sized.Bare(stage), ModeAnalysis.Of(stage), new OperatingPoint(4, 0.15, 1e6));
        double k = 2 * Stages.Henries * 1e6 * 0.15 / budget.OutputVolts;
        Assert.Equal(4 * 2 / (1 + Math.Sqrt(1 + (4 * k * 16))), budget.OutputVolts, 1e-3);
        Assert.Contains("a current ends phases of", Assert.Throws<ArgumentException>(() => LossModel.Of(Sized.Bare(stage), ModeAnalysis.Of(stage))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_of_fixed_phases_is_served_by_its_model()
    {
        OperatingPoint point = new(3, 0.01, 2e7);
        LossBudget budget = LossBudget.Of(Sized.Of(s_half), ModeAnalysis.Of(s_half), point);
        Assert.True(budget.WattsOf(LossKind.ChargeSharing) > 0);
        Assert.Empty(budget.Notes);
        Assert.Equal(0, LossBudget.OfWaveforms(Sized.Of(s_half), s_half.Modes[0], point).WattsOf(LossKind.ChargeSharing));
    }

    // with plates in the netlist the model is of the converter without
    [Fact]
    public void A_model_is_of_the_values_of_its_devices_without_parasitic_capacitances()
    {
        Converter wired = Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n", farads: 1e-9, plates: new CapacitorPlates(BottomFarads: 1e-10))
            .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2).Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2).Parasitic("wire", "n", "gnd", 1e-10).Build();
        SizedConverter sized = Sized.Bare(wired);
        Assert.Empty(sized.Plain.ParasiticBranches);
        ModeAnalysis analysis = ModeAnalysis.Of(wired);
        LossModel model = LossModel.Of(sized, analysis);
        Assert.Empty(model.Analysis.Converter.ParasiticBranches);
        Assert.Same(s_half, Sized.Bare(s_half).Plain);
        ModeAnalysis plain = ModeAnalysis.Of(s_half);
        Assert.Same(plain, LossModel.Of(Sized.Bare(s_half), plain).Analysis);
        Assert.Equal($"{sized}, mode {analysis.Mode}", model.ToString());
        LossModelTests.Near(LossModel.Of(Sized.Bare(s_half), plain).Impedance.Ohms(1e6), model.Impedance.Ohms(1e6));
        LossModelTests.Near(1e6 * (1e-10 + 1e-10) * 1.5 * 1.5, model.At(new OperatingPoint(3, 0, 1e6)).WattsOf(LossKind.Plates));
    }

    // what stood in the place of the results does not count, and further places stay as they were
    [Fact]
    public void Losses_by_kind_are_written_over_what_was_there()
    {
        LossModel model = LossModel.Of(Sized.Of(s_half), ModeAnalysis.Of(s_half));
        double[] watts = [.. Enumerable.Repeat(5.0, LossModel.KindCount + 1)];
        model.WattsAt(3, 0.01, 2e7, 10, watts);
        Assert.Equal(0, watts[(int)LossKind.Cores]);
        Assert.Equal(0, watts[(int)LossKind.BodyDiodes]);
        Assert.Equal(5, watts[^1]);

        // 10 Ω and a fast limit of 4 Ω; below it nothing
        LossModelTests.Near(6e-4, watts[(int)LossKind.ChargeSharing]);
        model.WattsAt(3, 0.01, 2e7, 3, watts);
        Assert.Equal(0, watts[(int)LossKind.ChargeSharing]);
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => model.WattsAt(3, 0.01, 2e7, 10, new double[3]));
        Assert.Equal("wattsByKind", refusal.ParamName);
        Assert.StartsWith("Expected room for 12 losses, but got 3.", refusal.Message, StringComparison.Ordinal);
    }

    // all that the impedance takes: R I² with no fast limit
    [Fact]
    public void Where_averages_carry_no_load_all_of_the_impedance_is_charge_sharing()
    {
        Converter stage = InductorFed.Behind(Dickson.StepDown(3)).WithDuties([new(1, 2), new(1, 2)]);
        LossModel model = LossModel.Of(Sized.Bare(stage), ModeAnalysis.Of(stage));
        var watts = new double[LossModel.KindCount];
        model.WattsAt(3, 2, 1e6, 10, watts);
        Assert.Equal(40, watts[(int)LossKind.ChargeSharing], 1e-12);
        Assert.Equal(0, watts[(int)LossKind.Conduction]);
    }

    [Fact]
    public void Notes_tell_kind_element_and_reason()
    {
        Assert.Equal("Plates of fly: counted, why", new LossNote(LossKind.Plates, "fly", true, "why").ToString());
        Assert.Equal("Plates: not counted, why", new LossNote(LossKind.Plates, string.Empty, false, "why").ToString());
        Assert.Throws<ArgumentNullException>(() => new LossNote(LossKind.Plates, null!, true, "why"));
    }

    private static LossBudget Budget(double outputVolts, Loss[] losses, double amperes) => new(Sized.Bare(s_half), new OperatingPoint(5, amperes, 1), outputVolts, losses, []);
}
