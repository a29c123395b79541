using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Currents of inductors that are states, follow, rest or circulate, by hand.</summary>
public sealed class NetworkStructureCurrentsTests
{
    [Fact]
    public void The_small_inductor_of_a_junction_follows_from_the_others_and_the_loads()
    {
        // at node 4: i0 enters, i1 and i2 leave, so do both loads but for the second, which comes back there
        SwitchedLinearNetwork network = SmallNetwork.Of(
            5, ["10", "01"], resistors: [(1, 3), (3, 0)], inductors: [(3, 4), (4, 2), (4, 0)], windings: "111", furtherLoads: [(4, 0), (3, 4)]);
        NetworkStructure found = NetworkStructure.Of(network, [], [5, 1, 3]);
        Assert.Equal(2, found.CurrentStates);
        Assert.Equal([0, -1, 1], found.InductorState);
        Assert.Equal([1, 0, 1, -1, 0, 1], found.InductorLinks);
        Assert.Equal([0, 0, 0, 0, 0, 0, -1, 1, 0, 0, 0, 0], found.InductorLoads);
        Assert.Equal((NetworkFault.None, -1), (found.Fault, found.FaultPhase));
    }

    [Fact]
    public void An_inductor_that_alone_feeds_a_current_output_carries_its_current()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(4, ["1"], resistors: [(1, 3)], inductors: [(2, 3)], isStiff: false);
        NetworkStructure found = NetworkStructure.Of(network, [], [1]);
        Assert.Equal(0, found.CurrentStates);
        Assert.Equal([-1], found.InductorState);
        Assert.Equal([0, -1], found.InductorLoads);
    }

    [Fact]
    public void Each_phase_rests_the_inductors_that_it_leaves_without_a_path()
    {
        // two stages and a dangling inductor that never carries a current
        (int, int)[] resistors = [(1, 3), (1, 4), (3, 0), (4, 0)], inductors = [(3, 2), (4, 2), (5, 2)];
        NetworkStructure found = NetworkStructure.Of(
            SmallNetwork.Of(6, ["1100", "0010", "0001", "0000"], resistors, inductors: inductors, mayRest: true), [], [1, 1, 1]);
        Assert.Equal(NetworkFault.None, found.Fault);
        Assert.Equal([0, 1, -1], found.InductorState);
        Assert.Equal(4, found.RestingInductors.Length);
        Assert.Empty(found.RestingInductors[0]);
        Assert.Equal([1], found.RestingInductors[1]);
        Assert.Equal([0], found.RestingInductors[2]);
        Assert.Equal([0, 1], found.RestingInductors[3]);
        NetworkStructure other = NetworkStructure.Of(SmallNetwork.Of(6, ["1100", "0010", "0001", "0000"], resistors, inductors: inductors), [], [1, 1, 1]);
        Assert.Equal((NetworkFault.InductorWithoutPath, 1), (other.Fault, other.FaultPhase));
    }

    [Fact]
    public void An_inductor_that_never_carries_a_current_does_not_rest_though_it_comes_first()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            6, ["1100", "0000"], resistors: [(1, 3), (1, 4), (3, 0), (4, 0)], inductors: [(5, 2), (3, 2), (4, 2)], mayRest: true);
        NetworkStructure found = NetworkStructure.Of(network, [], [1, 1, 1]);
        Assert.Equal([-1, 0, 1], found.InductorState);
        Assert.Equal([1, 2], found.RestingInductors[1]);
        Assert.Equal(NetworkFault.None, found.Fault);
    }

    [Fact]
    public void Two_inductors_in_series_rest_together_by_one_law()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            5, ["10", "01", "00"], resistors: [(1, 3), (3, 0)], inductors: [(3, 4), (4, 2)], mayRest: true);
        NetworkStructure found = NetworkStructure.Of(network, [], [5, 1]);
        Assert.Equal(NetworkFault.None, found.Fault);
        Assert.Equal([0, 1], found.RestingInductors[2]);
    }

    [Fact]
    public void Inductors_that_may_go_on_circulating_do_not_rest()
    {
        // without a switch both currents only cancel, which is more than rest can say
        SwitchedLinearNetwork network = SmallNetwork.Of(
            4, ["10", "01", "00"], resistors: [(1, 3), (3, 0)], inductors: [(3, 2), (3, 2)], windings: "11", mayRest: true);
        NetworkStructure found = NetworkStructure.Of(network, [], [1, 2]);
        Assert.Equal((NetworkFault.InductorWithoutPath, 2), (found.Fault, found.FaultPhase));
    }

    [Fact]
    public void A_loop_of_inductors_without_resistance_lets_a_current_circulate()
    {
        // the first one makes the forest; the third has a resistance
        SwitchedLinearNetwork network = SmallNetwork.Of(
            4, ["10", "01"], resistors: [(1, 3), (3, 0)], inductors: [(3, 2), (3, 2), (2, 3), (2, 3)], windings: "0010");
        NetworkStructure found = NetworkStructure.Of(network, [], [1, 2, 3, 4]);
        Assert.Equal(2, found.FreeCurrents.Count);
        Assert.Equal([-1, 1, 0, 0], found.FreeCurrents[0]);
        Assert.Equal([1, 0, 0, 1], found.FreeCurrents[1]);
        Assert.Equal(NetworkFault.None, found.Fault);
    }

    [Fact]
    public void A_circulation_is_told_by_the_currents_that_are_states()
    {
        // nothing but the two inductors meets node 4: the smaller one's current follows
        SwitchedLinearNetwork network = SmallNetwork.Of(5, ["1"], resistors: [(1, 3)], inductors: [(3, 4), (4, 3)]);
        NetworkStructure found = NetworkStructure.Of(network, [], [1, 2]);
        Assert.Equal([-1, 0], found.InductorState);
        Assert.Equal([1], Assert.Single(found.FreeCurrents));
    }

    [Theory]
    [InlineData(1, true, "00", NetworkFault.InductorAcrossSources)]
    [InlineData(1, true, "01", NetworkFault.None)]
    [InlineData(2, true, "00", NetworkFault.InductorAcrossSources)]
    [InlineData(2, false, "00", NetworkFault.None)]
    public void Inductors_in_series_across_a_source_are_a_fault_unless_one_has_a_resistance(int source, bool isStiff, string windings, object fault)
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(
            4, ["1"], resistors: [(1, 2)], inductors: [(source, 3), (3, 0)], windings: windings, isStiff: isStiff);
        Assert.Equal((NetworkFault)fault, NetworkStructure.Of(network, [], [1, 2]).Fault);
    }

    [Fact]
    public void An_inductor_across_a_source_is_a_fault_of_no_phase_whatever_else_a_phase_lacks()
    {
        // in phase 2 the second inductor has no path; the first lies across the input in both
        SwitchedLinearNetwork network = SmallNetwork.Of(4, ["1", "0"], resistors: [(1, 3)], inductors: [(1, 0), (3, 2)]);
        NetworkStructure found = NetworkStructure.Of(network, [], [1, 2]);
        Assert.Equal((NetworkFault.InductorAcrossSources, -1), (found.Fault, found.FaultPhase));
    }
}
