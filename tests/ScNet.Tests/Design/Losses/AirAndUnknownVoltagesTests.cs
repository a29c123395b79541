using ScNet.Analysis;
using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

/// <summary>What is in the air, floats or is unknown in converters that halve or hand on their input.</summary>
public sealed class AirAndUnknownVoltagesTests
{
    [Fact]
    public void A_switch_that_never_closes_is_open_also_in_an_odd_number_of_phases()
    {
        (Converter half, IdealVoltages voltages) = Of(Half().Phases(3).Switch("open", "n", "q").Capacitor("apart", "q", "r"));
        Assert.True(voltages.EndsInTheAir(half.Switches.PositionOf("open")));
    }

    // all the input at the output, by a capacitor without voltage; the sources alone touch the reference
    [Fact]
    public void What_a_source_touches_is_not_in_the_air()
    {
        (Converter whole, IdealVoltages voltages) = Of(Converter.Create("Whole").Input("vin").Output("vout").Capacitor("fly", "p", "vin")
            .Switch("a", "vin", "p", 1).Switch("b", "p", "vout", 2).Switch("open", "vout", "gnd"));
        int open = whole.Switches.PositionOf("open");
        Assert.False(voltages.EndsInTheAir(open));
        Near(0, voltages.Across(open)!.HalfSquares());
        Near(1, voltages.Across(open)!.MeanMagnitude([0.5, 0.5]));
    }

    // "far" stays at 1. From the plate at 1, 1/2 and still 1/2 it is away by 0, -1/2 and -1/2; in the fourth phase it is joined with the other plate, anywhere
    // from 0 to 1, and the plate is 1/2 above both
    [Fact]
    public void Beside_a_capacitor_that_floats_anywhere_an_open_switch_blocks_its_voltage()
    {
        (Converter half, IdealVoltages voltages) = Of(Half().Phases(4).Switch("keep", "vin", "far", [1, 2]).Switch("join", "far", "n", 4).Switch("open", "p", "far"));
        VoltageProfile across = voltages.Across(half.Switches.PositionOf("open"))!;
        Assert.False(Node(half, voltages, "p")!.IsFixed);
        Assert.True(across.IsFixed && across.Floats);
        Near(3 / 8.0, across.MeanMagnitude([0.25, 0.25, 0.25, 0.25]));
        Near((0.25 + 1 + 0.25) / 2, across.HalfSquares());
    }

    // a current may leave at 1 - v and at v: half of the input on average, whatever the capacitor's voltage v
    [Fact]
    public void The_output_of_a_current_swings_by_a_voltage_that_nobody_knows()
    {
        (Converter half, IdealVoltages voltages) = Of(Half(LoadKind.Current));
        Assert.All((string[])["p", "n", "vout"], node => Assert.Null(Node(half, voltages, node)));
    }

    private static VoltageProfile? Node(Converter converter, IdealVoltages voltages, string node) =>
        voltages.Between(converter.Nodes.PositionOf(node), converter.Nodes.PositionOf(Converter.ReferenceNode));

    private static (Converter Converter, IdealVoltages Voltages) Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return (converter, IdealVoltages.Of(ModeAnalysis.Of(converter)));
    }

    private static ConverterBuilder Half(LoadKind load = LoadKind.Stiff) => Converter.Create("Half").Input("vin").Output("vout", load).Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-15);
}
