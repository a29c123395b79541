using Fractions;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Derivatives of the four figures of a network of three phases with plates, whose voltage and current ratio differ, against
/// central differences of the figures; the steps of 1e-4 and twice that leave an error of the fourth power, 1e-11.
/// </summary>
public sealed class PlatedDifferencesTests
{
    private const double FrequencyHz = 0.3;
    private const double Step = 1e-4;

    private static readonly Converter s_converter = PlatedThreePhases.Of(LoadKind.Stiff);

    [Fact]
    public void Every_value_has_the_slopes_of_its_differences()
    {
        TwoPortSensitivity slopes = Model(s_converter).TwoPortSensitivityAt(FrequencyHz);
        (double Value, TwoPortSlope? Slope)[] values =
        [
            .. s_converter.Capacitors.SelectMany((c, i) => new (double, TwoPortSlope?)[]
            {
                (c.Farads, slopes.ByCapacitance[i]), (c.EsrOhms, slopes.ByEsr[i]), (c.Plates.BottomFarads, slopes.ByBottomPlate[i]), (c.Plates.TopFarads, slopes.ByTopPlate[i]),
            }),
            .. s_converter.Parasitics.Select((p, k) => (p.Farads, (TwoPortSlope?)slopes.ByParasitic[k])),
            .. s_converter.Switches.Select((s, k) => (s.Ohms, (TwoPortSlope?)slopes.ByOnResistance[k])),
        ];
        Assert.Equal(
            [true, true, true, true, true, true, false, true, true, true, true, false, true, true],
            values[..14].Select(v => v.Slope is not null));
        for (int k = 0; k < values.Length; k++)
        {
            if (values[k].Value > 0)
            {
                AssertSlope(values[k].Slope!.Value, values[k].Value, h => Figures(PlatedNetworks.Changed(s_converter, k, 1 + h), FrequencyHz));
            }
        }

        AssertSlope(slopes.ByFrequency, FrequencyHz, h => Figures(s_converter, FrequencyHz * (1 + h)));
    }

    // the second phase gives way to the first; a load's charge per phase moves with its duty
    [Theory]
    [InlineData(LoadKind.Stiff)]
    [InlineData(LoadKind.Current)]
    public void Time_exchanged_between_phases_has_the_difference_of_their_slopes(LoadKind load)
    {
        Converter converter = PlatedThreePhases.Of(load);
        PerPhase<TwoPortSlope> byDuty = Model(converter).TwoPortSensitivityAt(FrequencyHz).ByDuty;
        (TwoPortSlope first, TwoPortSlope second) = (byDuty[1], byDuty[2]);
        AssertSlope(
            new(first.Ratio - second.Ratio, first.Ohms - second.Ohms, first.CurrentRatio - second.CurrentRatio, first.InputSiemens - second.InputSiemens),
            1,
            h => Figures(PlatedNetworks.WithDuties(converter, PlatedThreePhases.Duties[0] + (Fraction)(decimal)h, PlatedThreePhases.Duties[1] - (Fraction)(decimal)h, PlatedThreePhases.Duties[2]), FrequencyHz));
    }

    [Fact]
    public void The_ratios_of_the_network_differ()
    {
        double[] figures = Figures(s_converter, FrequencyHz);
        Assert.True(Math.Abs(figures[0] - figures[2]) > 1e-4, $"{figures[0]} and {figures[2]}");
    }

    private static void AssertSlope(TwoPortSlope slope, double value, Func<double, double[]> figures)
    {
        double[] analytic = [slope.Ratio, slope.Ohms, slope.CurrentRatio, slope.InputSiemens];
        (double[] above, double[] below, double[] farAbove, double[] farBelow) = (figures(Step), figures(-Step), figures(2 * Step), figures(-2 * Step));
        for (int f = 0; f < analytic.Length; f++)
        {
            double near = (above[f] - below[f]) / (2 * Step), far = (farAbove[f] - farBelow[f]) / (4 * Step);
            Assert.Equal(near + ((near - far) / 3), value * analytic[f], 1e-8);
        }
    }

    private static double[] Figures(Converter converter, double hertz)
    {
        TwoPortPoint point = Model(converter).TwoPort.At(hertz);
        return [point.Ratio, point.Ohms, point.CurrentRatio, point.InputSiemens];
    }

    private static SteadyStateModel Model(Converter converter) => SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
}
