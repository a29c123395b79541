using ScNet.Analysis;
using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

/// <summary>What swings in a halving converter, whose capacitor goes from 1 and 1/2 to 1/2 and 0 of the input.</summary>
public sealed class IdealVoltagesTests
{
    [Fact]
    public void Nodes_and_switches_swing_by_the_ideal_potentials()
    {
        (Converter half, IdealVoltages voltages) = Of(Half());
        Near(0.25, Node(half, voltages, "p").HalfSquares());
        Near(0.25, Node(half, voltages, "n").HalfSquares());
        Near(0, Node(half, voltages, "vout").HalfSquares());
        Near(0, voltages.Between(half.Nodes.PositionOf("p"), half.Nodes.PositionOf("n"))!.HalfSquares());
        Near(0.5, voltages.Between(half.Nodes.PositionOf("p"), half.Nodes.PositionOf("n"))!.MeanMagnitude([0.5, 0.5]));
        for (int s = 0; s < 4; s++)
        {
            VoltageProfile across = voltages.Across(s)!;
            Near(0.25, across.HalfSquares());
            Near(0.25, across.MeanMagnitude([0.5, 0.5]));
            Assert.False(across.Floats || across.IsRelative);
            Assert.False(voltages.EndsInTheAir(s));
        }
    }

    // in the third phase nothing is closed: the capacitor stays at 1/2 and 0
    [Fact]
    public void What_floats_for_a_phase_keeps_its_potential()
    {
        (Converter half, IdealVoltages voltages) = Of(Half().Phases(3));
        VoltageProfile plate = Node(half, voltages, "n");
        Near(0.25, plate.HalfSquares());
        Near(1 / 6.0, plate.MeanMagnitude([1 / 3.0, 1 / 3.0, 1 / 3.0]));
        Assert.True(plate.Floats && plate.IsFixed);
        Assert.False(plate.IsRelative);

        // from the node that floats at 0 to the output: 1/2 in two phases of three
        VoltageProfile across = voltages.Across(half.Switches.PositionOf("s2"))!;
        Near(1 / 3.0, across.MeanMagnitude([1 / 3.0, 1 / 3.0, 1 / 3.0]));
        Near(0.25, across.HalfSquares());
        Assert.True(across.Floats && across.IsFixed);
    }

    // the capacitor of no known voltage hangs on the plate that swings by 1/2; one hangs on the other, listed first
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Across_a_capacitor_of_unknown_voltage_both_plates_swing_alike(bool isTurned)
    {
        ConverterBuilder builder = isTurned
            ? Half().Capacitor("far", "b", "a").Capacitor("near", "n", "b")
            : Half().Capacitor("far", "a", "b").Capacitor("near", "b", "n");
        (Converter half, IdealVoltages voltages) = Of(builder.Switch("open", "a", "vin"));
        foreach (string node in (string[])["a", "b"])
        {
            VoltageProfile hung = Node(half, voltages, node);
            Near(0.25, hung.HalfSquares());
            Assert.True(hung.IsRelative);
        }

        VoltageProfile across = voltages.Across(half.Switches.PositionOf("open"))!;
        Near(0.25, across.HalfSquares());
        Assert.True(across.IsRelative);
        Assert.False(voltages.EndsInTheAir(half.Switches.PositionOf("open")));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_only_open_switches_touch_does_not_swing(bool isTurned)
    {
        ConverterBuilder builder = isTurned ? Half().Switch("open", "q", "n") : Half().Switch("open", "n", "q");
        (Converter half, IdealVoltages voltages) = Of(builder.Capacitor("apart", "q", "r"));
        foreach (string node in (string[])["q", "r"])
        {
            VoltageProfile still = Node(half, voltages, node);
            Near(0, still.HalfSquares());
            Assert.True(still.IsRelative && still.Floats);
        }

        // the other end swings
        int open = half.Switches.PositionOf("open");
        Assert.True(voltages.EndsInTheAir(open));
        Near(0.25, voltages.Across(open)!.HalfSquares());
        Assert.False(voltages.EndsInTheAir(half.Switches.PositionOf("s1")));
    }

    // an idle capacitor that a switch connects in one phase may be anywhere in the other, and bring its node along
    [Fact]
    public void A_node_that_a_closed_switch_holds_in_some_phase_only_is_unknown_and_not_in_the_air()
    {
        (Converter half, IdealVoltages voltages) = Of(Half().Switch("sometimes", "q", "p", 1).Capacitor("apart", "q", "r"));
        Assert.False(voltages.EndsInTheAir(half.Switches.PositionOf("sometimes")));
        Assert.Null(voltages.Between(half.Nodes.PositionOf("q"), half.Nodes.PositionOf("gnd")));
        Assert.Null(voltages.Across(half.Switches.PositionOf("sometimes")));
    }

    private static VoltageProfile Node(Converter converter, IdealVoltages voltages, string node) =>
        voltages.Between(converter.Nodes.PositionOf(node), converter.Nodes.PositionOf(Converter.ReferenceNode))!;

    private static (Converter Converter, IdealVoltages Voltages) Of(ConverterBuilder builder)
    {
        Converter converter = builder.Build();
        return (converter, IdealVoltages.Of(ModeAnalysis.Of(converter)));
    }

    private static ConverterBuilder Half() => Converter.Create("Half").Input("vin").Output("vout").Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2);

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-15);
}
