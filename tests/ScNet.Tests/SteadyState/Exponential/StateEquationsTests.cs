using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>What state equations say of free and resting states, and their other forms.</summary>
public sealed class StateEquationsTests
{
    [Fact]
    public void Free_states_are_patterns_of_voltages_and_currents_in_energy_coordinates()
    {
        // v(1,3) and v(3,0) of 4 F and 1 F change against one another; 1 H and 4 H side by side let a current circulate
        SwitchedLinearNetwork network = SmallNetwork.Of(
            5, ["11"], resistors: [(1, 4), (4, 0)], capacitors: [(1, 3), (3, 0)], inductors: [(4, 2), (4, 2)], windings: "00");
        NetworkStructure structure = NetworkStructure.Of(network, [4, 1], [1, 4]);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([1, 1], [4, 1], [1, 4], [0, 0], [1]));
        (DoubleDouble[] directions, int[] pivots) = all.FreeStates();
        Assert.Equal(2, pivots.Length);
        Assert.Equal(3, all.StateCount);

        // both capacitors lie between sources, so that one state of 5 F holds them; currents are 1 · i and 2 · i
        double[] found = Array.ConvertAll(directions, v => v.Nearest);
        double[] first = found[..3], second = found[3..];
        (double[] voltage, double[] current) = first[0] != 0 ? (first, second) : (second, first);
        Assert.Equal((0, 0), (voltage[1], voltage[2]));
        Assert.Equal(0, current[0]);
        Assert.Equal(-2, current[2] / current[1], 1e-14);
        Assert.Equal(1, current[pivots[current == first ? 0 : 1]]);
    }

    [Fact]
    public void Resting_directions_are_orthonormal_and_leave_out_what_depends()
    {
        // i0 and the following i1 = i0 - i2 and i2 itself: three currents of two states
        SwitchedLinearNetwork network = SmallNetwork.Of(
            5, ["11"], resistors: [(1, 3), (3, 0)], inductors: [(3, 4), (4, 2), (4, 0)], windings: "111");
        NetworkStructure structure = NetworkStructure.Of(network, [], [30, 6, 20]);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([1, 1], [], [30, 6, 20], [1, 1, 1], [1]));

        // the first row is (1/6, 1/30): a fifth as much in the second place; over its length it is (5, 1)/√26
        double root = Math.Sqrt(26);
        Near([5 / root, 1 / root], all.RestingDirections([0]));
        Near([5 / root, 1 / root, 1 / root, -5 / root], all.RestingDirections([0, 1]));
        Near([5 / root, 1 / root, 1 / root, -5 / root], all.RestingDirections([0, 1, 2]));
        Near([0, 1], all.RestingDirections([2]));
        Assert.Empty(all.RestingDirections([]));
    }

    [Fact]
    public void A_resting_current_has_a_direction_however_large_its_inductance_and_one_that_never_flows_has_none()
    {
        // node 4 has nothing but the second inductor
        SwitchedLinearNetwork network = SmallNetwork.Of(5, ["11"], resistors: [(1, 3), (3, 0)], inductors: [(3, 2), (4, 2)], windings: "11");
        NetworkStructure structure = NetworkStructure.Of(network, [], [4e10, 1]);
        StateEquations<DoubleDouble> all = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([1, 1], [], [4e10, 1], [1, 1], [1]));
        Near([1], all.RestingDirections([0]));
        Assert.Empty(all.RestingDirections([1]));
        Near([1], all.RestingDirections([1, 0]));
    }

    [Fact]
    public void Phases_with_the_same_connections_are_one_in_every_number_type()
    {
        SwitchedLinearNetwork network = SmallNetwork.Of(4, ["10", "01", "10", "11"], resistors: [(1, 3), (3, 0)], capacitors: [(3, 2)]);
        NetworkStructure structure = NetworkStructure.Of(network, [2], []);
        StateEquations<DoubleDouble> fine = StateEquations<DoubleDouble>.Of(structure, SmallNetwork.Values([1, 2], [2], [], [], [0.1, 0.2, 0.3, 0.4]));
        StateEquations<PlainReal> plain = fine.To(v => PlainReal.Of(v.Nearest));
        Assert.Same(fine.Phases[0], fine.Phases[2]);
        Assert.Same(plain.Phases[0], plain.Phases[2]);
        Assert.Equal(3, fine.Phases.Distinct().Count());
        Assert.Equal(3, plain.Phases.Distinct().Count());
        for (int j = 0; j < 4; j++)
        {
            Assert.Equal(fine.Phases[j].Generator.Select(v => v.Nearest), plain.Phases[j].Generator.Select(v => v.Nearest));
            Assert.Equal(fine.Phases[j].InputCurrent.Select(v => v.Nearest), plain.Phases[j].InputCurrent.Select(v => v.Nearest));
        }

        Assert.Equal([0.4, 0.3, 0.2, 0.1], fine.WithDuties([.. fine.Duties.Reverse()]).Duties.Select(v => v.Nearest));
    }

    private static void Near(double[] expected, DoubleDouble[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int k = 0; k < expected.Length; k++)
        {
            Assert.Equal(expected[k], actual[k].Nearest, 1e-14);
        }
    }
}
