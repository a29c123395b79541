using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;
using Xunit.Abstractions;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// The exact impedance of random networks against the node equations in 640 binary places.
/// </summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class PreciseImpedanceLaws(ITestOutputHelper output)
{
    private const double Tolerance = 1e-10;
    private const int Count = 400;

    [Fact]
    public void Impedances_agree_with_the_node_equations_in_640_places()
    {
        int compared = 0;
        SpreadConverters.Gen.Holds(
            sample =>
            {
                if (ModeAnalysis.Try(sample.Converter, sample.Converter.Modes[0]).Analysis is not { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    return;
                }

                OutputImpedance impedance = OutputImpedance.Of(analysis);
                double frequencyHz = sample.FrequencyOverCorner * (impedance.CornerFrequencyHz > 0 ? impedance.CornerFrequencyHz : 1);
                double expected = PrecisePeriod.Ports(sample.Converter, analysis.Mode, frequencyHz).Ohms, actual = impedance.Ohms(frequencyHz);
                compared++;
                WorstErrors.OfRun.Require("impedance", expected, actual, expected, Tolerance, $"at {frequencyHz:R} Hz");
            },
            Count,
            sample => sample.ToString());
        output.WriteLine($"{compared} networks had a result");
        Assert.True(LawCheck.IsOneCase || compared >= Count / 5, $"only {compared}");
    }

    /// <summary>Rates 16 orders apart in one mode, where amounts of slow directions drowned in the rounding of fast ones.</summary>
    [Fact]
    public void Slow_directions_are_not_lost_beside_fast_ones()
    {
        Converter converter = Converter.Create("graded").Input("vin").Output("vout", LoadKind.Current)
            .Duties(new Fraction(3, 26), new Fraction(5, 26), new Fraction(5, 26), new Fraction(9, 26), new Fraction(2, 13))
            .Capacitor("out", "vout", "gnd", 1.5859837968209645E-05, 0.01130888142992963)
            .Capacitor("c0", "p0", "vout", 0.0026163447515972767, 0.1794778134700712)
            .Capacitor("c1", "p1", "gnd", 8.668261025103808E-05).Capacitor("c2", "vin", "gnd", 4624.201427896655)
            .Capacitor("c3", "vout", "vin", 349839.27570874523, 0.00013045600652118142)
            .Switch("s0", "vin", "vout", on: [1, 2, 3, 5], ohms: 17184.06389745081)
            .Build();
        double frequencyHz = 1.2774019215232774E-13, actual = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0])).Ohms(frequencyHz);
        double expected = PrecisePeriod.Ports(converter, converter.Modes[0], frequencyHz).Ohms;
        Assert.Equal(1363772.4674553091, expected, 1e-9);
        Assert.Equal(expected, actual, 1e-12 * expected);
    }

    [Fact]
    public void A_resistance_that_is_off_by_a_billionth_is_told_apart()
    {
        Converter half = OperatedConverters.Half(farads: 1e-9, ohms: 2).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(half, half.Modes[0]);
        double frequencyHz = 5e7, expected = PrecisePeriod.Ports(half, half.Modes[0], frequencyHz).Ohms;
        Assert.Equal(1 / (4 * frequencyHz * 1e-9) / Math.Tanh(1 / (4 * frequencyHz * 1e-9 * 4)), expected, 1e-14 * expected);
        Converter other = half.WithValues([1e-9], [2, 2, 2, 2 * (1 + 1e-8)], [0]);
        double wrong = PrecisePeriod.Ports(other, other.Modes[0], frequencyHz).Ohms;
        Assert.NotInRange(wrong, expected * (1 - Tolerance), expected * (1 + Tolerance));
    }
}
