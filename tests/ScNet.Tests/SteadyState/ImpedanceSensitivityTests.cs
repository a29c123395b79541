using CsCheck;
using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Every analytic derivative against differences of the impedance itself, which know nothing of it.</summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class ImpedanceSensitivityTests
{
    // the error of the differences below: truncation of the fourth order and rounding
    private const double Tolerance = 2e-8;

    private const double Step = 2e-3;

    public static TheoryData<string> Names => [.. OperatedConverters.All.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Derivatives_by_values_and_frequency_are_those_of_differences(string name)
    {
        Converter converter = OperatedConverters.All[name]();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        foreach (double factor in new[] { 0.1, 1.0, 7.0 })
        {
            CheckAll(analysis, factor * OutputImpedance.Of(analysis).CornerFrequencyHz);
        }
    }

    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Derivatives_of_random_networks_are_those_of_differences(LoadKind load) => Gen
        .Select(ConsistentNetworks.Gen(load, largestCapacitorCount: 4), Gen.Double[-1, 1])
        .Holds(
            sample =>
            {
                Converter converter = sample.Item1.Converter;
                if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { } analysis && OutputImpedance.Of(analysis).CornerFrequencyHz is > 1e-9 and < 1e9)
                {
                    CheckAll(analysis, Math.Pow(10, sample.Item2) * OutputImpedance.Of(analysis).CornerFrequencyHz);
                }
            },
            count: 150);

    [Fact]
    public void A_divider_has_the_derivatives_of_its_closed_form()
    {
        // R = coth(x)/(4fC) with x = 1/(4fRC) and R the loop resistance of two switches (derived by hand).
        const double Farads = 2e-9, Ohms = 3, Hertz = 2e7;
        Converter half = OperatedConverters.Half(farads: Farads, ohms: Ohms).Build();
        ImpedanceSensitivity sensitivity = ImpedanceSensitivity.Of(ModeAnalysis.Of(half, half.Modes[0]), Hertz);
        double x = 1 / (4 * Hertz * 2 * Ohms * Farads), sinh = Math.Sinh(x), slow = 1 / (4 * Hertz * Farads);
        double byLoop = slow * x / (2 * Ohms * sinh * sinh);
        Near(slow / Math.Tanh(x), sensitivity.Ohms);
        Near(byLoop / 2, sensitivity.ByOnResistance[0]);
        Near(((-slow / Math.Tanh(x)) + (slow * x / (sinh * sinh))) / Farads, sensitivity.ByCapacitanceOhmsPerFarad[0]);
        Near(((-slow / Math.Tanh(x)) + (slow * x / (sinh * sinh))) / Hertz, sensitivity.ByFrequencyOhmsPerHertz);
        Near(byLoop, sensitivity.ByEsr[0]);

        static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-12 * Math.Abs(expected));
    }

    [Theory]
    [InlineData("series-parallel 3:1")]
    [InlineData("three phases")]
    [InlineData("parallel flying capacitors, unequal duties")]
    [InlineData("current load on an output capacitor")]
    [InlineData("current load, output capacitor with series resistance")]
    public void Exchanging_time_between_phases_changes_the_impedance_by_the_difference_of_their_derivatives(string name)
    {
        Converter converter = OperatedConverters.All[name]();
        ModeAnalysis analysis = ModeAnalysis.Of(converter, converter.Modes[0]);
        double frequency = OutputImpedance.Of(analysis).CornerFrequencyHz;
        PerPhase<double> byDuty = ImpedanceSensitivity.Of(analysis, frequency).ByDutyOhms;
        double slope = Differences(step =>
        {
            Fraction exact = Fraction.FromDouble(step);
            Converter moved = WithDuties(converter, [.. converter.Phases.Select((p, j) => j switch { 0 => p.Duty + exact, 1 => p.Duty - exact, _ => p.Duty })]);
            return OutputImpedance.Of(ModeAnalysis.Of(moved, moved.Modes[0])).Ohms(frequency);
        });
        Assert.Equal(slope, byDuty[1] - byDuty[2], Tolerance * OutputImpedance.Of(analysis).Ohms(frequency));
    }

    [Fact]
    public void A_comparison_with_wrong_derivatives_fails()
    {
        Assert.ThrowsAny<Exception>(() => Compare("test", 1.0, 1.001, scale: 1));
    }

    private static void CheckAll(ModeAnalysis analysis, double frequency)
    {
        Converter converter = analysis.Converter;
        ImpedanceSensitivity sensitivity = ImpedanceSensitivity.Of(analysis, frequency);
        double[] farads = [.. converter.Capacitors.Select(c => c.Farads)];
        double[] esr = [.. converter.Capacitors.Select(c => c.EsrOhms)];
        double[] ohms = [.. converter.Switches.Select(s => s.Ohms)];
        double Impedance(double[]? c = null, double[]? r = null, double[]? e = null, double f = 1) =>
            OutputImpedance.Of(analysis.WithValuesOf(converter.WithValues(c, r, e))).Ohms(f * frequency);

        double nominal = Impedance();
        Assert.Equal(nominal, sensitivity.Ohms, 1e-12 * nominal);
        for (int i = 0; i < farads.Length; i++)
        {
            Compare(
                converter.Capacitors[i].Name,
                Differences(h => Impedance(c: Scaled(farads, i, 1 + h))),
                sensitivity.ByCapacitanceOhmsPerFarad[i] * farads[i],
                nominal);
            if (esr[i] > 0)
            {
                Compare(
                    $"ESR of {converter.Capacitors[i].Name}",
                    Differences(h => Impedance(e: Scaled(esr, i, 1 + h))),
                    sensitivity.ByEsr[i] * esr[i],
                    nominal);
            }
        }

        for (int s = 0; s < ohms.Length; s++)
        {
            Compare(converter.Switches[s].Name, Differences(h => Impedance(r: Scaled(ohms, s, 1 + h))), sensitivity.ByOnResistance[s] * ohms[s], nominal);
        }

        Compare("frequency", Differences(h => Impedance(f: 1 + h)), sensitivity.ByFrequencyOhmsPerHertz * frequency, nominal);
    }

    private static void Compare(string what, double expected, double actual, double scale) =>
        WorstErrors.OfRun.Require("slopes of the impedance, by differences", expected, actual, scale, Tolerance, what);

    // (8 (f(h) - f(-h)) - (f(2h) - f(-2h))) / 12h
    private static double Differences(Func<double, double> function) =>
        ((8 * (function(Step) - function(-Step))) - (function(2 * Step) - function(-2 * Step))) / (12 * Step);

    private static double[] Scaled(double[] values, int index, double factor)
    {
        double[] scaled = [.. values];
        scaled[index] *= factor;
        return scaled;
    }

    private static Converter WithDuties(Converter converter, Fraction[] duties)
    {
        ConverterBuilder builder = Converter.Create(converter.Name).Input(converter.InputNode).Output(converter.OutputNode, converter.Load).Duties(duties);
        foreach (Capacitor capacitor in converter.Capacitors)
        {
            builder.Capacitor(capacitor.Name, capacitor.PositiveNode, capacitor.BottomNode, capacitor.Farads, capacitor.EsrOhms);
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, converter.Modes[0].ClosedPhases[s], own.Ohms);
        }

        return builder.Build();
    }
}
