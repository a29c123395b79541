using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests;

public sealed class FormCheckTests
{
    private static readonly Converter s_third = SeriesParallel.StepDown(3);

    private static Derivation Third => Derivation.Of(s_third);

    [Fact]
    public void What_the_closed_forms_write_is_right_by_element_and_for_equal_components()
    {
        foreach (Converter converter in new[] { s_third, Dickson.StepDown(4), Circuits.Half(), Circuits.ThreePhases() })
        {
            ClosedForms forms = ClosedForms.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
            foreach (ClosedForms f in new[] { forms, forms.WithEqualComponents() })
            {
                DerivationReport report = Derivation.Of(converter)
                    .OutputVoltage(f.OutputVoltage.Require().ToString())
                    .SlowSwitchingLimit(f.SlowSwitchingLimit.Require().ToString())
                    .FastSwitchingLimit(f.FastSwitchingLimit.Require().ToString())
                    .SlowSwitchingLoss(f.SlowSwitchingLoss.Require())
                    .FastSwitchingLoss(f.FastSwitchingLoss.Require())
                    .Check();
                Assert.True(report.IsRight, report.ToString());
                Assert.Equal(f.SlowSwitchingLimit, report.Forms[1].Derived);
                Assert.All(report.Forms, form => Assert.Empty(form.Differences));
            }
        }
    }

    [Fact]
    public void A_series_resistance_of_zero_may_be_stated_or_left_out_but_not_with_a_wrong_coefficient()
    {
        const string Switches = "14/9*R";
        Assert.True(Third.FastSwitchingLimit(Switches).FastSwitchingLimit($"{Switches} + 8/9*ESR").Check().IsRight);
        Assert.Equal("8/9·ESR", Third.FastSwitchingLimit($"{Switches} + 7/9*ESR").Check().Forms[0].TermDifferences[0].Derived!.ToString());
        Expression byElement = ClosedForms.Of(ModeAnalysis.Of(s_third, s_third.Modes[0])).FastSwitchingLimit.Require();
        Assert.True(Third.FastSwitchingLimit(byElement + Expression.Parse("4/9*ESR_fly1")).Check().IsRight);
    }

    [Theory]
    [InlineData("")]
    [InlineData("ar-SA")]
    public void A_wrong_form_names_the_terms_that_differ_are_missing_or_too_many(string culture)
    {
        using CultureScope scope = new(culture);
        Assert.Equal(
            """
            Series-parallel 3:1: wrong, 2 of 3 statements.
              slow-switching limit
                stated    2/(9·C_fly1·f) + 3
                derived   1/(9·C_fly1·f) + 1/(9·C_fly2·f)
                differs   2/(9·C_fly1·f) instead of 1/(9·C_fly1·f)
                missing   1/(9·C_fly2·f)
                extra     3
              fast-switching limit
                stated    28/9·R
                derived   14/9·R
                differs   28/9·R instead of 14/9·R
                slip      too large by a factor of 2
            """,
            Third.Ratio("1/3").SlowSwitchingLimit("2/(9*C_fly1*f) + 3").FastSwitchingLimit("28/9*R").Check().ToString());
    }

    public static TheoryData<string, string, string> Slips => new()
    {
        { nameof(FormKind.SlowSwitchingLimit), "4/(9*C*f)", nameof(SlipKind.Factor) },
        { nameof(FormKind.SlowSwitchingLimit), "1/(18*C_fly1*f) + 1/(18*C_fly2*f)", nameof(SlipKind.Factor) },
        { nameof(FormKind.SlowSwitchingLimit), "2/(C*f)", nameof(SlipKind.PerInputCharge) },
        { nameof(FormKind.SlowSwitchingLimit), "14/9*R", nameof(SlipKind.LimitsExchanged) },
        { nameof(FormKind.SlowSwitchingLimit), "2/(3*C*f)", nameof(SlipKind.NotSquared) },
        { nameof(FormKind.SlowSwitchingLimit), "2/(9*C)", nameof(SlipKind.SymbolForgotten) },
        { nameof(FormKind.SlowSwitchingLimit), "-2/(9*C*f)", nameof(SlipKind.SignFlipped) },
        { nameof(FormKind.FastSwitchingLimit), "2/(9*C*f)", nameof(SlipKind.LimitsExchanged) },
        { nameof(FormKind.FastSwitchingLimit), "7/9*R", nameof(SlipKind.DutyForgotten) },
        { nameof(FormKind.FastSwitchingLimit), "14*R", nameof(SlipKind.PerInputCharge) },
        { nameof(FormKind.FastSwitchingLimit), "56/9*R", nameof(SlipKind.Factor) },
        { nameof(FormKind.SlowSwitchingLoss), "2*I_out/(9*C*f)", nameof(SlipKind.SymbolForgotten) },
        { nameof(FormKind.SlowSwitchingLoss), "2/(9*C*f)", nameof(SlipKind.SymbolForgotten) },
        { nameof(FormKind.FastSwitchingLoss), "I_out^2*2/(9*C*f)", nameof(SlipKind.LimitsExchanged) },
        { nameof(FormKind.OutputVoltage), "3*V_in", nameof(SlipKind.RatioInverted) },
        { nameof(FormKind.OutputVoltage), "1/3", nameof(SlipKind.SymbolForgotten) },
        { nameof(FormKind.OutputVoltage), "2/3*V_in", nameof(SlipKind.Factor) },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_is_named(string kind, string text, string slip)
    {
        FormFinding finding = Assert.Single(State(Third, Enum.Parse<FormKind>(kind), text).Check().Forms);
        Assert.Equal((Verdict.Wrong, slip), (finding.Verdict, finding.Slips.Select(s => s.Kind.ToString()).FirstOrDefault()));
        Assert.NotEmpty(finding.Differences);
    }

    [Fact]
    public void Every_altered_coefficient_of_every_form_is_caught_and_told()
    {
        foreach (Converter converter in new[] { Dickson.StepDown(5), SeriesParallel.StepDown(4), Circuits.ThreePhases() })
        {
            ClosedForms forms = ClosedForms.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
            foreach (FormKind kind in Enum.GetValues<FormKind>())
            {
                Expression right = kind switch
                {
                    FormKind.OutputVoltage => forms.OutputVoltage.Require(),
                    FormKind.SlowSwitchingLimit => forms.SlowSwitchingLimit.Require(),
                    FormKind.FastSwitchingLimit => forms.FastSwitchingLimit.Require(),
                    FormKind.SlowSwitchingLoss => forms.SlowSwitchingLoss.Require(),
                    _ => forms.FastSwitchingLoss.Require(),
                };
                foreach (Term term in right.Terms)
                {
                    foreach (Fraction factor in new[] { Fraction.MinusOne, new Fraction(1, 2), new Fraction(-2, 1) })
                    {
                        Expression altered = right + (Expression.Of(factor) * Expression.Parse(term.ToString()));
                        FormFinding finding = Assert.Single(State(Derivation.Of(converter), kind, altered.ToString()).Check().Forms);
                        FormDifference difference = Assert.Single(finding.TermDifferences);
                        Assert.Equal(Verdict.Wrong, finding.Verdict);
                        Assert.Equal(term, difference.Derived);
                        Assert.Equal(term.Coefficient * (1 + factor), difference.StatedCoefficient);
                    }
                }
            }
        }
    }

    [Fact]
    public void Exchanged_and_equal_duties_are_recognised()
    {
        Converter uneven = Converter.Create("Uneven").Input("vin").Output("vout").Duties(new Fraction(1, 4), new Fraction(3, 4))
            .Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        Derivation derivation = Derivation.Of(uneven);
        Assert.True(derivation.FastSwitchingLimit("R_s1 + R_s2 + 1/3*R_s3 + 1/3*R_s4").FastSwitchingLimit("8/3*R").Check().IsRight);
        Assert.Equal("duties of phases 1 and 2 exchanged", Slip("1/3*R_s1 + 1/3*R_s2 + R_s3 + R_s4"));
        Assert.Equal("as if all phases lasted equally long", Slip("2*R"));
        Assert.Equal("not divided by the duties", Slip("R"));

        string Slip(string text) => derivation.FastSwitchingLimit(text).Check().Forms[0].Slips[0].Description;
    }

    [Fact]
    public void Where_component_values_decide_no_form_is_right_or_wrong()
    {
        DerivationReport report = Derivation.Of(Circuits.Parallel()).SlowSwitchingLimit("1/(4*C*f)").FastSwitchingLimit("2*R").Check();
        Assert.Equal([Verdict.Undetermined, Verdict.Right], report.Forms.Select(f => f.Verdict));
        Assert.False(report.IsRight);
        Assert.Equal(
            """
            Parallel: 1 of 2 statements not determined.
              slow-switching limit
                stated    1/(4·C·f)
                no form   Component values decide the charge of 'a', 'b': no closed form with fractions exists for R_SSL.
            """,
            report.ToString());
    }

    [Fact]
    public void A_mode_without_result_leaves_every_form_open()
    {
        DerivationReport report = Derivation.Of(Circuits.WithoutResult()).SlowSwitchingLimit("1/(C*f)").Check();
        Assert.Equal((Verdict.Undetermined, null), (report.Forms[0].Verdict, report.Forms[0].Derived));
        Assert.False(report.IsRight);
    }

    [Fact]
    public void Symbols_that_the_converter_does_not_have_and_results_are_refused_at_once()
    {
        Assert.StartsWith("'Series-parallel 3:1' has no capacitor 'fly9'.", Assert.Throws<ArgumentException>(() => Third.SlowSwitchingLimit("1/(C_fly9*f)")).Message, StringComparison.Ordinal);
        Assert.StartsWith("'Series-parallel 3:1' has no switch 'fly1'.", Assert.Throws<ArgumentException>(() => Third.FastSwitchingLimit("R_fly1")).Message, StringComparison.Ordinal);
        Assert.StartsWith(
            "Expected a closed form in capacitances, resistances, f, V_in and I_out, but R_SSL is itself a result.",
            Assert.Throws<ArgumentException>(() => Third.SlowSwitchingLoss("I_out^2*R_SSL")).Message,
            StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => Third.SlowSwitchingLimit("2/(9*C*f"));
        Assert.Throws<ArgumentNullException>(() => Third.SlowSwitchingLimit((Expression)null!));
    }

    [Fact]
    public void A_switch_named_as_a_limit_is_still_a_switch()
    {
        Converter converter = Converter.Create("Odd").Input("vin").Output("vout").Capacitor("fly", "p", "n")
            .Switch("SSL", "vin", "p", on: 1).Switch("FSL", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        Assert.True(Derivation.Of(converter).FastSwitchingLimit("1/2*(R_SSL + R_FSL + R_s3 + R_s4)").Check().IsRight);
    }

    [Fact]
    public void Derivations_and_reports_are_equal_when_their_forms_are()
    {
        Derivation first = Derivation.Of(s_third), one = State(first, FormKind.SlowSwitchingLimit, "2/9/C/f");
        Derivation same = State(first, FormKind.SlowSwitchingLimit, "2/(9·C·f)"), other = State(first, FormKind.SlowSwitchingLimit, "1/(9·C·f)");
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, other);
        Assert.NotEqual(first, one);
        Assert.Equal(one.Check(), same.Check());
        Assert.NotEqual(one.Check(), other.Check());
        Assert.Equal("Series-parallel 3:1, 1 statements\n  slow-switching limit = 2/(9·C·f)", one.ToString());
        Assert.Equal("wrong: slow-switching limit = 1/(9·C·f), derived 2/(9·C·f)", other.Check().Forms[0].ToString());
    }

    private static Derivation State(Derivation derivation, FormKind kind, string text) => kind switch
    {
        FormKind.OutputVoltage => derivation.OutputVoltage(text),
        FormKind.SlowSwitchingLimit => derivation.SlowSwitchingLimit(text),
        FormKind.FastSwitchingLimit => derivation.FastSwitchingLimit(text),
        FormKind.SlowSwitchingLoss => derivation.SlowSwitchingLoss(text),
        _ => derivation.FastSwitchingLoss(text),
    };
}
