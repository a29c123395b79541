using Fractions;
using ScNet.Analysis;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Tests.Expressions;

/// <summary>On random networks an expression has the value that the analysis computes.</summary>
[Trait("Kind", "Law")]
public sealed class ClosedFormsLaws
{
    // a sum of up to some dozens of products of doubles
    private const double RelativeError = 1e-13;

    private const double FrequencyHz = 1.25e6;
    private const double InputVolts = 3.7;
    private const double LoadAmperes = 0.011;

    [Fact]
    public void Every_expression_has_the_value_of_the_analysis() =>
        RandomNetworks.Any.Holds(sketch =>
        {
            Converter converter = sketch.Build();
            if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { } analysis)
            {
                Check(converter, analysis);
            }
        });

    private static void Check(Converter converter, ModeAnalysis analysis)
    {
        ClosedForms forms = ClosedForms.Of(analysis);
        Dictionary<string, double> values = forms.ComponentValues();
        values["f"] = FrequencyHz;
        values["V_in"] = InputVolts;
        values["I_out"] = LoadAmperes;
        double slow = analysis.SlowSwitchingLimit.Ohms(FrequencyHz), fast = analysis.FastSwitchingLimit.Ohms;
        bool isSlowExact = analysis.SlowSwitchingLimit.Coefficients.All(k => k.IsExact);
        bool isFastExact = analysis.FastSwitchingLimit.SwitchCoefficients.All(k => k.IsExact)
            && analysis.FastSwitchingLimit.CapacitorCoefficients.Zip(converter.Capacitors).All(k => k.First.IsExact || k.Second.EsrOhms == 0);
        Near(isSlowExact, slow, forms.SlowSwitchingLimit);
        Near(isFastExact, fast, forms.FastSwitchingLimit);
        Near(isSlowExact, LoadAmperes * LoadAmperes * slow, forms.SlowSwitchingLoss);
        Near(isFastExact, LoadAmperes * LoadAmperes * fast, forms.FastSwitchingLoss);
        Is(analysis.Ratio, 1, forms.Ratio);
        Is(analysis.Ratio, InputVolts, forms.OutputVoltage);
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Is(analysis.IdealPoint.CapacitorVoltages[i], InputVolts, forms.CapacitorVoltage(converter.Capacitors[i].Name));
        }

        for (int n = 0; n < converter.Nodes.Count; n++)
        {
            Assert.All(converter.Phases, p => Is(
                analysis.IdealPoint.NodePotentials[n][p.Number], InputVolts, forms.NodePotential(converter.Nodes[n], p.Number)));
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Assert.All(converter.Phases, p => Is(
                analysis.BlockingVoltages.Switches[s][p.Number], InputVolts, forms.BlockingVoltage(converter.Switches[s].Name, p.Number)));
            Is(analysis.BlockingVoltages.Peaks[s], InputVolts, forms.PeakBlockingVoltage(converter.Switches[s].Name));
        }

        // equal components collect to the sum of the coefficients
        if (isSlowExact)
        {
            Fraction sum = analysis.SlowSwitchingLimit.Coefficients.Aggregate(Fraction.Zero, (t, k) => t + k.ToFraction());
            Assert.Equal(
                Expression.Of(sum) * Expression.Of(Symbol.EqualCapacitance, -1) * Expression.Of(Symbol.Frequency, -1),
                forms.WithEqualComponents().SlowSwitchingLimit.Expression);
        }

        void Near(bool isExact, double expected, ClosedForm form)
        {
            Assert.Equal(isExact ? ClosedFormOutcome.Exact : ClosedFormOutcome.DecidedByComponentValues, form.Outcome);
            if (isExact)
            {
                Assert.Equal(expected, form.Require().Evaluate(values), RelativeError * expected);
            }
        }

        void Is(Quantity expected, double scale, ClosedForm form)
        {
            Assert.Equal(expected.IsExact ? ClosedFormOutcome.Exact : ClosedFormOutcome.Undetermined, form.Outcome);
            if (expected.IsExact)
            {
                Assert.Equal(expected.ToDouble() * scale, form.Require().Evaluate(values), RelativeError * scale * (1 + Math.Abs(expected.ToDouble())));
            }
        }
    }
}
