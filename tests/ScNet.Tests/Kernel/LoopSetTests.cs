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
