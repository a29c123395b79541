using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two with one capacitor C, by hand. In phase 1 it lies between input and output, in phase
/// 2 between output and reference, with loop resistances R1, R2. Its voltage tends to Vin - Vout, then
/// to Vout, with e_j = exp(-D_j / (f R_j C)) left of the distance at each phase's end; in the periodic
/// state the voltage swings by Δ = (Vin - 2 Vout)(1 - e1)(1 - e2) / (1 - e1 e2). Both phases bring C Δ
/// to the output, so the mean current is 2 f C Δ and
///     R_out = (Vin/2 - Vout) / (2 f C Δ) = (1 - e1 e2) / (4 f C (1 - e1)(1 - e2))
///           = [coth(D1 / (2 f R1 C)) + coth(D2 / (2 f R2 C))] / (8 f C),
/// with equal phases and resistances coth(1 / (4 f R C)) / (4 f C).
/// </summary>
public sealed class OneCapacitorTests
{
    private const double Tolerance = 1e-10;

    public static TheoryData<double, double> Values => new()
    {
        { 1, 1 }, { 1e-9, 2.5 }, { 4.7e-12, 1e6 }, { 1e-3, 1e-6 },
    };

    [Theory]
    [MemberData(nameof(Values))]
    public void Two_equal_phases_follow_one_hyperbolic_cotangent(double farads, double loopOhms)
    {
        OutputImpedance impedance = Of(farads, 0.25 * loopOhms, 0.75 * loopOhms, 0.5 * loopOhms, 0.5 * loopOhms, new Fraction(1, 2));
        double cornerHz = 1 / (4 * loopOhms * farads);
        Assert.Equal(cornerHz, impedance.CornerFrequencyHz, 1e-12 * cornerHz);
        foreach (double f in Frequencies(cornerHz))
        {
            double expected = 1 / (4 * f * farads) / Math.Tanh(1 / (4 * f * loopOhms * farads));
            Assert.Equal(expected, impedance.Ohms(f), Tolerance * expected);
            Assert.Equal(expected, impedance.At(f).SinglePairOhms, Tolerance * expected);
        }
    }

    [Theory]
    [MemberData(nameof(Values))]
    public void Unequal_duties_and_resistances_give_a_term_per_phase(double farads, double loopOhms)
    {
        Fraction[] duties = [new(1, 2), new(1, 3), new(1, 100), new(999, 1000)];
        foreach (Fraction duty in duties)
        {
            double first = loopOhms, second = 3 * loopOhms, d = duty.ToDouble();
            OutputImpedance impedance = Of(farads, 0.4 * first, 0.6 * first, 0.1 * second, 0.9 * second, duty);
            foreach (double f in Frequencies(impedance.CornerFrequencyHz))
            {
                double expected = ((1 / Math.Tanh(d / (2 * f * first * farads))) + (1 / Math.Tanh((1 - d) / (2 * f * second * farads)))) / (8 * f * farads);
                Assert.Equal(expected, impedance.Ohms(f), Tolerance * expected);
            }
        }
    }

    [Fact]
    public void Dead_time_is_a_phase_without_closed_switches()
    {
        // the shortened duties in the formula above: nothing moves in the idle phases
        Converter converter = Converter.Create("half").Input("vin").Output("vout")
            .Duties(new Fraction(2, 5), new Fraction(1, 20), new Fraction(1, 2), new Fraction(1, 20))
            .Capacitor("fly", "p", "n", 2e-9)
            .Switch("s1", "vin", "p", on: 1, ohms: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 3, ohms: 3).Switch("s4", "n", Converter.ReferenceNode, on: 3, ohms: 4).Build();
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        foreach (double f in Frequencies(impedance.CornerFrequencyHz))
        {
            double expected = ((1 / Math.Tanh(0.4 / (2 * f * 3 * 2e-9))) + (1 / Math.Tanh(0.5 / (2 * f * 7 * 2e-9)))) / (8 * f * 2e-9);
            Assert.Equal(expected, impedance.Ohms(f), Tolerance * expected);
        }
    }

    private static OutputImpedance Of(double farads, double r1, double r2, double r3, double r4, Fraction duty)
    {
        Converter converter = Converter.Create("half").Input("vin").Output("vout").Duties(duty, Fraction.One - duty)
            .Capacitor("fly", "p", "n", farads)
            .Switch("s1", "vin", "p", on: 1, ohms: r1).Switch("s2", "n", "vout", on: 1, ohms: r2)
            .Switch("s3", "p", "vout", on: 2, ohms: r3).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms: r4).Build();
        return OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
    }

    // a thousandth to a thousand times the corner, seven points a decade
    private static IEnumerable<double> Frequencies(double cornerHz) =>
        Enumerable.Range(-21, 43).Select(k => cornerHz * Math.Pow(10, k / 7.0));
}
