using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>States, clusters and faults of small networks by hand.</summary>
public sealed class NetworkStructureTests
{
    [Fact]
    public void Large_capacitors_hold_states_and_nodes_follow_along_the_tree()
    {
        // 5 F, 4 F, 1 F are states 0, 1, 2; the smallest would close a loop from node 4 over both sources to the output
        NetworkStructure found = Of(SmallNetwork.Of(7, [""], capacitors: [(3, 1), (4, 3), (4, 2), (5, 6)]), [1, 4, 0.5, 5]);
        Assert.Equal(3, found.VoltageStates);
        Assert.Equal([2, 1, -1, 0], found.CapacitorState);
        Assert.Equal([0, 0, 0, 0, 0, 1, 1], found.Cluster);
        Assert.Equal(2, found.ClusterCount);

        // per node: the voltages of states 0, 1, 2 against the first node of the cluster
        Assert.Equal([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 1, 1, 0, 0, 0, -1, 0, 0], found.NodeStates);

        // per node: input and output voltage
        Assert.Equal([0, 0, 1, 0, 0, 1, 1, 0, 1, 0, 0, 0, 0, 0], found.NodeSources);
    }

    [Fact]
    public void A_current_output_is_no_source_of_voltage()
    {
        NetworkStructure found = Of(SmallNetwork.Of(3, ["1"], resistors: [(1, 2)], isStiff: false), []);
        Assert.Equal([0, 0, 1], found.Cluster);
        Assert.Equal([0, 0, 1, 0, 0, 0], found.NodeSources);
    }

    [Fact]
    public void Conducting_resistors_join_clusters_phase_by_phase()
    {
        NetworkStructure found = Of(SmallNetwork.Of(6, ["1001", "0110", "0000"], resistors: [(1, 3), (3, 4), (5, 4), (5, 3)]), []);
        Assert.Equal([0, 0, 2, 0], found.PhaseGroup[0]);
        Assert.Equal([0, 1, 1, 1], found.PhaseGroup[1]);
        Assert.Equal([0, 1, 2, 3], found.PhaseGroup[2]);
    }

    [Fact]
    public void A_pattern_of_voltages_that_no_loop_meets_is_free()
    {
        // nothing but the second capacitor's switch fixes a voltage: the middle between the others floats
        NetworkStructure found = Of(SmallNetwork.Of(5, ["11"], resistors: [(4, 1), (4, 0)], capacitors: [(1, 3), (4, 0), (3, 0)]), [1, 1, 1]);
        Assert.Equal([-1, 0, 1], Assert.Single(found.FreeVoltages));
    }

    [Fact]
    public void Loops_of_all_phases_together_fix_voltages()
    {
        // a loop in phase 1 and the second capacitor alone in phase 2
        SwitchedLinearNetwork network = SmallNetwork.Of(4, ["0", "1"], resistors: [(3, 0)], capacitors: [(1, 3), (3, 0)]);
        Assert.Empty(Of(network, [1, 1]).FreeVoltages);
    }

    [Fact]
    public void A_network_without_capacitors_has_no_free_voltages() =>
        Assert.Empty(Of(SmallNetwork.Of(3, ["1"], resistors: [(1, 2)]), []).FreeVoltages);

    [Fact]
    public void A_load_without_any_path_is_a_fault_of_no_phase()
    {
        NetworkStructure main = Of(SmallNetwork.Of(4, ["1"], resistors: [(1, 3)], isStiff: false), []);
        Assert.Equal((NetworkFault.LoadWithoutPath, -1, 1), (main.Fault, main.FaultPhase, main.FaultInput));
        NetworkStructure further = Of(SmallNetwork.Of(5, ["1"], resistors: [(1, 3)], furtherLoads: [(3, 0), (4, 0)]), []);
        Assert.Equal((NetworkFault.LoadWithoutPath, -1, 3), (further.Fault, further.FaultPhase, further.FaultInput));
    }

    [Fact]
    public void A_load_without_a_path_in_one_phase_is_a_fault_of_that_phase()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(5, ["11", "01", "11"], resistors: [(4, 1), (3, 1)], furtherLoads: [(3, 0), (4, 3)]);
        NetworkStructure found = Of(network, []);
        Assert.Equal((NetworkFault.LoadWithoutPath, 1, 3), (found.Fault, found.FaultPhase, found.FaultInput));
    }

    [Fact]
    public void A_sound_network_has_no_fault_and_no_phase_of_one()
    {
        NetworkStructure found = Of(SmallNetwork.Of(4, ["1"], resistors: [(1, 3)], furtherLoads: [(3, 0)]), []);
        Assert.Equal((NetworkFault.None, -1, 0), (found.Fault, found.FaultPhase, found.FaultInput));
    }

    private static NetworkStructure Of(SwitchedLinearNetwork network, double[] farads) => NetworkStructure.Of(network, farads, []);
}
