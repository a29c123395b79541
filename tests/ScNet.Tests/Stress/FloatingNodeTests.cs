using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>Nodes that nothing ties to the reference, in a mode and at a change.</summary>
public sealed class FloatingNodeTests
{
    // The halver with a switch across fly, all open in phase 3: leaking, n lies at 0 to 1/2 and p 1/2 above. What is across
    // fly is 1/2 whatever leaks, and pulls neither end.
    [Fact]
    public void A_switch_across_a_capacitor_that_floats_pulls_it_nowhere()
    {
        ModeStress stress = RatedNetworks.First(RatedNetworks.Half().Phases(3).Switch("across", "p", "n").Build());
        Assert.Equal(
            ["0 to 1/2 (floating)", "-1/2 to 0 (floating)", "0 to 1/2 (floating)", "0 to 1/2 (floating)", "1/2"],
            stress.Switches.Select(s => s.Phases[3].ToString()));
    }

    // z between open switches lies between vin and vout; x hangs on a capacitor that nothing charges
    [Fact]
    public void A_capacitor_of_unknown_voltage_leaves_the_bounds_of_other_nodes_alone()
    {
        ModeStress stress = RatedNetworks.First(RatedNetworks.Half().Capacitor("idle", "x", "gnd")
            .Switch("a", "vin", "z").Switch("b", "z", "vout").Switch("c", "vin", "x").Build());
        Assert.Equal("1/2 to 1 (floating)", stress.NodePotentials["z"][1].ToString());
        Assert.Equal("?", stress.NodePotentials["x"][1].ToString());
        Assert.Equal(["mode default, phase 1, as idle idles", "mode default, phase 2, as idle idles"], stress.Switches["c"].Undetermined);
    }

    // c hangs on b over upper, and b on the reference over lower
    [Fact]
    public void A_node_over_two_capacitors_of_unknown_voltage_names_both_in_their_order()
    {
        ModeStress stress = RatedNetworks.First(RatedNetworks.Half().Capacitor("upper", "b", "c").Capacitor("lower", "gnd", "b").Switch("never", "c", "vin").Build());
        Assert.Equal(["mode default, phase 1, as upper, lower idle", "mode default, phase 2, as upper, lower idle"], stress.Switches["never"].Undetermined);
    }

    // without leakage nothing was ever at x or y; at a change they have what they never had
    [Fact]
    public void Nodes_that_float_are_the_reason_where_nothing_idles()
    {
        Converter converter = RatedNetworks.HalfOfModes().Switch("one", "vin", "x").Switch("two", "x", "y")
            .Mode("a", RatedNetworks.HalfSwitching).Mode("b", RatedNetworks.HalfSwitching).Build();
        ConverterStress stress = RatedNetworks.Stress(converter, openSwitchesLeak: false);
        Assert.Equal(["mode a, phase 1, as x floats", "mode a, phase 2, as x floats"], stress["a"].Switches["one"].Undetermined);
        Assert.Equal(["mode a, phase 1, as x, y float", "mode a, phase 2, as x, y float"], stress["a"].Switches["two"].Undetermined);
        ModeChange change = stress.Change("a", "b");
        Assert.Equal(["change from a to b, phase 1, as x floats", "change from a to b, phase 2, as x floats"], change.OpenSwitches["one"].Undetermined);
        Assert.Equal(["change from a to b, phase 1, as x, y float", "change from a to b, phase 2, as x, y float"], change.OpenSwitches["two"].Undetermined);
    }

    // x has nothing to do with c, which idles elsewhere
    [Fact]
    public void A_capacitor_that_idles_elsewhere_is_no_reason_at_a_change()
    {
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("c", "y", "gnd").Switch("one", "vin", "x").Switch("other", "vin", "y")
            .Mode("a", RatedNetworks.HalfSwitching).Mode("b", RatedNetworks.HalfSwitching).Build();
        ConverterStress stress = RatedNetworks.Stress(converter, openSwitchesLeak: false);
        Assert.Equal("mode a, phase 1, as x floats", stress["a"].Switches["one"].Undetermined[0]);
        Assert.Equal("change from a to b, phase 1, as x floats", stress.Change("a", "b").OpenSwitches["one"].Undetermined[0]);
        Assert.Equal("change from a to b, phase 1, as c idles", stress.Change("a", "b").OpenSwitches["other"].Undetermined[0]);
    }

    // mode a holds x at 1, but with c of unknown voltage on it it is not known where it goes to
    [Fact]
    public void A_node_that_hangs_on_a_capacitor_of_unknown_voltage_has_no_bounds_at_a_change()
    {
        (string, PhaseSet)[] half = RatedNetworks.HalfSwitching;
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("c", "x", "y").Switch("up", "vin", "x").Switch("low", "y", "gnd")
            .Mode("a", [.. half, ("up", [1, 2])]).Mode("b", half).Build();
        ConverterStress stress = RatedNetworks.Stress(converter);
        SwitchStress up = stress.Change("a", "b").OpenSwitches["up"];
        Assert.Equal("?; ?", RatedNetworks.Text(up));
        Assert.Equal(["change from a to b, phase 1, as c idles", "change from a to b, phase 2, as c idles"], up.Undetermined);
        Assert.Equal(["mode b, phase 1, as c idles", "mode b, phase 2, as c idles"], stress["b"].Switches["up"].Undetermined);
    }

    // A chain of open switches hands 1 on from vin, node by node. y1 to y4 are on vout in phase 2 and z1 to z4 in phase 1, so that it takes
    // all of phase 1 to reach x and all of phase 2 to go on from there to w: longer than any phase has nodes that float.
    [Fact]
    public void Bounds_that_take_long_to_come_through_are_found()
    {
        ConverterBuilder builder = RatedNetworks.Half();
        string[] chain = ["vin", "y1", "y2", "y3", "y4", "x", "z1", "z2", "z3", "z4", "w"];
        foreach ((string from, string to) in chain.Zip(chain.Skip(1)))
        {
            builder.Switch($"to {to}", from, to);
        }

        for (int k = 1; k <= 4; k++)
        {
            builder.Switch($"hold y{k}", $"y{k}", "vout", 2).Switch($"hold z{k}", $"z{k}", "vout", 1);
        }

        ModeStress stress = RatedNetworks.First(builder.Build());
        const string wide = "1/2 to 1 (floating)";
        Assert.Equal(
            [wide, "1/2", wide, "1/2", wide, wide, "1/2", wide, "1/2", wide, wide, wide],
            ((string[])["y1", "y4", "x", "z1", "z4", "w"]).SelectMany(node => stress.NodePotentials[node]).Select(p => p.ToString()));
    }
}
