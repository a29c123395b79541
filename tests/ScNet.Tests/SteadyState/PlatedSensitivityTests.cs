using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two that settles, with plates B at the bottom and A at the positive node and a stray capacitance like either,
/// by hand. From V and W at its ends the capacitor is charged by C(V - W) and left at CW, so that n delivers C(V - 2W) - BW in
/// phase 1 and p delivers C(V - 2W) + A(V - W) in phase 2, and p takes C(V - 2W) + A(V - W) from the input. With N = 4C + A + B
/// and P = 2C + A the ratios are P/N, the impedance 1/(fN) and the input conductance f(C + A - P²/N).
/// </summary>
public sealed class PlatedSensitivityTests
{
    private const double Farads = 1e-9;
    private const double Bottom = 0.05e-9;
    private const double Top = 0.12e-9;
    private const double StrayTop = 0.02e-9;
    private const double StrayBottom = 0.03e-9;
    private const double FrequencyHz = 1e4;
    private const double N = (4 * Farads) + Top + StrayTop + Bottom + StrayBottom;
    private const double P = (2 * Farads) + Top + StrayTop;

    private readonly TwoPortSensitivity _slopes = Model().TwoPortSensitivityAt(FrequencyHz);

    [Fact]
    public void The_figures_are_those_of_the_hand_derivation()
    {
        TwoPortPoint point = Model().TwoPort.At(FrequencyHz);
        AssertNear(
            new(P / N, 1 / (FrequencyHz * N), P / N, FrequencyHz * (Farads + Top + StrayTop - (P * P / N))),
            new(point.Ratio, point.Ohms, point.CurrentRatio, point.InputSiemens));
    }

    [Fact]
    public void Derivatives_by_capacitances_are_those_of_the_hand_derivation()
    {
        double square = N * N, ohms = -1 / (FrequencyHz * square);
        TwoPortSlope byCapacitance = new(((2 * N) - (4 * P)) / square, 4 * ohms, ((2 * N) - (4 * P)) / square, FrequencyHz * (1 - (4 * P * (N - P) / square)));
        TwoPortSlope byBottom = new(-P / square, ohms, -P / square, FrequencyHz * P * P / square);
        TwoPortSlope byTop = new((N - P) / square, ohms, (N - P) / square, FrequencyHz * (1 - (P * ((2 * N) - P) / square)));
        AssertNear(byCapacitance, _slopes.ByCapacitance["fly"]);
        AssertNear(byBottom, _slopes.ByBottomPlate["fly"]!.Value);
        AssertNear(byBottom, _slopes.ByParasitic["low"]);
        AssertNear(byTop, _slopes.ByTopPlate["fly"]!.Value);
        AssertNear(byTop, _slopes.ByParasitic["high"]);
        Assert.Null(_slopes.ByBottomPlate["out"]);
        Assert.Null(_slopes.ByTopPlate["out"]);
        Assert.Empty(_slopes.ByInductance);
        Assert.Empty(_slopes.ByWindingResistance);
    }

    [Fact]
    public void With_frequency_the_impedance_falls_and_the_conductance_rises_in_proportion()
    {
        TwoPortSlope slope = _slopes.ByFrequency;
        Assert.Equal(-1 / (FrequencyHz * FrequencyHz * N), slope.Ohms, 1e-11 / (FrequencyHz * FrequencyHz * N));
        double siemens = Farads + Top + StrayTop - (P * P / N);
        Assert.Equal(siemens, slope.InputSiemens, 1e-9 * siemens);
        Assert.Equal((0, 0), (Math.Round(slope.Ratio * FrequencyHz, 9), Math.Round(slope.CurrentRatio * FrequencyHz, 9)));
        Assert.Equal(FrequencyHz, _slopes.FrequencyHz, 1e-9 * FrequencyHz);
    }

    // the capacitor across the load sees no ripple of a stiff output
    [Fact]
    public void What_lies_across_a_stiff_output_and_resistances_of_what_settles_change_nothing()
    {
        AssertNear(default, _slopes.ByCapacitance["out"]);
        Assert.All(_slopes.ByOnResistance, slope => AssertNear(default, slope));
        Assert.All(_slopes.ByEsr, slope => AssertNear(default, slope!.Value));
    }

    private static void AssertNear(TwoPortSlope expected, TwoPortSlope actual)
    {
        Assert.Equal(expected.Ratio, actual.Ratio, (1e-10 * Math.Abs(expected.Ratio)) + 1e-7);
        Assert.Equal(expected.Ohms, actual.Ohms, (1e-10 * Math.Abs(expected.Ohms)) + 1e-3);
        Assert.Equal(expected.CurrentRatio, actual.CurrentRatio, (1e-10 * Math.Abs(expected.CurrentRatio)) + 1e-7);
        Assert.Equal(expected.InputSiemens, actual.InputSiemens, (1e-10 * Math.Abs(expected.InputSiemens)) + 1e-12);
    }

    private static SteadyStateModel Model()
    {
        Converter converter = Converter.Create("half").Input("vin").Output("vout")
            .Capacitor("out", "vout", "gnd", 1e-8).Capacitor("fly", "p", "n", Farads, plates: new CapacitorPlates(Bottom, Top))
            .Parasitic("high", "p", "gnd", StrayTop).Parasitic("low", "gnd", "n", StrayBottom)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        return SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
    }
}
