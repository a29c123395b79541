using ScNet.Kernel;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The loops of one phase by hand; elastances are 1/farads.</summary>
public sealed class ChainLoopsTests
{
    private const string Ground = Converter.ReferenceNode;

    [Fact]
    public void A_flying_capacitor_between_the_ports_is_one_short_loop()
    {
        ChainLoops loops = Loops(OperatedConverters.Half(farads: 0.25).Build())!;
        Assert.Equal(1, loops.Count);
        Assert.Equal([4], loops.Elastance);
        Assert.Equal([0], loops.Shared);
        Assert.False(loops.HasLong);
        Assert.Equal(0, loops.LongElastance);
        Assert.Equal(new int[5], loops.LongSigns);

        // through the capacitor from its positive terminal: both switches of the phase and its own resistance, from first to second terminal
        Assert.Equal([[(0, 1)], [(0, 1)], [], [], [(0, 1)]], Enumerable.Range(0, 5).Select(loops.Of));
        Assert.Equal([0], loops.TryOrder(5)!);
    }

    [Fact]
    public void Resistors_that_do_not_conduct_have_no_place()
    {
        Converter half = OperatedConverters.Half().Build();
        ChainLoops loops = ChainLoops.TryOf(half, Forest(half), 2, r => r == 1 ? 0 : r == 0 ? 1 : -1)!;
        Assert.Equal([[(0, 1)], [(0, 1)]], Enumerable.Range(0, 2).Select(loops.Of));
        Assert.Null(ChainLoops.TryOf(half, Forest(half), 0, _ => -1));
    }

    [Fact]
    public void Three_capacitors_and_a_port_are_short_and_four_alone_are_too_long()
    {
        ChainLoops three = Loops(End(String(Start(), "a", 3, 0.5)))!;
        Assert.Equal([6], three.Elastance);
        Assert.False(three.HasLong);
        Assert.Null(Loops(End(String(Start(), "a", 4, 0.5))));
    }

    /// <summary>
    /// Four capacitors in a row across the input, and one side by side with the first of them by way of two switches. That one's
    /// loop runs down through itself and up through the first; the long loop runs down through the row.
    /// </summary>
    [Fact]
    public void A_loop_shares_elastance_with_the_long_one()
    {
        ChainLoops loops = Loops(Beside(firstFarads: 0.5, flyFarads: 0.125, farads: 1))!;
        Assert.Equal([8 + 2], loops.Elastance);
        Assert.Equal([-2], loops.Shared);
        Assert.True(loops.HasLong);

        // 2 less 2²/10, and 1 of each of the others
        Assert.Equal(2 - 0.4 + 3, loops.LongElastance, 1e-14);
    }

    [Fact]
    public void Little_that_a_short_loop_leaves_of_the_long_one_is_not_lost_in_a_difference()
    {
        ChainLoops loops = Loops(Beside(firstFarads: 1e-12, flyFarads: 1e8, farads: 1e9))!;
        Assert.Equal(1e-8 + 3e-9, loops.LongElastance, 1e-20);
    }

    /// <summary>
    /// Two rows of four across the input: the difference of their loops, up the first and down the second, and the first itself, whose
    /// elastance is then that of both side by side.
    /// </summary>
    [Fact]
    public void Of_two_long_loops_one_is_left_and_their_difference()
    {
        Converter rows = End(String(String(Start(), "a", 4, 1), "b", 4, 0.25));
        ChainLoops loops = Loops(rows)!;
        Assert.Equal([4 + 16], loops.Elastance);
        Assert.Equal(-4, Assert.Single(loops.Shared));
        Assert.Equal(4 - (16 / 20.0), loops.LongElastance, 1e-14);
        Assert.Equal(rows.Switches.Select(s => s.Name[0] == 'a' ? 1 : 0), loops.LongSigns[..rows.Switches.Count]);
        Assert.Equal(rows.Switches.SkipLast(2).Select(s => s.Name[0] == 'a' ? -1 : 1), Enumerable.Range(0, rows.Switches.Count - 2).Select(s => Assert.Single(loops.Of(s)).Sign));
    }

    [Fact]
    public void Of_two_long_loops_what_they_share_is_left_out()
    {
        // the same capacitors in a row, then two ends of two capacitors each, one of them declared upwards
        Converter forked = End(Start()
            .Switch("t0", "vin", "t", on: 1).Capacitor("c0", "t", "m", 100).Capacitor("c1", "m", "n", 100).Capacitor("c2", "n", "o", 100)
            .Capacitor("d0", "o", "p", 1).Capacitor("d1", "p", "q", 0.5).Switch("d", "q", Ground, on: 1)
            .Capacitor("e0", "r", "o", 0.25).Capacitor("e1", "s", "r", 0.125).Switch("e", "s", Ground, on: 1));
        ChainLoops? loops = Loops(forked);
        Assert.NotNull(loops);
        Assert.Equal(1 + 2 + 4 + 8, loops.Elastance[^1], 1e-14);
    }

    [Fact]
    public void Loops_that_run_through_a_switch_twice_are_none_to_work_on()
    {
        // both rows hang on one switch, the second one upwards: the difference of their loops takes the switch twice
        ConverterBuilder builder = Start().Switch("in", "vin", "x", on: 1);
        for (int k = 0; k < 4; k++)
        {
            builder.Capacitor($"a{k}", k == 0 ? "x" : $"a{k}", k == 3 ? Ground : $"a{k + 1}").Capacitor($"b{k}", k == 3 ? Ground : $"b{k + 1}", k == 0 ? "x" : $"b{k}");
        }

        Assert.Null(Loops(End(builder)));
    }

    [Fact]
    public void Loops_without_a_capacitor_or_that_share_one_are_none_to_work_on()
    {
        Assert.Null(Loops(Converter.Create("ports").Input("vin").Output("vout")
            .Switch("s", "vin", "vout", on: 1).Switch("t", "vin", "x", on: 2).Capacitor("c", "x", Ground).Build()));

        // two and three capacitors that have one in common
        Assert.Null(Loops(End(Start().Switch("s", "vin", "a", on: 1).Capacitor("c1", "a", "b").Capacitor("c2", "b", Ground)
            .Switch("t", "b", "d", on: 1).Capacitor("c3", "d", "e").Switch("u", "e", "vin", on: 1))));
    }

    [Fact]
    public void Held_currents_and_switches_in_a_ring_are_none_to_work_on()
    {
        Converter loaded = OperatedConverters.Half(LoadKind.Current).Capacitor("out", "vout", Ground).Build();
        Assert.False(Forest(loaded).HasSwitchLoop);
        Assert.Null(Loops(loaded));
        Assert.Null(Loops(OperatedConverters.Half().Switch("s1 beside", "vin", "p", on: 1).Build()));
    }

    [Fact]
    public void Loops_that_share_resistors_are_neighbours_in_the_order()
    {
        // a row of switches, and capacitors across two of them each, the middle one first
        ChainLoops loops = Loops(Row(4, (1, 3), (0, 2), (2, 4)))!;
        Assert.Equal([1, 0, 2], loops.TryOrder(9)!);
        Assert.Equal([(1, -1)], loops.Of(0));
        Assert.Equal([(0, -1), (1, -1)], loops.Of(1));
        Assert.Equal([(0, -1), (2, -1)], loops.Of(2));
        Assert.Equal([(2, 1)], loops.Of(8));
    }

    [Fact]
    public void Two_resistors_in_common_make_neighbours_but_once() => Assert.Equal([1, 0, 2], Loops(Row(5, (1, 4), (0, 3), (3, 5)))!.TryOrder(10)!);

    [Fact]
    public void Loops_that_share_nothing_are_chains_of_their_own() => Assert.Equal([0, 1, 2], Loops(Row(3, (0, 1), (1, 2), (2, 3)))!.TryOrder(8)!);

    [Fact]
    public void Loops_that_branch_have_no_order() => Assert.Null(Loops(Row(3, (0, 3), (0, 1), (1, 2), (2, 3)))!.TryOrder(9));

    [Fact]
    public void Three_loops_through_one_resistor_have_no_order() => Assert.Null(Loops(Row(1, (0, 1), (0, 1), (0, 1)))!.TryOrder(6));

    [Fact]
    public void Loops_in_a_ring_have_no_order() => Assert.Null(Loops(End(Start()
        .Switch("s0", Ground, "x", on: 1).Switch("s1", Ground, "y", on: 1).Switch("s2", Ground, "z", on: 1)
        .Capacitor("c0", "x", "y").Capacitor("c1", "y", "z").Capacitor("c2", "z", "x")))!.TryOrder(8));

    // switches in a row from the reference up, and capacitors between two of their nodes
    private static Converter Row(int switches, params (int First, int Second)[] capacitors)
    {
        ConverterBuilder builder = Start();
        for (int s = 0; s < switches; s++)
        {
            builder.Switch($"s{s}", s == 0 ? Ground : $"x{s}", $"x{s + 1}", on: 1);
        }

        for (int c = 0; c < capacitors.Length; c++)
        {
            builder.Capacitor($"c{c}", capacitors[c].First == 0 ? Ground : $"x{capacitors[c].First}", $"x{capacitors[c].Second}");
        }

        return End(builder);
    }

    // equal capacitors in a row across the input, a switch above each
    private static ConverterBuilder String(ConverterBuilder builder, string name, int count, double farads)
    {
        for (int k = 0; k < count; k++)
        {
            builder.Switch($"{name}{k}", k == 0 ? "vin" : $"{name} below {k - 1}", $"{name} above {k}", on: 1)
                .Capacitor($"{name} c{k}", $"{name} above {k}", k == count - 1 ? Ground : $"{name} below {k}", farads);
        }

        return builder;
    }

    private static Converter Beside(double firstFarads, double flyFarads, double farads) => End(Start()
        .Capacitor("c0", "vin", "a", firstFarads).Switch("s0", "vin", "f", on: 1).Capacitor("fly", "f", "g", flyFarads).Switch("s1", "g", "a", on: 1)
        .Switch("s2", "a", "b", on: 1).Capacitor("c1", "b", "c", farads).Capacitor("c2", "c", "d", farads).Capacitor("c3", "d", Ground, farads));

    private static ConverterBuilder Start() => Converter.Create("loops").Input("vin").Output("vout");

    // both ports are touched in the other phase
    private static Converter End(ConverterBuilder builder) => builder.Switch("off", "vin", "vout", on: 2).Switch("off out", "vout", Ground, on: 2).Build();

    private static PhaseForest Forest(Converter converter) => PhaseForest.Of(converter.Network, converter.Network.ClosedIn(0, 0));

    // every switch and every series resistance has a place
    private static ChainLoops? Loops(Converter converter) =>
        ChainLoops.TryOf(converter, Forest(converter), converter.Switches.Count + converter.Capacitors.Count, r => r);
}
