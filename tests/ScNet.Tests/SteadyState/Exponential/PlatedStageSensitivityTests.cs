using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Derivatives of a stage with inductors, plates and stray capacitances, each against central differences by its own value.</summary>
public sealed class PlatedStageSensitivityTests
{
    private const double FrequencyHz = 2e5;
    private const double Step = 1e-4;

    // capacitances, plates, strays, series resistance, inductances, windings, on-resistances
    private static readonly double[] s_values = [1e-6, 2e-6, 1e-5, 2e-8, 1e-8, 3e-8, 4e-8, 1e-8, 2e-8, 0.03, 0.02, 1e-6, 2e-6, 0.02, 0.03, 0.01, 0.02, 0.03, 0.04];

    [Fact]
    public void Every_value_has_the_slopes_of_its_own_differences()
    {
        TwoPortSensitivity slopes = Model(s_values).TwoPortSensitivityAt(FrequencyHz);
        TwoPortSlope[] found =
        [
            .. slopes.ByCapacitance,
            slopes.ByBottomPlate["fly"]!.Value, slopes.ByTopPlate["fly"]!.Value, slopes.ByTopPlate["mid"]!.Value, slopes.ByBottomPlate["out"]!.Value,
            .. slopes.ByParasitic,
            slopes.ByEsr["fly"]!.Value, slopes.ByEsr["out"]!.Value,
            .. slopes.ByInductance, .. slopes.ByWindingResistance, .. slopes.ByOnResistance,
        ];
        Assert.Equal(s_values.Length, found.Length);
        for (int k = 0; k < found.Length; k++)
        {
            double[] high = Figures(k, Step), low = Figures(k, -Step), own = [found[k].Ratio, found[k].Ohms, found[k].CurrentRatio, found[k].InputSiemens];
            for (int f = 0; f < own.Length; f++)
            {
                Assert.Equal((high[f] - low[f]) / (2 * Step), s_values[k] * own[f], 1e-7);
            }
        }
    }

    [Fact]
    public void Plates_and_series_resistances_that_are_zero_have_no_slopes()
    {
        TwoPortSensitivity slopes = Model(s_values).TwoPortSensitivityAt(FrequencyHz);
        Assert.Null(slopes.ByEsr["mid"]);
        Assert.Null(slopes.ByBottomPlate["mid"]);
        Assert.Null(slopes.ByTopPlate["out"]);
    }

    private static double[] Figures(int value, double step)
    {
        TwoPortPoint point = Model([.. s_values.Select((v, k) => k == value ? v * (1 + step) : v)]).TwoPort.At(FrequencyHz);
        return [point.Ratio, point.Ohms, point.CurrentRatio, point.InputSiemens];
    }

    private static SteadyStateModel Model(double[] v)
    {
        Converter converter = Converter.Create("two coils").Input("vin").Output("vout").Duties(0.3, 0.7)
            .Capacitor("fly", "p", "n", v[0], v[9], new CapacitorPlates(BottomFarads: v[3], TopFarads: v[4]))
            .Capacitor("mid", "m", "gnd", v[1], 0, new CapacitorPlates(TopFarads: v[5], BodyNode: "p"))
            .Capacitor("out", "m", "vout", v[2], v[10], new CapacitorPlates(BottomFarads: v[6], BodyNode: "n"))
            .Parasitic("stray", "x", "gnd", v[7]).Parasitic("other", "n", "m", v[8])
            .Inductor("first", "x", "m", v[11], v[13]).Inductor("second", "m", "vout", v[12], v[14])
            .Switch("s1", "vin", "p", on: 1, v[15]).Switch("s2", "n", "x", on: 1, v[16]).Switch("s3", "p", "x", on: 2, v[17]).Switch("s4", "n", "gnd", on: 2, v[18]).Build();
        return SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
    }
}
