using ScNet.Design.Losses;

namespace ScNet.Tests.Design.Losses;

public sealed class CurrentSplitTests
{
    // 1 S, 1/3 S and 1/2 S share 4 A as 6 : 2 : 3; the third counts towards the reference
    [Fact]
    public void Closed_switches_beside_each_other_share_a_current_by_their_conductances()
    {
        Converter stage = Start().Switch("a", "vin", "x", 1, 1).Switch("b", "vin", "x", 1, 3).Switch("c", "x", "gnd", 2, 2).Inductor("coil", "x", "vout").Build();
        AssertSplit(stage, [true, true, false], [4], [3, 1, 0]);
        AssertSplit(stage, [true, true, true], [4], [24 / 11.0, 8 / 11.0, -12 / 11.0]);
        AssertSplit(stage, [false, false, true], [4], [0, 0, -4]);
        AssertSplit(stage, [false, false, true], [-4], [0, 0, 4]);
        AssertSplit(stage, [false, false, false], [0], [0, 0, 0]);
        AssertSplit(stage, [false, false, false], [4], null);
    }

    // 5 A through the middle node, which 1 S joins to the input, 1 S to the reference and a series resistance of 2 Ω to the reference
    [Fact]
    public void Series_resistances_of_capacitors_take_their_share()
    {
        Converter stage = Start().Switch("up", "vin", "m", 1, 1).Switch("down", "m", "gnd", 1, 1).Switch("on", "m", "x", 1, 7)
            .Capacitor("first", "m", "gnd", 1, 2).Capacitor("plain", "x", "z", 1).Switch("off", "z", "gnd", 2, 1).Inductor("coil", "x", "vout").Build();
        AssertSplit(stage, [true, true, true, false], [5], [2, -2, 5, 0], [-1, 0]);
        AssertSplit(stage, [true, true, false, true], [5], [0, 0, 0, -5], [0, 0]);

        // 7 Ω + 1/2 Ω in parallel with "up" and "down" open
        AssertSplit(stage, [false, false, true, false], [5], [0, 0, 5, 0], [-5, 0]);
    }

    // a current through a loop that nothing joins to a source: 2 A through 1 S and 3 S
    [Fact]
    public void A_loop_apart_from_the_sources_has_a_reference_of_its_own()
    {
        Converter stage = Start().Switch("a", "vin", "x", 1, 1).Inductor("coil", "x", "vout").Inductor("apart", "p", "q")
            .Switch("b", "q", "p", 1, 1).Switch("c", "p", "q", 1, 1 / 3.0).Build();
        AssertSplit(stage, [true, true, true], [1, 2], [1, 0.5, -1.5]);
        AssertSplit(stage, [true, false, false], [1, 2], null);
        AssertSplit(stage, [true, false, false], [1, 0], [1, 0, 0]);
    }

    // what one coil brings to a node the other takes away, but for rounding
    [Fact]
    public void Coils_in_series_need_no_switch_where_their_currents_are_equal()
    {
        Converter stage = Start().Inductor("in", "vin", "x").Inductor("out", "x", "vout").Switch("a", "x", "gnd", 1, 1).Build();
        AssertSplit(stage, [false], [1, 1], [0]);
        AssertSplit(stage, [false], [1e6, 1e6 + 1e-5], [0]);
        AssertSplit(stage, [false], [1e-6, 1e-6 + 1e-17], [0]);
        AssertSplit(stage, [false], [1e-6, 1.001e-6], null);
        AssertSplit(stage, [false], [1, 2], null);
        AssertSplit(stage, [false], [2, 1], null);
        AssertSplit(stage, [false], [1, -1], null);
        AssertSplit(stage, [true], [1, 3], [-2]);
    }

    private static ConverterBuilder Start() => Converter.Create("split").Input("vin").Output("vout").Phases(2);

    private static void AssertSplit(Converter converter, bool[] closed, double[] coils, double[]? switches, double[]? capacitors = null)
    {
        // what stood there before does not count
        double[] found = [.. closed.Select(_ => 99.0)], charged = [.. converter.Capacitors.Select(_ => 99.0)];
        Assert.Equal(switches is not null, new CurrentSplit(converter, closed).TryDivide(coils, found, charged));
        for (int s = 0; s < (switches?.Length ?? 0); s++)
        {
            Assert.Equal(switches![s], found[s], 1e-12);
        }

        for (int c = 0; c < (capacitors?.Length ?? 0); c++)
        {
            Assert.Equal(capacitors![c], charged[c], 1e-12);
        }
    }
}
