using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests.Expressions;

/// <summary>Functions of the duties against those of textbooks.</summary>
/// <remarks>Source of the plain stages: R. W. Erickson and D. Maksimović, Fundamentals of Power Electronics, chapters 2 and 6 (from memory).</remarks>
public sealed class DutyFormsTests
{
    private static readonly Fraction s_third = new(1, 3);

    [Fact]
    public void Plain_stages_have_the_ratios_of_textbooks()
    {
        Assert.Equal("M = D1", Of(InductiveStage.StepDown(s_third)).Ratio.ToString());
        Assert.Equal("M = 1/D2", Of(InductiveStage.StepUp(s_third)).Ratio.ToString());
        Assert.Equal("M = -D1/D2", Of(InductiveStage.Inverting(s_third)).Ratio.ToString());
        Assert.Equal("i_coil = I_out/D2", Of(InductiveStage.StepUp(s_third)).InductorCurrent("coil").ToString());
        Assert.Equal("i_coil = -I_out/D2", Of(InductiveStage.Inverting(s_third)).InductorCurrent("coil").ToString());
        Assert.Equal("M = 1/(1 - D)", DutyForms.Of(ModeAnalysis.Of(InductiveStage.StepUp(s_third)), 1).Ratio.ToString());
    }

    [Fact]
    public void Stages_of_two_inductors_have_the_ratios_of_textbooks()
    {
        Assert.Equal("M = -D1/D2", Of(InductiveStages.CapacitorCoupledInverting(s_third).Build()).Ratio.ToString());
        Assert.Equal("v_fly = V_in/D2", Of(InductiveStages.CapacitorCoupledInverting(s_third).Build()).CapacitorVoltage("fly").ToString());
        Assert.Equal("M = D1/D2", Of(InductiveStages.SinglePrimary(s_third).Build()).Ratio.ToString());
        Assert.Equal("M = D1/D2", Of(InductiveStages.ReversedSinglePrimary(s_third).Build()).Ratio.ToString());
        Assert.Equal("M = D1/D2", Of(InductiveStages.FourSwitch(s_third, LoadKind.Current).Build()).Ratio.ToString());
    }

    // derived in docs/theory/functions-of-duties.md
    [Fact]
    public void A_series_capacitor_stage_divides_by_the_duties_of_its_active_phases()
    {
        DutyForms forms = Of(SeriesCapacitorStage.Of(s_third));
        Assert.Equal("M = D1·D3/(D1 + D3)", forms.Ratio.ToString());
        Assert.Equal("v_fly = D1·V_in/(D1 + D3)", forms.CapacitorVoltage("fly").ToString());
        Assert.Equal("i_coil1 = D3·I_out/(D1 + D3)", forms.InductorCurrent("coil1").ToString());
        Assert.Equal(@"M = \frac{D_{1}\,D_{3}}{D_{1} + D_{3}}", forms.Ratio.ToLatex());
        Assert.Equal(
            "<math xmlns=\"http://www.w3.org/1998/Math/MathML\"><mrow><mi>M</mi><mo>=</mo><mfrac><mrow><msub><mi>D</mi><mtext>1</mtext></msub><mo>·</mo><msub><mi>D</mi><mtext>3</mtext></msub></mrow><mrow><msub><mi>D</mi><mtext>1</mtext></msub><mo>+</mo><msub><mi>D</mi><mtext>3</mtext></msub></mrow></mfrac></mrow></math>",
            forms.Ratio.ToMathML());

        DutyForms tied = DutyForms.Of(ModeAnalysis.Of(SeriesCapacitorStage.Of(s_third)), All("D", "1/2 - D", "D", "1/2 - D"));
        Assert.Equal("M = 1/2·D", tied.Ratio.ToString());
    }

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(11)]
    public void A_flying_capacitor_stage_has_the_ratio_of_its_duty(int levels)
    {
        Converter stage = FlyingCapacitorStage.Of(levels, new Fraction(1, 2 * (levels - 1)));
        Expression duty = Expression.Of(Symbol.Duty), rest = Expression.Of(new Fraction(1, levels - 1)) - duty;
        DutyForms forms = DutyForms.Of(ModeAnalysis.Of(stage), [.. stage.Phases.Select(p => p.Number % 2 == 1 ? duty : rest)]);
        Assert.Equal("M = D", forms.Ratio.ToString());
        Assert.Equal("i_coil = I_out", forms.InductorCurrent("coil").ToString());
        Assert.Equal(DutyFormOutcome.Undetermined, forms.CapacitorVoltage("fly1").Outcome);

        // with all intervals free the ratio depends on what the capacitors hold, and a load would charge them without end
        DutyForms free = Of(stage);
        Assert.Equal(DutyFormOutcome.Undetermined, free.Ratio.Outcome);
        Assert.Equal(DutyFormOutcome.NeedsTiedDuties, free.InductorCurrent("coil").Outcome);
        Assert.Contains("duties", free.InductorCurrent("coil").Reason, StringComparison.Ordinal);
        Assert.Throws<InvalidOperationException>(free.Ratio.Require);
    }

    [Fact]
    public void A_controller_s_voltage_enters_the_ratio()
    {
        Fraction sixth = new(1, 6);
        Converter stage = InductiveStages.MultiLevel(3, [s_third, sixth, s_third, sixth], [[1], [], [2], []], [new Fraction(1, 4)]).Build();
        Assert.Equal("M = 3/4·D1 + 1/4·D3", Of(stage).Ratio.ToString());
        Assert.Equal("v_fly1 = 1/4·V_in", Of(stage).CapacitorVoltage("fly1").ToString());
    }

    [Fact]
    public void A_current_is_fixed_also_where_the_meshes_that_make_it_up_are_open()
    {
        // in phase 1 three inductors meet behind the capacitor, and all that leaves the first reaches the load in the end
        DutyForms forms = Of(Converter.Create("three that meet").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("fly", "x", "y").Capacitor("out", "vout", "gnd").Switch("s1", "x", "vout", on: 2).Switch("s2", "y", "gnd", on: 2)
            .Inductor("l0", "vin", "x").Inductor("l1", "gnd", "y").Inductor("l2", "vout", "x").Build());
        Assert.Equal("i_l0 = I_out", forms.InductorCurrent("l0").ToString());
        Assert.Equal(DutyFormOutcome.Undetermined, forms.InductorCurrent("l1").Outcome);
        Assert.Equal(DutyFormOutcome.Undetermined, forms.InductorCurrent("l2").Outcome);
    }

    [Fact]
    public void Durations_are_checked()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(InductiveStage.StepUp(s_third));
        Assert.Throws<ArgumentException>(() => DutyForms.Of(analysis, All("D", "D")));
        Assert.Throws<ArgumentException>(() => DutyForms.Of(analysis, All("D")));
        Assert.Throws<ArgumentException>(() => DutyForms.Of(analysis, All("1/D", "1 - 1/D")));
        Assert.Throws<ArgumentException>(() => DutyForms.Of(analysis, All("f", "1 - f")));
        Assert.Throws<ArgumentOutOfRangeException>(() => DutyForms.Of(analysis, 3));
    }

    private static DutyForms Of(Converter converter) => DutyForms.Of(ModeAnalysis.Of(converter));

    private static Expression[] All(params string[] texts) => Array.ConvertAll(texts, Expression.Parse);
}
