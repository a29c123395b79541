using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>What the two-port of switches and capacitors tells of the capacitors.</summary>
public sealed class ModalTwoPortTests
{
    [Fact]
    public void Nothing_moves_in_open_circuit_without_parasitic_capacitances()
    {
        Converter converter = Half().Build();
        TwoPortPoint point = At(converter);

        // half the input voltage across the flying capacitor to the last digit, and nothing known of one that no switch ever reaches
        Assert.Equal([0.5, null], point.CapacitorVoltages);
        Assert.Equal(0.5, point.CapacitorVoltages["fly"]);
        Assert.Equal((0.2, 0.5, 0.5, 0), (point.FrequencyHz, point.Ratio, point.CurrentRatio, point.InputSiemens));
    }

    // series-parallel of n: Vin/n across each capacitor; ladders too; a Dickson converter: the multiples of it
    [Theory]
    [InlineData(0.2)]
    [InlineData(1e-5)]
    [InlineData(1e6)]
    public void Voltages_in_open_circuit_are_the_nearest_numbers_to_the_exact_ones_at_any_frequency(double frequencyHz)
    {
        Assert.Equal([1.0 / 7, 1.0 / 7, 1.0 / 7, 1.0 / 7, 1.0 / 7, 1.0 / 7], At(SeriesParallel.StepDown(7), frequencyHz).CapacitorVoltages);
        Assert.All(At(Ladder.StepDown(7), frequencyHz).CapacitorVoltages, v => Assert.Equal(1.0 / 7, v));
        Assert.Equal([1.0 / 7, 2.0 / 7, 3.0 / 7, 4.0 / 7, 5.0 / 7, 6.0 / 7], At(Dickson.StepDown(7), frequencyHz).CapacitorVoltages.Order());
    }

    // what the plate takes from the input in phase 1 it gives to the output in phase 2, so that the output rises above the half
    [Fact]
    public void A_plate_moves_the_capacitor_voltages_in_open_circuit()
    {
        double?[] voltages = [.. At(Half(LoadKind.Current).Capacitor("out", "vout", "gnd").Parasitic("plate", "p", "gnd", 0.3).Build()).CapacitorVoltages];
        Assert.Equal(3, voltages.Length);
        Assert.InRange(voltages[0]!.Value, 0.1, 0.9);
        Assert.NotEqual(0.5, voltages[0]!.Value, 1e-4);
    }

    private static TwoPortPoint At(Converter converter, double frequencyHz = 0.2) => SteadyStateModel.Of(ModeAnalysis.Of(converter)).TwoPort.At(frequencyHz);

    private static ConverterBuilder Half(LoadKind load = LoadKind.Stiff) =>
        OperatedConverters.Half(load).Capacitor("idle", "x", "y").Switch("s5", "x", "y2", on: 1);
}
