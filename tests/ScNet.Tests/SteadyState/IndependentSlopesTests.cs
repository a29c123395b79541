using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Two dividers by two side by side into a stiff load, and two capacitors that are charged from the input and feed nothing. Each divider has
/// R = coth x/(4fC) with x = 1/(4fRC), both have conductances that add up, and a derivative of one counts by the square of its share.
/// </summary>
public sealed class IndependentSlopesTests
{
    private const double FrequencyHz = 2e7;
    private const double Tolerance = 1e-11;

    private static readonly Converter s_converter = Converter.Create("two and one that rests").Input("vin").Output("vout")
        .Capacitor("rest", "a", "gnd", 1e-9, esrOhms: 0.5).Capacitor("beside", "a", "gnd", 2e-9, esrOhms: 0.2).Switch("t", "vin", "a", on: 1)
        .Capacitor("fly1", "p1", "n1", 2e-9)
        .Switch("s1", "vin", "p1", on: 1, ohms: 3).Switch("s2", "n1", "vout", on: 1, ohms: 3)
        .Switch("s3", "p1", "vout", on: 2, ohms: 3).Switch("s4", "n1", "gnd", on: 2, ohms: 3)
        .Capacitor("fly2", "p2", "n2", 5e-9)
        .Switch("u1", "vin", "p2", on: 1, ohms: 2).Switch("u2", "n2", "vout", on: 1, ohms: 2)
        .Switch("u3", "p2", "vout", on: 2, ohms: 2).Switch("u4", "n2", "gnd", on: 2, ohms: 2).Build();

    private readonly Half _first = new(2e-9, 6);
    private readonly Half _second = new(5e-9, 4);
    private readonly TwoPortSensitivity _slopes = SteadyStateModel.Of(ModeAnalysis.Of(s_converter, s_converter.Modes[0])).TwoPortSensitivityAt(FrequencyHz);

    private double Ohms => 1 / ((1 / _first.Ohms) + (1 / _second.Ohms));

    private double FirstWeight => Math.Pow(Ohms / _first.Ohms, 2);

    private double SecondWeight => Math.Pow(Ohms / _second.Ohms, 2);

    [Fact]
    public void Every_part_counts_by_the_square_of_its_share()
    {
        Near(FirstWeight * _first.ByFarads, _slopes.ByCapacitance["fly1"]);
        Near(SecondWeight * _second.ByFarads, _slopes.ByCapacitance["fly2"]);
        Near(FirstWeight * _first.ByLoopOhms, _slopes.ByEsr["fly1"]!.Value);
        Near(SecondWeight * _second.ByLoopOhms, _slopes.ByEsr["fly2"]!.Value);
        Near(FirstWeight * _first.ByLoopOhms / 2, _slopes.ByOnResistance["s4"]);
        Near(SecondWeight * _second.ByLoopOhms / 2, _slopes.ByOnResistance["u1"]);
        Near((FirstWeight * _first.ByHertz) + (SecondWeight * _second.ByHertz), _slopes.ByFrequency);
        Near((FirstWeight * _first.ByDuty) + (SecondWeight * _second.ByDuty), _slopes.ByDuty[1]);
    }

    [Fact]
    public void A_part_that_delivers_nothing_changes_nothing()
    {
        Assert.Equal(default, _slopes.ByCapacitance["rest"]);
        Assert.Equal(default, _slopes.ByCapacitance["beside"]);
        Assert.Equal(default(TwoPortSlope), _slopes.ByEsr["rest"]);
        Assert.Equal(default(TwoPortSlope), _slopes.ByEsr["beside"]);
        Assert.Equal(default, _slopes.ByOnResistance["t"]);
    }

    private static void Near(double expected, TwoPortSlope actual)
    {
        Assert.Equal(expected, actual.Ohms, Tolerance * Math.Abs(expected));
        Assert.Equal((0, 0, 0), (actual.Ratio, actual.CurrentRatio, actual.InputSiemens));
    }

    // one divider alone: a phase of duty D makes coth(DT/(2RC))/(8fC) of its impedance
    private sealed class Half(double farads, double loopOhms)
    {
        public double Ohms => 1 / (4 * FrequencyHz * farads * Math.Tanh(X));

        public double ByLoopOhms => Math.Pow(X / Math.Sinh(X), 2);

        public double ByFarads => -(Ohms - (loopOhms * ByLoopOhms)) / farads;

        public double ByHertz => -(Ohms - (loopOhms * ByLoopOhms)) / FrequencyHz;

        public double ByDuty => -loopOhms * ByLoopOhms;

        private double X => 1 / (4 * FrequencyHz * loopOhms * farads);
    }
}
