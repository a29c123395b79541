using System.Numerics;
using Fractions;
using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>One phase with voltages that are given.</summary>
public sealed class PhaseNetworkTests
{
    // a and b, which nothing charges, are joined: what lies in their loop is unknown, what vin and vout are is not. z floats alone.
    [Fact]
    public void Capacitors_of_unknown_voltage_leave_their_own_loop_unknown()
    {
        Converter converter = RatedNetworks.Half().Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd").Switch("join", "x", "y", 1).Switch("never", "vin", "z").Build();
        PhaseNetwork network = Of(converter, HeldVoltages.Of(ModeAnalysis.Of(converter)));
        int x = Node("x"), y = Node("y"), z = Node("z"), vin = Node("vin");
        Assert.Equal(network.Component(x), network.Component(y));
        Assert.Equal((0, false), (network.Component(vin), network.IsAdrift[0]));
        Assert.True(network.IsAdrift[network.Component(x)] && network.IsUnknown[network.Component(x)]);
        Assert.False(network.IsAdrift[network.Component(z)] || network.IsUnknown[network.Component(z)]);
        Assert.Equal([1, 2], network.UnknownCapacitors(x));
        Assert.Empty(network.UnknownCapacitors(z));
        Assert.Equal(default, network.Difference(x, y));
        Assert.Equal(Point(new Fraction(1, 2)), network.Difference(vin, Node("vout")));
        Assert.False(network.HasConflict);

        int Node(string name) => converter.Nodes.PositionOf(name);
    }

    // what a and b share moves x and w alike, between which lies a third by the capacitor that holds it
    [Fact]
    public void A_held_voltage_is_known_also_where_all_around_it_is_not()
    {
        Converter converter = RatedNetworks.Half().Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd").Capacitor("c", "x", "w").Switch("join", "x", "y", 1).Build();
        PhaseNetwork network = Of(converter, HeldVoltages.Of(ModeAnalysis.Of(converter)).With([(3, new Fraction(1, 3))]));
        int x = converter.Nodes.PositionOf("x"), w = converter.Nodes.PositionOf("w");
        Assert.True(network.IsUnknown[network.Component(x)]);
        Assert.Equal(network.Component(x), network.Component(w));
        Assert.Equal(Point(new Fraction(1, 3)), network.Difference(x, w));
        Assert.Equal(default, network.Difference(w, converter.Nodes.PositionOf("y")));
    }

    // x is c above vout = 1/2: no loop, so that no denominator is too large
    [Fact]
    public void Where_no_loop_conflicts_no_voltage_is_too_odd()
    {
        Converter converter = RatedNetworks.Half().Capacitor("c", "x", "y").Switch("on", "y", "vout", 1).Build();
        Fraction little = new(1, BigInteger.One << 64);
        PhaseNetwork network = Of(converter, HeldVoltages.Of(ModeAnalysis.Of(converter)).With([(1, little)]));
        Assert.Equal(Point(new Fraction(1, 2) + little), network.Difference(converter.Nodes.PositionOf("x"), 0));
        Assert.True(network.IsExact);
        Assert.False(network.HasConflict);
    }

    private static Interval<Fraction> Point(Fraction value) => new(value, value);

    private static PhaseNetwork Of(Converter converter, HeldVoltages held) => PhaseNetwork.Of(converter, RigidPieces.Of(converter, held), held, 0, 0);
}
