using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;
using Xunit.Abstractions;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The exact impedance of random networks against the node equations in 640 binary places. `.ci/campaign laws 250`
/// makes 100,000 networks of it.
/// </summary>
public sealed class PreciseImpedanceLaws(ITestOutputHelper output)
{
    private const double Tolerance = 1e-10;
    private const int Count = 400;

    [Fact]
    public void Impedances_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0;
        double worst = 0;
        SpreadConverters.Gen.Holds(
            sample =>
            {
                if (ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                double frequencyHz = sample.FrequencyOverCorner * (impedance.CornerFrequencyHz > 0 ? impedance.CornerFrequencyHz : 1);
                double expected = PreciseNodes.Ohms(sample.Converter, analysis.Mode, sample.Ratio, frequencyHz), actual = impedance.Ohms(frequencyHz);
                double off = Math.Abs(expected - actual) / expected;
                compared++;
                worst = Math.Max(worst, off);
                Assert.True(off <= Tolerance, $"At {frequencyHz:R} Hz expected {expected:R} Ω, but got {actual:R} Ω ({off:e1}).");
            },
            Count,
            sample => sample.ToString());
        output.WriteLine($"{compared} networks had a result; the worst was {worst:e1} off");
        Assert.True(compared >= Count / 5, $"only {compared}");
    }

    [Fact]
    public void A_resistance_that_is_off_by_a_billionth_is_told_apart()
    {
        Converter half = OperatedConverters.Half(farads: 1e-9, ohms: 2).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(half, half.Modes[0]);
        double frequencyHz = 5e7, expected = PreciseNodes.Ohms(half, half.Modes[0], analysis.Ratio.ToFraction(), frequencyHz);
        Assert.Equal(1 / (4 * frequencyHz * 1e-9) / Math.Tanh(1 / (4 * frequencyHz * 1e-9 * 4)), expected, 1e-14 * expected);
        Converter other = half.WithValues([1e-9], [2, 2, 2, 2 * (1 + 1e-8)], [0]);
        double wrong = PreciseNodes.Ohms(other, other.Modes[0], analysis.Ratio.ToFraction(), frequencyHz);
        Assert.NotInRange(wrong, expected * (1 - Tolerance), expected * (1 + Tolerance));
    }
}
