using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Derivatives of the two-port against the analytic ones of the modal method, differences, and closed forms.</summary>
public sealed class TwoPortSensitivityTests
{
    public static TheoryData<string> Names => [.. OperatedConverters.All.Keys];

    /// <summary>Two independent derivations of the same derivatives.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_impedance_of_resistors_and_capacitors_has_the_derivatives_of_the_modal_method(string name)
    {
        Converter converter = OperatedConverters.All[name]();
        SteadyStateModel model = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        double frequency = 0.7 * model.Impedance.CornerFrequencyHz;
        ImpedanceSensitivity expected = model.SensitivityAt(frequency);
        TwoPortSensitivity actual = ExponentialTwoPort.Of(converter, converter.Modes[0]).SensitivityAt(frequency);
        double ohms = expected.Ohms;
        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Assert.Equal(expected.ByCapacitanceOhmsPerFarad[i], actual.ByCapacitance[i].Ohms, 1e-9 * ohms / converter.Capacitors[i].Farads);
            Assert.Equal(converter.Capacitors[i].EsrOhms > 0, actual.ByEsr[i] is not null);
            Assert.Equal(expected.ByEsr[i], actual.ByEsr[i]?.Ohms ?? expected.ByEsr[i], 1e-9);
            Assert.Equal(0, actual.ByCapacitance[i].Ratio, 1e-12);
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Assert.Equal(expected.ByOnResistance[s], actual.ByOnResistance[s].Ohms, 1e-9);
        }

        Assert.Equal(expected.ByFrequencyOhmsPerHertz, actual.ByFrequency.Ohms, 1e-9 * ohms / frequency);
        for (int j = 1; j <= converter.Phases.Count; j++)
        {
            Assert.Equal(expected.ByDutyOhms[j], actual.ByDuty[j].Ohms, 1e-8 * ohms);
        }
    }

    /// <summary>At a high frequency M = 1/D' and R = (R_winding + R_on)/D'²: R. W. Erickson and D. Maksimović, chapter 3 (from memory).</summary>
    [Fact]
    public void The_step_up_stage_has_the_derivatives_of_its_closed_form()
    {
        const double Rest = 0.6;
        Converter converter = Converter.Create("step-up").Input("vin").Output("vout").Duties(1 - Rest, Rest)
            .Inductor("coil", "vin", "x", 1e-3, 0.02).Switch("low", "x", Converter.ReferenceNode, on: 1, 0.01).Switch("high", "x", "vout", on: 2, 0.01).Build();
        TwoPortSensitivity slopes = SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0])).TwoPortSensitivityAt(1e7);
        Assert.Equal(1 / (Rest * Rest), slopes.ByDuty[1].Ratio - slopes.ByDuty[2].Ratio, 1e-5);
        Assert.Equal(2 * 0.03 / (Rest * Rest * Rest), slopes.ByDuty[1].Ohms - slopes.ByDuty[2].Ohms, 1e-5);
        Assert.Equal(1 / (Rest * Rest), slopes.ByWindingResistance["coil"].Ohms, 1e-6);
        Assert.Equal(0.4 / (Rest * Rest), slopes.ByOnResistance["low"].Ohms, 1e-6);
    }

    /// <summary>With a current load too, whose charge in a phase moves with the duty: against differences of duties that sum to one.</summary>
    [Fact]
    public void Duties_frequency_and_values_agree_with_differences()
    {
        const double Frequency = 2e5, Step = 1e-5;
        TwoPortSensitivity slopes = Model(0.3, 1e-6, 1e-9).TwoPortSensitivityAt(Frequency);
        TwoPortSlope first = slopes.ByDuty[1], second = slopes.ByDuty[2];
        Compare(d => Model(0.3 + d, 1e-6, 1e-9).TwoPort.At(Frequency), Step, new(
            first.Ratio - second.Ratio, first.Ohms - second.Ohms, first.CurrentRatio - second.CurrentRatio, first.InputSiemens - second.InputSiemens));
        Compare(d => Model(0.3, 1e-6 * (1 + d), 1e-9).TwoPort.At(Frequency), Step, Times(slopes.ByInductance["coil"], 1e-6));
        Compare(d => Model(0.3, 1e-6, 1e-9 * (1 + d)).TwoPort.At(Frequency), Step, Times(slopes.ByBottomPlate["fly"]!.Value, 1e-9));
        Compare(d => Model(0.3, 1e-6, 1e-9).TwoPort.At(Frequency * (1 + d)), Step, Times(slopes.ByFrequency, Frequency));
    }

    private static TwoPortSlope Times(TwoPortSlope slope, double unit) =>
        new(slope.Ratio * unit, slope.Ohms * unit, slope.CurrentRatio * unit, slope.InputSiemens * unit);

    private static void Compare(Func<double, TwoPortPoint> at, double step, TwoPortSlope actual)
    {
        TwoPortPoint high = at(step), low = at(-step);
        Near(high.Ratio, low.Ratio, actual.Ratio);
        Near(high.Ohms, low.Ohms, actual.Ohms);
        Near(high.CurrentRatio, low.CurrentRatio, actual.CurrentRatio);
        Near(high.InputSiemens, low.InputSiemens, actual.InputSiemens);

        void Near(double above, double below, double slope) =>
            Assert.Equal((above - below) / (2 * step), slope, 1e-6 * (Math.Abs(slope) + Math.Abs(above)));
    }

    private static SteadyStateModel Model(double duty, double henries, double plateFarads)
    {
        Converter converter = Converter.Create("fed by a half").Input("vin").Output("vout", LoadKind.Current).Duties(duty, 1 - duty)
            .Capacitor("fly", "p", "n", 1e-6, 0.003, new CapacitorPlates(plateFarads)).Capacitor("out", "vout", Converter.ReferenceNode, 1e-5)
            .Inductor("coil", "x", "vout", henries, 0.02)
            .Switch("s1", "vin", "p", on: 1, 0.01).Switch("s2", "n", "x", on: 1, 0.02)
            .Switch("s3", "p", "x", on: 2, 0.03).Switch("s4", "n", Converter.ReferenceNode, on: 2, 0.01).Build();
        return SteadyStateModel.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
    }
}
