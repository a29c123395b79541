using CsCheck;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class LoopSetTests
{
    // a solver of many networks keeps one set: nothing of the network before may be left in it
    [Fact]
    public void A_set_that_held_other_loops_finds_what_a_new_one_finds() => Gen.Select(KernelSketch.Any, KernelSketch.Any).Holds(
        (before, sketch) =>
        {
            (CandidateNetwork otherNetwork, PhaseForest[] otherForests) = Wire(before);
            (CandidateNetwork network, PhaseForest[] forests) = Wire(sketch);
            LoopSet used = LoopSet.Of(otherNetwork, otherForests);
            used.Find(network, forests);
            LoopSet fresh = LoopSet.Of(network, forests);
            Assert.Equal(Text(fresh), Text(used));
            Assert.Equal(fresh.Repeats is { } repeats ? Text(repeats) : "", used.Repeats is { } again ? Text(again) : "");
            Assert.Equal((fresh.HasMeshes, fresh.MeshCount, fresh.EquationCount), (used.HasMeshes, used.MeshCount, used.EquationCount));
            Assert.Equal(fresh.Interruptions, used.Interruptions);
        },
        1500);

    // each loop leads from node to node and back to where it began, in its own phase
    [Fact]
    public void Every_loop_is_closed() => KernelSketch.Any.Holds(
        sketch =>
        {
            (CandidateNetwork network, PhaseForest[] forests) = Wire(sketch);
            LoopSet loops = LoopSet.Of(network, forests);
            int entries = 0;
            for (int loop = 0; loop < loops.Count; loop++)
            {
                int[] joined = sketch.Joined(loops.Phase(loop));
                var sum = new int[sketch.NodeCount];
                for (int k = 0; k < loops.Branches(loop).Length; k++, entries++)
                {
                    NodePair ends = sketch.Ends(loops.Branches(loop)[k]);
                    sum[joined[ends.First]] += loops.Signs(loop)[k];
                    sum[joined[ends.Second]] -= loops.Signs(loop)[k];
                }

                Assert.All(sum, s => Assert.Equal(0, s));
                Assert.Equal(loops.IsTied(loop), loops.Branches(loop).ToArray().Any(sketch.IsCurrentHeld));
            }

            Assert.Equal(loops.EntryCount, entries);
        },
        1500);

    // a capacitor that the input holds in both phases is told once; of other phases of the same set it is not
    [Fact]
    public void Loops_of_one_capacitor_and_ports_that_repeat_are_set_aside_as_long_as_they_do()
    {
        KernelSketch held = new(3, [new(1, 0)], [new(new(1, 0), IsGiven: true)], [], [1, 1], []);
        KernelSketch two = new(3, [new(1, 2), new(2, 0)], [new(new(1, 0), IsGiven: false)], [new(1, 0)], [1, 1], [true, true]);
        (CandidateNetwork network, PhaseForest[] forests) = Wire(held);
        LoopSet loops = LoopSet.Of(network, forests);
        Assert.Equal((1, 1, 2), (loops.Count, loops.VoltageLoopCount, loops.Repeats!.Count));
        (network, forests) = Wire(two);
        loops.Find(network, forests);
        Assert.Null(loops.Repeats);
        Assert.False(loops.HasMeshes);
    }

    [Fact]
    public void A_network_without_branches_has_no_loops()
    {
        (CandidateNetwork network, PhaseForest[] forests) = Wire(new KernelSketch(2, [], [], [new(0, 1)], [1], [true]));
        Assert.Equal(0, LoopSet.Of(network, forests).Count);
    }

    // its loops hold each branch as many times over as the mesh does
    [Fact]
    public void Loops_of_meshes_hold_what_the_meshes_carry()
    {
        (KernelSketch sketch, int[][] rows) = HeldCurrentMeshesTests.WithLaws([[1, 1, -1], [1, -1, 0]]);
        Assert.Equal(2, rows.Length);
        (CandidateNetwork network, PhaseForest[] forests) = Wire(sketch);
        LoopSet loops = LoopSet.Of(network, forests);
        Assert.Equal((true, 1, 2), (loops.HasMeshes, loops.MeshCount, loops.Count));
        int[] mesh = Assert.Single(HeldCurrentMeshes.Find(network, forests, default, []));
        for (int loop = 0; loop < loops.Count; loop++)
        {
            (int, int)[] expected = [.. HeldCurrentMeshes.Loop(network, forests[loops.Phase(loop)], mesh)];
            (int, int)[] found = [.. loops.Branches(loop).ToArray().Zip(loops.Signs(loop).ToArray()).GroupBy(e => e.First).Select(g => (g.Key, g.Sum(e => e.Second)))];
            Assert.Equal(expected, found);
        }
    }

    // where it rests in the phase that leaves it without a path, a held current is tied like any other
    [Fact]
    public void A_current_that_rests_needs_no_path()
    {
        KernelSketch sketch = new(3, [], [new(new(1, 0), IsGiven: true, IsCurrentHeld: true), new(new(2, 0), IsGiven: true, IsCurrentHeld: true)], [new(1, 0), new(2, 0)], [1, 1], [true, true, true, false]);
        (CandidateNetwork network, PhaseForest[] forests) = Wire(sketch);
        LoopSet loops = LoopSet.Of(network, forests, [false, false, false, true]);
        Assert.Equal((false, 2, 3), (loops.HasMeshes, loops.MeshCount, loops.Count));
        Assert.True(LoopSet.Of(network, forests, [false, true, false, false]).HasMeshes);
    }

    // the first current rests in the second phase, the other two are one another's return there
    [Fact]
    public void A_mesh_has_no_loop_in_a_phase_in_which_it_rests()
    {
        NetworkPort[] ports = [.. Enumerable.Range(1, 3).Select(node => new NetworkPort(new(node, 0), IsGiven: true, IsCurrentHeld: true))];
        KernelSketch sketch = new(4, [], ports, [new(1, 0), new(2, 0), new(3, 0), new(2, 3)], [1, 1], [true, true, true, false, false, false, false, true]);
        (CandidateNetwork network, PhaseForest[] forests) = Wire(sketch);
        LoopSet loops = LoopSet.Of(network, forests, [false, true, false, false, false, false]);
        Assert.Equal((true, 2, 3), (loops.HasMeshes, loops.MeshCount, loops.Count));
    }

    private static (CandidateNetwork Network, PhaseForest[] Forests) Wire(KernelSketch sketch)
    {
        CandidateNetwork network = new();
        network.Wire(sketch.NodeCount, sketch.Capacitors, sketch.Ports, sketch.Switches);
        int switches = sketch.Switches.Length;
        return (network, [.. Enumerable.Range(0, sketch.Weights.Length).Select(j => PhaseForest.Of(network, sketch.Closed.AsSpan(j * switches, switches)))]);
    }

    private static string Text(LoopSet loops) => string.Join("; ", Enumerable.Range(0, loops.Count).Select(l =>
        $"{loops.Phase(l)}/{loops.Equation(l)}: {string.Join(",", loops.Branches(l).ToArray().Zip(loops.Signs(l).ToArray(), (b, s) => s * (b + 1)))}"));
}
