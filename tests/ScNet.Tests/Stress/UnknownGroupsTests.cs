using ScNet.Analysis;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>What capacitors of unknown voltage leave undetermined, and what they do not reach.</summary>
public sealed class UnknownGroupsTests
{
    private static readonly string[] s_halver = ["s1", "s2", "s3", "s4"];

    // a and b in parallel exchange charge through gnd alone, which moves no node of the halver: across its open switches lies half the input
    [Fact]
    public void A_loop_that_meets_the_reference_at_one_node_leaves_the_rest_as_it_was()
    {
        ModeChange change = Joining("gnd");
        Assert.All(s_halver, name => Assert.Empty(change.OpenSwitches[name].Undetermined.Concat(change.ClosedSwitches[name].Undetermined)));
        Assert.Equal(["0; 1/2", "0; -1/2", "1/2; 0", "1/2; 0"], s_halver.Select(name => RatedNetworks.Text(change.OpenSwitches[name])));
        Assert.Equal(["change from alone to both, phase 1, as a, b idle", "change from alone to both, phase 2, as a, b idle"], change.ClosedSwitches["join"].Undetermined);
    }

    // here the same current flows through the closed switch between gnd and g as well, whose ends then differ by a share of what nobody knows
    [Fact]
    public void A_loop_through_a_switch_of_the_reference_leaves_its_voltage_undetermined()
    {
        ModeChange change = Joining("g");
        Assert.Equal(["change from alone to both, phase 1, as a, b idle", "change from alone to both, phase 2, as a, b idle"], change.ClosedSwitches["tie"].Undetermined);
        Assert.Empty(Joining("gnd").ClosedSwitches["tie"].Undetermined);
    }

    [Fact]
    public void Of_two_capacitors_on_the_reference_each_is_the_reason_for_its_own_node_alone()
    {
        ModeStress stress = RatedNetworks.First(RatedNetworks.Half().Capacitor("a", "x", "gnd").Capacitor("b", "y", "gnd").Switch("sx", "vin", "x").Switch("sy", "vin", "y").Build());
        Assert.Equal(["mode default, phase 1, as a idles", "mode default, phase 2, as a idles"], stress.Switches["sx"].Undetermined);
        Assert.Equal(["mode default, phase 1, as b idles", "mode default, phase 2, as b idles"], stress.Switches["sy"].Undetermined);
    }

    /// <summary>
    /// Components of pieces as they are given here, groups by hand: x and y close a ring over the reference at one piece; z hangs on it by one
    /// capacitor; q meets it at two pieces; d lies between two pieces of it; two capacitors between u and w close a ring that floats; r and s float on one.
    /// </summary>
    [Fact]
    public void Groups_of_capacitors_of_unknown_voltage_are_told_by_what_they_close()
    {
        Converter converter = RatedNetworks.Half()
            .Capacitor("a", "x", "gnd").Capacitor("d", "g", "gnd").Capacitor("b", "y", "gnd").Capacitor("c", "x", "y").Capacitor("h", "gnd", "z")
            .Capacitor("e", "u", "w").Capacitor("f", "u", "w").Capacitor("m", "q", "gnd").Capacitor("n", "q", "g").Capacitor("k", "r", "s").Build();
        string[] floating = ["", "x", "y", "z", "u", "w", "q", "r", "s"];
        UnknownGroups groups = Of(converter, floating);
        Assert.Equal([false, true, true, true, true, true, true, true, true], groups.IsAdrift);
        Assert.Equal(["", "x", "y", "u", "w", "q"], floating.Where((_, k) => groups.IsUnknown[k]));
        Assert.Equal(
            ["d m n", "a b c", "a b c", "h", "e f", "e f", "m n", "k", "k"],
            floating.Select((_, k) => string.Join(' ', groups.CapacitorsOf(k).Select(c => converter.Capacitors[c].Name))));
    }

    // three components on two capacitors: no ring closes, whichever of them is joined first
    [Fact]
    public void A_chain_that_is_joined_from_its_middle_is_one_group_and_closes_nothing()
    {
        UnknownGroups groups = Of(RatedNetworks.Half().Capacitor("a", "x", "y").Capacitor("b", "z", "x").Build(), "", "x", "y", "z");
        Assert.Equal([false, false, false, false], groups.IsUnknown);
        Assert.All([1, 2, 3], k => Assert.Equal([1, 2], groups.CapacitorsOf(k)));
    }

    // d closes a ring over the reference at two pieces, which is none of what x hangs on
    [Fact]
    public void The_first_capacitor_between_two_pieces_of_the_reference_is_a_group_of_its_own()
    {
        UnknownGroups groups = Of(Converter.Create("first").Input("vin").Output("vout").Capacitor("d", "g", "gnd").Capacitor("a", "x", "gnd").Capacitor("fly", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build(), "", "x");
        Assert.Equal([true, false], groups.IsUnknown);
        Assert.Equal([0], groups.CapacitorsOf(0));
        Assert.Equal([1], groups.CapacitorsOf(1));
    }

    // every node that is not named lies in the component of the reference
    private static UnknownGroups Of(Converter converter, params string[] floating)
    {
        HeldVoltages held = HeldVoltages.Of(ModeAnalysis.Of(converter));
        RigidPieces pieces = RigidPieces.Of(converter, held);
        int[] component = new int[pieces.PieceCount];
        for (int k = 1; k < floating.Length; k++)
        {
            component[pieces.Piece[converter.Nodes.PositionOf(floating[k])]] = k;
        }

        return UnknownGroups.Of(converter.Network, pieces, held, component, floating.Length);
    }

    private static ModeChange Joining(string bottom)
    {
        (string, PhaseSet)[] alone = [.. RatedNetworks.HalfSwitching, ("tie", [1, 2])];
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("a", "x", "gnd").Capacitor("b", "y", bottom).Switch("join", "x", "y").Switch("tie", "g", "gnd")
            .Mode("alone", alone).Mode("both", [.. alone, ("join", [1, 2])]).Build();
        return RatedNetworks.Stress(converter).Change("alone", "both");
    }
}
