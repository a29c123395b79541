using ScNet.Analysis;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Which voltages a mode fixes, seen from the networks by eye.</summary>
public sealed class ExponentialKnownTests
{
    [Theory]
    [InlineData(1e-6, 1e-6)]
    [InlineData(3e-6, 7e-7)]
    [InlineData(1.1e-5, 1.7e-9)]
    [InlineData(1e16, 3e16)]
    public void The_middle_of_two_capacitors_moves_and_their_ends_do_not(double upperFarads, double lowerFarads)
    {
        // the switches n and top follow the middle and the end where they close; p and q float together
        Converter converter = Stage().Switch("link", "vin", "k", on: [1, 2]).Capacitor("upper", "k", "m", upperFarads).Capacitor("lower", "m", "gnd", lowerFarads)
            .Capacitor("held", "vin", "vout", 1e-6).Switch("tap", "m", "n", on: 1).Switch("never", "m", "vin").Switch("isle", "p", "q", on: 2).Build();
        KnownPotentials known = Of(converter);
        Assert.Equal([false, false, true], Enumerable.Range(0, 3).Select(known.OfCapacitor));
        for (int phase = 0; phase < 2; phase++)
        {
            Assert.True(known.OfNode(Node(converter, "k"), phase));
            Assert.True(known.OfNode(Node(converter, "x"), phase));
            Assert.False(known.OfNode(Node(converter, "m"), phase));
            Assert.False(known.OfNode(Node(converter, "n"), phase));
            Assert.False(known.OfNode(Node(converter, "p"), phase));
            Assert.True(known.AcrossSwitch(Switch(converter, "link"), phase));
            Assert.True(known.AcrossSwitch(Switch(converter, "high"), phase));
            Assert.False(known.AcrossSwitch(Switch(converter, "never"), phase));
            Assert.Equal(phase == 0, known.AcrossSwitch(Switch(converter, "tap"), phase));
            Assert.Equal(phase == 1, known.AcrossSwitch(Switch(converter, "isle"), phase));
        }
    }

    [Fact]
    public void Each_of_two_free_patterns_is_met()
    {
        Converter converter = Stage().Capacitor("a", "vin", "m", 1e-6).Capacitor("b", "m", "gnd", 1e-6)
            .Capacitor("c", "vin", "n", 2e-6).Capacitor("d", "n", "gnd", 5e-6).Switch("bridge", "m", "n").Switch("tie", "m", "o", on: [1, 2]).Build();
        KnownPotentials known = Of(converter);
        Assert.All([0, 1, 2, 3], i => Assert.False(known.OfCapacitor(i)));
        Assert.False(known.OfNode(Node(converter, "m"), 0));
        Assert.False(known.OfNode(Node(converter, "n"), 1));
        Assert.True(known.OfNode(Node(converter, "vout"), 1));
        Assert.False(known.AcrossSwitch(Switch(converter, "bridge"), 0));
        Assert.True(known.AcrossSwitch(Switch(converter, "tie"), 1));
    }

    private static ConverterBuilder Stage() => Converter.Create("stage").Input("vin").Output("vout").Duties(0.25, 0.75)
        .Inductor("coil", "x", "vout", 1e-6, 0.02).Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", "gnd", on: 2, 0.01);

    private static KnownPotentials Of(Converter converter) =>
        ExponentialSignals.Known(converter, ExponentialTwoPort.Of(converter, converter.Modes[0]).Solver);

    private static int Node(Converter converter, string name) => converter.Nodes.PositionOf(name);

    private static int Switch(Converter converter, string name) => converter.Switches.PositionOf(name);
}
