using Fractions;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>What moves as one with what.</summary>
public sealed class NodeSpansTests
{
    // Two capacitors in series for one of a halver: only their sum, 1/2, is known, and n lies 1/2 below p whatever m is. In phase 3 p is
    // on vin, so n = 1/2. c on n has 1/2 or 1, and so has d on the reference: y = n + (1/2 to 1), x = 1/2 to 1.
    private static readonly Converter s_series = Converter.Create("series").Input("vin").Output("vout").Phases(3)
        .Capacitor("c", "y", "n").Capacitor("upper", "p", "m").Capacitor("lower", "m", "n").Capacitor("d", "x", "gnd")
        .Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd")
        .Switch("y half", "y", "vout").Switch("y full", "vin", "y").Switch("x half", "x", "vout").Switch("x full", "vin", "x")
        .Switch("y down", "y", "gnd").Switch("n x", "n", "x")
        .Mode("half", [.. Switching, ("y half", 2), ("x half", [1, 2, 3])]).Mode("full", [.. Switching, ("y full", 2), ("x full", [1, 2, 3])])
        .Mode("rest", Switching).Build();

    private static (string, PhaseSet)[] Switching => [("s1", [1, 3]), ("s2", 1), ("s3", 2), ("s4", 2)];

    [Fact]
    public void A_node_behind_two_capacitors_of_which_the_sum_is_known_is_as_fixed_as_any()
    {
        ModeStress rest = RatedNetworks.Stress(s_series)["rest"];
        int n = s_series.Nodes.PositionOf("n"), vin = s_series.Nodes.PositionOf("vin");
        Assert.Equal(["1/2", "0", "1/2"], rest.NodePotentials["n"].Select(p => p.ToString()));
        Assert.Equal("?", rest.NodePotentials["m"][3].ToString());
        Assert.Equal("1 to 3/2 (idle)", rest.NodePotentials["y"][3].ToString());
        Assert.Equal("1 to 3/2 (idle)", rest.Switches["y down"].Phases[3].ToString());
        Assert.Equal("-1/2 to 0 (idle)", rest.Switches["n x"].Phases[3].ToString());
        Assert.Equal((0, 0), (rest.Fixed.Frame(n, 2), rest.Fixed.Frame(vin, 2)));
        Assert.Equal((new Fraction(1, 2), Fraction.One), (rest.Fixed.Offset(n, 2), rest.Fixed.Offset(vin, 2)));
    }

    // c2 of 1/2 floats in phases 1 and 2 with x on either plate and lifts itself without bounds: its plates move as one all the same
    [Fact]
    public void Plates_that_float_without_bounds_move_as_one()
    {
        Converter converter = RatedNetworks.Half().Phases(3).Capacitor("c2", "p2", "n2")
            .Switch("top", "vin", "p2", 3).Switch("bottom", "n2", "vout", 3).Switch("join", "x", "p2", 1).Switch("part", "x", "n2", 2).Build();
        NodeSpans spans = RatedNetworks.First(converter, openSwitchesLeak: false).Fixed;
        int top = converter.Nodes.PositionOf("p2"), bottom = converter.Nodes.PositionOf("n2"), vout = converter.Nodes.PositionOf("vout");
        Assert.False(spans.Potential(top, 0).IsDetermined);
        Assert.Equal(spans.Frame(top, 0), spans.Frame(bottom, 0));
        Assert.NotEqual(0, spans.Frame(top, 0));
        Assert.Equal(new Fraction(1, 2), spans.Offset(top, 0) - spans.Offset(bottom, 0));
        Assert.Equal(new Fraction(1, 2), spans.FixedDifference(top, bottom, 0));
        Assert.Null(spans.FixedDifference(top, vout, 0));
        Assert.Equal((0, Fraction.One, new Fraction(1, 2)), (spans.Frame(top, 2), spans.Offset(top, 2), spans.Offset(bottom, 2)));
    }
}
