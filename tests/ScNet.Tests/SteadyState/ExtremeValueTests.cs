using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The ends of the range of values that the library takes, and what lies between.</summary>
public sealed class ExtremeValueTests
{
    private static readonly double[] s_values = [1e-60, 1e-30, 1, 1e30, 1e60];

    public static TheoryData<double, double> Components
    {
        get
        {
            TheoryData<double, double> components = [];
            foreach (double farads in s_values)
            {
                foreach (double ohms in s_values)
                {
                    components.Add(farads, ohms);
                }
            }

            return components;
        }
    }

    [Theory]
    [MemberData(nameof(Components))]
    public void No_combination_of_extreme_values_gives_something_that_is_not_a_number(double farads, double ohms)
    {
        Converter half = OperatedConverters.Half(LoadKind.Current, farads, ohms).Capacitor("out", "vout", "gnd", 1, 1).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(half, half.Modes[0]);
        foreach (OperatingPoint point in
            from volts in s_values from amperes in s_values from hertz in s_values select new OperatingPoint(volts, amperes, hertz))
        {
            Assert.DoesNotContain(double.NaN, Figures(PeriodicSteadyState.Of(analysis, point)));
        }
    }

    private static double[] Figures(PeriodicSteadyState steady) =>
    [
        steady.AverageOutputVoltageVolts, steady.DissipationWatts, steady.OutputRippleVolts!.Value, steady.OutputImpedanceOhms,
        .. steady.Switches.SelectMany(s => new[] { s.RmsCurrentAmperes, s.PeakCurrentAmperes, s.BlockingVolts.Minimum!.Value, s.BlockingVolts.Maximum!.Value }),
        .. steady.Capacitors.SelectMany(c => new[] { c.RmsCurrentAmperes, c.PeakCurrentAmperes, c.RippleVolts, c.AverageVoltageVolts!.Value }),
        .. steady.SampleSwitchCurrent("s1", [0, 0.1 / steady.Point.FrequencyHz]),
    ];
}
