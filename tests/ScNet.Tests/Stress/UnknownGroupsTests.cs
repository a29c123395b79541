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

    private static ModeChange Joining(string bottom)
    {
        (string, PhaseSet)[] alone = [.. RatedNetworks.HalfSwitching, ("tie", [1, 2])];
        Converter converter = RatedNetworks.HalfOfModes().Capacitor("a", "x", "gnd").Capacitor("b", "y", bottom).Switch("join", "x", "y").Switch("tie", "g", "gnd")
            .Mode("alone", alone).Mode("both", [.. alone, ("join", [1, 2])]).Build();
        return RatedNetworks.Stress(converter).Change("alone", "both");
    }
}
