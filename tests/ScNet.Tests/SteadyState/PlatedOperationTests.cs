using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// A divider by two that settles, of 1 nF with plates and strays of A = 0.14 nF at p and B = 0.08 nF at n in all, at 2 V: derived in
/// <see cref="PlatedSensitivityTests"/>. With N = 4C + A + B and P = 2C + A, W = V P/N - I/(fN) and I_in = I P/N + V f(C + A - P²/N).
/// </summary>
public sealed class PlatedOperationTests
{
    private const double Volts = 2;
    private const double FrequencyHz = 1e4;
    private const double N = 4.22e-9;
    private const double P = 2.14e-9;
    private const double Siemens = FrequencyHz * (1.14e-9 - (P * P / N));

    [Theory]
    [InlineData(3e-6)]
    [InlineData(0)]
    [InlineData(-2e-6)]
    public void Averages_and_powers_are_those_of_the_hand_derivation(double amperes)
    {
        PeriodicSteadyState steady = Operate(amperes);
        double output = (Volts * P / N) - (amperes / (FrequencyHz * N)), input = (amperes * P / N) + (Volts * Siemens);
        Near(output, steady.AverageOutputVoltageVolts);
        Near(Volts * P / N, steady.OpenOutputVoltageVolts);
        Assert.Equal(1, steady.IdealOutputVoltageVolts);
        Near(Volts * P * FrequencyHz, steady.ZeroOutputCurrentAmperes);
        Near(input, steady.AverageInputCurrentAmperes);
        Near(Volts * input, steady.InputPowerWatts);
        Near(output * amperes, steady.OutputPowerWatts);
        Near((Volts * input) - (output * amperes), steady.DissipationWatts);
        Assert.Equal(amperes < 0, steady.IsDrivenByLoad);
        Assert.False(steady.IsOverloaded);
    }

    // strays at p swing between V and W, at n between W and nothing, twice a period: f farads swing²
    [Fact]
    public void Charging_of_every_plate_and_stray_is_that_of_its_swing()
    {
        PeriodicSteadyState steady = Operate(3e-6);
        double output = steady.AverageOutputVoltageVolts, top = FrequencyHz * (Volts - output) * (Volts - output), bottom = FrequencyHz * output * output;
        Assert.Equal((0.02e-9, 0.03e-9), (steady.Parasitics["high"].Farads, steady.Parasitics["low"].Farads));
        Near(0.02e-9 * top, steady.Parasitics["high"].ChargingWatts);
        Near(0.03e-9 * bottom, steady.Parasitics["low"].ChargingWatts);
        Near(0.12e-9 * top, steady.Capacitors["fly"].TopPlate!.ChargingWatts);
        Near(0.05e-9 * bottom, steady.Capacitors["fly"].BottomPlate!.ChargingWatts);
    }

    /// <summary>What elements lose, and what waveforms carry, is what averages over a period say by another way.</summary>
    [Theory]
    [InlineData(LoadKind.Stiff, 0.3, false)]
    [InlineData(LoadKind.Stiff, 0, true)]
    [InlineData(LoadKind.Current, 0.3, true)]
    [InlineData(LoadKind.Current, 0, false)]
    public void The_waveform_of_the_input_current_has_its_average_and_elements_lose_what_the_load_does_not_get(LoadKind load, double amperes, bool isTurned)
    {
        Converter converter = PlatedThreePhases.Of(load, isTurned);
        PeriodicSteadyState steady = PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(Volts, amperes, 0.3));
        double mean = Enumerable.Range(0, 3).Sum(j => steady.Signals.InputCurrent(j).Mean() * steady.Signals.Durations[j]) * 0.3;
        Assert.Equal(steady.AverageInputCurrentAmperes, mean, 1e-12);
        Assert.Equal(steady.InputPowerWatts - steady.OutputPowerWatts, steady.DissipationWatts, 1e-12);
        Assert.Equal(steady.DissipationWatts, OperatedConverters.ElementDissipationWatts(steady), 1e-11);

        // current flows in several phases: the mean of squares of samples, at the middles of equal steps
        const int Samples = 20_000;
        double[] sampled = steady.SampleInputCurrent([.. Enumerable.Range(0, Samples).Select(k => (k + 0.5) / (Samples * 0.3))]);
        Assert.Equal(Math.Sqrt(sampled.Average(i => i * i)), steady.InputRmsCurrentAmperes, 1e-5);
        Assert.Equal(sampled.Max() - sampled.Min(), steady.InputRippleAmperes, 5e-3);
        Assert.Equal(mean, sampled.Average(), 1e-5);
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, (1e-11 * Math.Abs(expected)) + 1e-20);

    private static PeriodicSteadyState Operate(double amperes)
    {
        Converter converter = Converter.Create("half").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n", 1e-9, plates: new CapacitorPlates(0.05e-9, 0.12e-9)).Parasitic("high", "p", "gnd", 0.02e-9).Parasitic("low", "gnd", "n", 0.03e-9)
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        return PeriodicSteadyState.Of(ModeAnalysis.Of(converter, converter.Modes[0]), new OperatingPoint(Volts, amperes, FrequencyHz));
    }
}
