using System.Xml.Linq;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Topologies;

namespace ScNet.Derivations.Tests.Expressions;

public sealed class ClosedFormsTests
{
    private static readonly string[] s_mathMLCore = ["math", "mrow", "mi", "mn", "mo", "mtext", "mfrac", "msub", "msup", "msubsup"];

    private static ClosedForms Of(Converter converter) => ClosedForms.Of(ModeAnalysis.Of(converter, converter.Modes[0]));

    private static int F(int n) => n < 3 ? 1 : F(n - 1) + F(n - 2);

    // Source: M. D. Seeman and S. R. Sanders, IEEE Trans. Power Electronics 23(2), 2008, and M. D. Seeman,
    // PhD thesis, UC Berkeley, 2009 (both from memory), as derived in docs/theory/families.md.
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(12)]
    public void Equal_components_give_the_published_closed_forms(int n)
    {
        Check(SeriesParallel.StepDown(n), new(n - 1, n * n), new(2 * ((3 * n) - 2), n * n));
        Check(SeriesParallel.StepUp(n), n - 1, 2 * ((3 * n) - 2));
        Check(Ladder.StepDown(n), new((n - 1) * ((2 * n * n) - (4 * n) + 3), 3 * n * n), new(4 * (n - 1), n));
        int odd = n / 2, even = (n - 1) / 2;
        Check(Dickson.StepDown(n), new(n - 1, n * n), new(2 * (n + (2 * odd * odd) + (2 * even * even)), n * n));
        int k = Math.Min(n, 6), ratio = F(k + 2);
        Check(Fibonacci.StepUp(k), F(k) * F(k + 1), 2 * F(k + 1) * (ratio + (2 * F(k))));
        int power = 1 << k;
        Check(Doubler.StepUp(k), new(((5 * power * power / 4) - 2), 3), new(8 * ((power * power) - 1), 3));
    }

    private static void Check(Converter converter, Fraction slow, Fraction fast)
    {
        ClosedForms forms = Of(converter).WithEqualComponents();
        Assert.Equal(
            Expression.Of(slow) * Expression.Of(Symbol.EqualCapacitance, -1) * Expression.Of(Symbol.Frequency, -1),
            forms.SlowSwitchingLimit.Expression);
        Assert.Equal(Expression.Of(fast) * Expression.Of(Symbol.EqualOnResistance), forms.FastSwitchingLimit.Expression);
    }

    [Fact]
    public void A_stage_with_an_inductor_leads_with_charge_sharing_and_counts_its_winding()
    {
        ClosedForms forms = Of(SeriesCapacitorStage.Of(new Fraction(1, 4), farads: 1e-6, windingOhms: 0.1));
        Assert.Equal("R_sharing = 0", forms.ChargeSharing!.ToString());
        Assert.Equal("R_SSL = 1/(64·C_fly·f)", forms.SlowSwitchingLimit.ToString());
        Assert.Contains("1/4·R_coil1 + 1/4·R_coil2", forms.FastSwitchingLimit.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("M = 1/8\nR_sharing = 0\nR_FSL = ", forms.ToString(), StringComparison.Ordinal);
        Assert.Equal(
            ModeAnalysis.Of(SeriesCapacitorStage.Of(new Fraction(1, 4), farads: 1e-6, windingOhms: 0.1)).FastSwitchingLimit.Ohms,
            forms.FastSwitchingLimit.Expression!.Evaluate(forms.ComponentValues()),
            1e-12);
        Assert.Equal("P_sharing = 0", forms.ChargeSharingLoss!.ToString());
        Assert.Null(Of(SeriesParallel.StepDown(3)).ChargeSharing);
        Assert.Null(Of(SeriesParallel.StepDown(3)).ChargeSharingLoss);
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("fa-IR")]
    [InlineData("tr-TR")]
    public void A_series_parallel_third_reads_as_a_person_would_write_it(string culture)
    {
        using CultureScope scope = new(culture);
        ClosedForms forms = Of(SeriesParallel.StepDown(3));
        Assert.Equal("M = 1/3", forms.Ratio.ToString());
        Assert.Equal("V_out = 1/3·V_in", forms.OutputVoltage.ToString());
        Assert.Equal("R_SSL = 1/(9·C_fly1·f) + 1/(9·C_fly2·f)", forms.SlowSwitchingLimit.ToString());
        Assert.Equal("P_SSL = I_out²/(9·C_fly1·f) + I_out²/(9·C_fly2·f)", forms.SlowSwitchingLoss.ToString());
        Assert.Equal("v_fly1 = 1/3·V_in", forms.CapacitorVoltage("fly1").ToString());
        Assert.Equal("φ_p1[1] = V_in", forms.NodePotential("p1", 1).ToString());
        Assert.Equal("φ_gnd[2] = 0", forms.NodePotential("gnd", 2).ToString());
        Assert.Equal("v_series1[2] = 2/3·V_in", forms.BlockingVoltage("series1", 2).ToString());
        Assert.Equal("v_series1 = 2/3·V_in", forms.PeakBlockingVoltage("series1").ToString());
        ClosedForms equal = forms.WithEqualComponents();
        Assert.Equal("R_SSL = 2/(9·C·f)", equal.SlowSwitchingLimit.ToString());
        Assert.Equal("R_FSL = 14/9·R", equal.FastSwitchingLimit.ToString());
        Assert.Equal("P_FSL = 14/9·I_out²·R", equal.FastSwitchingLoss.ToString());
        Assert.Equal(@"R_{\mathrm{SSL}} = \frac{2}{9\,C\,f}", equal.SlowSwitchingLimit.ToLatex());
        Assert.Equal("M = 1/3\nR_SSL = 2/(9·C·f)\nR_FSL = 14/9·R", equal.ToString());
    }

    [Fact]
    public void A_series_resistance_enters_the_fast_limit_where_there_is_one()
    {
        Converter converter = SeriesParallel.StepDown(3).WithValues(esrOhms: [0.5, 0]);
        ClosedForms forms = Of(converter);
        Assert.EndsWith(" + 4/9·ESR_fly1", forms.FastSwitchingLimit.ToString(), StringComparison.Ordinal);
        Assert.Equal("R_FSL = 14/9·R + 4/9·ESR", forms.WithEqualComponents().FastSwitchingLimit.ToString());
    }

    [Fact]
    public void Where_component_values_decide_the_outcome_says_so_and_names_the_elements()
    {
        Converter converter = Parallel().Build();
        ClosedForms forms = Of(converter);
        Assert.Equal(ClosedFormOutcome.DecidedByComponentValues, forms.SlowSwitchingLimit.Outcome);
        Assert.Equal(["a", "b"], forms.SlowSwitchingLimit.Elements);
        string reason = "Component values decide the charge of 'a', 'b': no closed form with fractions exists for R_SSL.";
        Assert.Equal(reason, forms.SlowSwitchingLimit.ToString());
        Assert.Equal(reason, Assert.Throws<InvalidOperationException>(() => forms.SlowSwitchingLimit.Require()).Message);
        Assert.Equal(reason, XElement.Parse(forms.SlowSwitchingLimit.ToMathML()).Value);
        Assert.StartsWith(@"\text{Component values decide", forms.SlowSwitchingLimit.ToLatex(), StringComparison.Ordinal);
        Assert.Null(forms.SlowSwitchingLimit.Expression);
        Assert.Equal(ClosedFormOutcome.DecidedByComponentValues, forms.WithEqualComponents().SlowSwitchingLoss.Outcome);

        // the switches do not notice, and the voltages do not depend on values
        Assert.Equal("R_FSL = 2·R", forms.WithEqualComponents().FastSwitchingLimit.ToString());
        Assert.Equal("v_a = 1/2·V_in", forms.CapacitorVoltage("a").ToString());
    }

    [Fact]
    public void Of_very_many_elements_the_reason_names_the_first_few()
    {
        ConverterBuilder builder = Parallel();
        foreach (string name in "cdefghijk".Select(c => c.ToString()))
        {
            builder.Capacitor(name, "p", "n");
        }

        ClosedForm form = Of(builder.Build()).SlowSwitchingLimit;
        Assert.Equal(11, form.Elements.Count);
        Assert.Contains("'h' and 3 more:", form.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void What_floats_is_undetermined_and_not_zero()
    {
        ClosedForms forms = Of(Converter.Create("floating").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("idle", "x", "y")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "x", "p").Build());
        Assert.Equal(ClosedFormOutcome.Undetermined, forms.CapacitorVoltage("idle").Outcome);
        Assert.Equal("Nothing in the circuit determines v_idle.", forms.CapacitorVoltage("idle").ToString());
        Assert.Equal(ClosedFormOutcome.Undetermined, forms.NodePotential("x", 1).Outcome);
        Assert.Equal(ClosedFormOutcome.Undetermined, forms.PeakBlockingVoltage("s5").Outcome);
        Assert.NotEqual(forms.CapacitorVoltage("idle"), forms.CapacitorVoltage("fly"));
    }

    [Fact]
    public void A_mode_without_result_throws_with_the_findings()
    {
        Converter converter = Converter.Create("short").Input("vin").Output("vout")
            .Switch("s1", "vin", "gnd", on: 1).Switch("s2", "vin", "vout", on: 2).Build();
        ScNetException error = Assert.Throws<ScNetException>(() => Of(converter));
        Assert.Contains(error.Diagnostics, d => d.Code == DiagnosticCodes.InputShorted);
    }

    [Fact]
    public void Names_and_phases_that_do_not_exist_are_refused()
    {
        ClosedForms forms = Of(SeriesParallel.StepDown(2));
        Assert.Throws<ArgumentException>(() => forms.CapacitorVoltage("x"));
        Assert.Throws<ArgumentException>(() => forms.NodePotential("x", 1));
        Assert.Throws<ArgumentException>(() => forms.BlockingVoltage("x", 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => forms.NodePotential("gnd", 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => forms.BlockingVoltage("top1", 0));
    }

    [Fact]
    public void Forms_do_not_depend_on_the_order_of_the_netlist()
    {
        ClosedForm Form(string first, string second) => Of(Converter.Create("order").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n")
            .Switch(first, "vin", "p", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch(second, "n", "vout", on: 1).Build()).FastSwitchingLimit;
        Assert.Equal(Form("s1", "s2"), Form("s2", "s1"));
        Assert.Equal(Form("s1", "s2").GetHashCode(), Form("s2", "s1").GetHashCode());
        Assert.NotEqual(Form("s1", "s2"), Form("s1", "s5"));
    }

    [Fact]
    public void MathML_is_well_formed_and_of_the_core_whatever_the_names_are()
    {
        const string Odd = "a<b>&\"\u0001\uFFFF\u200E ]]>";
        ClosedForms forms = Of(Converter.Create("odd").Input("vin").Output("vout")
            .Capacitor(Odd, "p", "n", esrOhms: 1)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
            .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build());
        ClosedForm[] all =
        [
            forms.Ratio, forms.OutputVoltage, forms.SlowSwitchingLimit, forms.FastSwitchingLimit, forms.SlowSwitchingLoss,
            forms.FastSwitchingLoss, forms.CapacitorVoltage(Odd), forms.NodePotential("p", 1), forms.WithEqualComponents().SlowSwitchingLimit,
        ];
        Assert.All(all, form =>
        {
            XElement root = XElement.Parse(form.ToMathML());
            Assert.Equal("http://www.w3.org/1998/Math/MathML", root.Name.NamespaceName);
            Assert.All(root.DescendantsAndSelf(), e => Assert.Contains(e.Name.LocalName, s_mathMLCore));
            Assert.All(root.DescendantsAndSelf(), e => Assert.Equal(
                e.Name.LocalName switch { "mfrac" or "msub" or "msup" => 2, "msubsup" => 3, "math" => 1, "mi" or "mn" or "mo" or "mtext" => 0, _ => e.Elements().Count() },
                e.Elements().Count()));
        });
        Assert.Contains(@"a<b>&""\u0001\uFFFF\u200E ]]>", XElement.Parse(forms.SlowSwitchingLimit.ToMathML()).Value, StringComparison.Ordinal);
    }

    private static ConverterBuilder Parallel() => Converter.Create("parallel").Input("vin").Output("vout")
        .Capacitor("a", "p", "n", 1).Capacitor("b", "p", "n", 3)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2);
}
