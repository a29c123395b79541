using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Tests.Expressions;

/// <summary>Functions of the duties against the analysis at other duties, as fractions.</summary>
[Trait("Kind", "Law")]
public sealed class DutyFormsLaws
{
    // parts of a period in the proportion of numbers without common divisors, where no condition is met by chance
    private static readonly Gen<int[]> s_parts = Gen.Int[1_000, 99_999].Array[8];

    [Fact]
    public void Functions_of_the_duties_are_what_the_analysis_finds_at_any_duties() =>
        Gen.Select(InductiveNetworks.Any, s_parts).Holds((converter, parts) => Assert.True(Compare(converter, parts) >= 0), 1000, found: ["aHd-PmJBUD6DOqV83"]);

    [Fact]
    public void A_form_of_other_duties_would_be_noticed()
    {
        Converter stage = InductiveStages.StepUp(new Fraction(1, 3)).Build();
        int[] parts = [1, 2, 3, 4, 5, 6, 7, 8];
        Assert.Equal(2, Compare(stage, parts));
        DutyForms forms = DutyForms.Of(ModeAnalysis.Of(stage));
        Assert.NotEqual(ModeAnalysis.Of(stage).Ratio.ToFraction(), forms.Ratio.Require().EvaluateExactly(_ => new Fraction(1, 4)));
    }

    // How many forms were compared.
    private static int Compare(Converter converter, int[] parts)
    {
        int count = converter.Phases.Count, compared = 0;
        Fraction sum = new(parts.Take(count).Sum());
        Fraction[] duties = [.. parts.Take(count).Select(p => new Fraction(p) / sum)];
        foreach (Mode mode in converter.Modes)
        {
            if (ModeAnalysis.Try(converter, mode).Analysis is not { } before)
            {
                continue;
            }

            DutyForms forms = DutyForms.Of(before);
            Converter other = converter.WithDuties(duties);
            if (ModeAnalysis.Try(other, other.Modes[mode.Index]).Analysis is not { } after)
            {
                // what other duties break, the forms do not promise
                Assert.NotEqual(DutyFormOutcome.Exact, forms.Ratio.Outcome);
                continue;
            }

            Fraction Value(Symbol symbol) => symbol.Kind == SymbolKind.Duty ? duties[symbol.Phase - 1] : Fraction.One;
            Check(forms.Ratio, after.Ratio, after.Balance == VoltageBalance.Averages);
            foreach (CapacitorAnalysis capacitor in after.Capacitors)
            {
                Check(forms.CapacitorVoltage(capacitor.Capacitor.Name), capacitor.Voltage, after.Balance == VoltageBalance.Averages);
            }

            foreach (InductorAnalysis inductor in after.Inductors)
            {
                Check(forms.InductorCurrent(inductor.Inductor.Name), inductor.Current, after.CarriesLoad);
            }

            void Check(DutyForm form, Quantity found, bool isByAverages)
            {
                Assert.NotEqual(DutyFormOutcome.TooLong, form.Outcome);
                if (form.IsExact)
                {
                    Assert.Equal(found.ToFraction(), form.Expression.EvaluateExactly(Value));
                    compared++;
                }
                else
                {
                    Assert.False(isByAverages && found.IsExact, $"{form.Symbol} is {found}, but: {form.Reason}");
                }
            }
        }

        return compared;
    }
}
