using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

public class SwitchedNetworkTests
{
    private static readonly Fraction[] s_duties = [new(1, 2), new(1, 4), new(1, 4)];

    private static SwitchedNetwork Half => new(
        4, [new(1, 2)], [new(new(3, 0), IsGiven: false), new(new(1, 0), IsGiven: true)], [new(1, 2), new(2, 3)], s_duties, [[true, false, false, true, false, false]]);

    [Fact]
    public void Phases_are_weighted_by_the_smallest_whole_numbers() => Assert.Equal([2, 1, 1], Half.PhaseWeights.Select(w => (int)w));

    [Fact]
    public void Other_phases_and_modes_share_the_connections()
    {
        SwitchedNetwork half = Half, longer = half.WithDuties([new(1, 3), new(1, 6), new(1, 2)]), open = half.WithClosed([new bool[6]]);
        Assert.Equal([2, 1, 3], longer.PhaseWeights.Select(w => (int)w));
        Assert.Equal<BigInteger>(half.PhaseWeights, open.PhaseWeights);
        foreach (SwitchedNetwork other in new[] { longer, open })
        {
            Assert.Equal((4, 2, 3, 1, 2), (other.NodeCount, other.SwitchCount, other.BranchCount, other.CapacitorCount, other.FirstGivenBranch));
            Assert.Equal(Ends(half), Ends(other));
            Assert.Equal(half.HeldVoltages, other.HeldVoltages);
        }
    }

    [Fact]
    public void More_capacitors_come_after_its_own()
    {
        SwitchedNetwork more = Half.WithCapacitors([new(2, 0), new(3, 1)]);
        Assert.Equal([new(1, 2), new(2, 0), new(3, 1), new(3, 0), new(1, 0)], Ends(more));
        Assert.Equal((3, 4), (more.CapacitorCount, more.FirstGivenBranch));
    }

    [Fact]
    public void More_outputs_come_after_those_whose_voltage_follows()
    {
        SwitchedNetwork more = Half.WithHeldOutputs([new(2, 0), new(2, 3), new(1, 3), new(1, 2)]);
        Assert.Equal([new(1, 2), new(3, 0), new(2, 0), new(2, 3), new(1, 3), new(1, 2), new(1, 0)], Ends(more));
        Assert.Equal((1, 6, 4), (more.CapacitorCount, more.FirstGivenBranch, more.HeldCurrentCount));
    }

    // branch 2 is the input, 1 the output, 0 the capacitor
    [Fact]
    public void Branches_of_held_voltage_are_listed_at_their_nodes_ports_first()
    {
        SwitchedNetwork half = Half;
        Assert.Equal([[2, 1], [2, 0], [0], [1]], Enumerable.Range(0, 4).Select(n => half.BranchIncidence[n].ToArray()));
        Assert.Same(half.BranchIncidence, half.BranchIncidence);
    }

    [Fact]
    public void A_branch_from_a_node_to_itself_is_listed_once_and_a_double_one_twice()
    {
        Incidence incidence = Incidence.Of(3, [0, 1, 0, 2], [1, 1, 1, 0], [3, 2, 1, 0]);
        Assert.Equal([[3, 2, 0], [2, 1, 0], [3]], Enumerable.Range(0, 3).Select(n => incidence[n].ToArray()));
    }

    [Fact]
    public void A_port_that_follows_is_not_put_behind_a_given_one() => Assert.Throws<ArgumentException>(() => new SwitchedNetwork(
        2, [], [new(new(1, 0), IsGiven: true), new(new(1, 0), IsGiven: false)], [], [Fraction.One], [[]]));

    // the same array where no current is held
    [Fact]
    public void Charges_of_loops_are_those_of_equations_where_no_current_is_held()
    {
        SwitchedNetwork half = Half;
        PhaseForest[] forests = [.. Enumerable.Range(0, 3).Select(j => PhaseForest.Of(half, half.ClosedIn(0, j)))];
        LoopSet loops = LoopSet.Of(half, forests);
        var equations = new Rational<long>[loops.EquationCount];
        Assert.Same(equations, LoopEquations.Spread(half, loops, equations));
    }

    private static NodePair[] Ends(SwitchedNetwork network) =>
        [.. Enumerable.Range(0, network.BranchCount).Select(b => new NodePair(network.BranchFirst[b], network.BranchSecond[b]))];
}
