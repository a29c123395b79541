using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

/// <summary>Combinations of held currents against Kirchhoff's current law of every piece and phase, by dense fractions.</summary>
[Trait("Kind", "Law")]
public class HeldCurrentMeshesTests
{
    // some ports hold no current; most phases leave several pieces
    private static readonly Gen<(KernelSketch Sketch, bool[] Rests)> s_networks =
        from nodes in Gen.Int[3, 8]
        let pair = Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], (a, b) => new NodePair(a, b))
        from capacitors in pair.Array[0, 2]
        from ports in Gen.Select(pair, Gen.Int[0, 5], (p, kind) => new NetworkPort(p, IsGiven: true, IsCurrentHeld: kind > 0)).Array[1, 6]
        from switches in pair.Array[0, 4]
        from phases in Gen.Int[1, 4]
        from closed in Gen.Bool.Array[switches.Length * phases]
        from rests in Gen.Frequency((3, Gen.Const(false)), (1, Gen.Const(true))).Array[ports.Length * phases]
        select (new KernelSketch(nodes, capacitors, ports, switches, [.. Enumerable.Repeat(1, phases)], closed), rests);

    [Fact]
    public void Meshes_are_all_that_the_current_law_leaves_free() => ForAll((sketch, rests, found) =>
    {
        Fraction[][] law = [.. Enumerable.Range(0, sketch.Weights.Length).SelectMany(j => Law(sketch, rests, j))];
        int held = Held(sketch).Length;
        Assert.Equal(held - DenseFractions.Rank(law), found.Meshes.Count);
        Assert.Equal(found.Meshes.Count, DenseFractions.Rank([.. found.Meshes.Select(m => m.Select(v => new Fraction(v)).ToArray())]));
        Assert.All(found.Meshes, mesh => Assert.All(law, row => Assert.True(Flow(row, mesh).IsZero)));
    });

    [Fact]
    public void A_current_that_can_but_be_zero_is_told_with_the_phases_that_make_it_so() => ForAll((sketch, rests, found) =>
    {
        Fraction[][][] laws = [.. Enumerable.Range(0, sketch.Weights.Length).Select(j => Law(sketch, rests, j))];
        Fraction[][] all = [.. laws.SelectMany(l => l)];
        int[] held = Held(sketch);
        List<(int, int)> expected = [];
        for (int k = 0; k < held.Length; k++)
        {
            Fraction[] own = [.. Enumerable.Range(0, held.Length).Select(c => c == k ? Fraction.One : Fraction.Zero)];
            if (IsForced(all, own))
            {
                int[] alone = [.. Enumerable.Range(0, laws.Length).Where(j => IsForced(laws[j], own))];
                int first = Array.FindIndex(laws, l => l.Any(row => !row[k].IsZero));
                expected.AddRange((alone.Length > 0 ? alone : [first]).Select(j => (j, held[k])));
            }
        }

        Assert.Equal(expected.Order(), found.Interruptions.Order());
    });

    [Fact]
    public void The_loop_of_a_mesh_leaves_no_charge_on_any_node() => ForAll((sketch, rests, found) =>
    {
        int[] held = Held(sketch);
        for (int phase = 0; phase < found.Forests.Length; phase++)
        {
            int[] joined = sketch.Joined(phase);
            Fraction[][] full = Law(sketch, [.. rests.Select(_ => false)], phase);
            foreach (int[] mesh in found.Meshes)
            {
                List<(int Branch, int Amount)> loop = HeldCurrentMeshes.Loop(found.Network, found.Forests[phase], mesh);

                // a mesh that some current of it rests in does not flow
                Assert.Equal(full.All(row => Flow(row, mesh).IsZero), loop.Count > 0);
                var sum = new int[sketch.NodeCount];
                foreach ((int branch, int amount) in loop)
                {
                    Assert.NotEqual(0, amount);
                    sum[joined[sketch.Ends(branch).First]] += amount;
                    sum[joined[sketch.Ends(branch).Second]] -= amount;
                }

                Assert.All(sum, s => Assert.Equal(0, s));
                Assert.True(loop.Count == 0 || held.Select((b, k) => loop.Where(l => l.Branch == b).Sum(l => l.Amount) == mesh[k]).All(same => same));
                Assert.Equal(loop.Count, loop.Select(l => l.Branch).Distinct().Count());
                Assert.Equal(loop.Select(l => l.Branch).Where(b => !held.Contains(b)).Order(), loop.Select(l => l.Branch).Where(b => !held.Contains(b)));
            }
        }
    });

    // each phase one row of 1, 0 and -1 over the currents, of any such rows; the pivots are then larger than 1 too
    [Fact]
    public void Meshes_of_any_rows_are_whole_numbers_that_satisfy_them()
    {
        int larger = 0;
        Gen.Int[2, 6].SelectMany(held => Gen.Int[-1, 1].Array[held].Array[1, held - 1]).Holds(
            laws =>
            {
                (KernelSketch sketch, int[][] rows) = WithLaws(laws);
                CandidateNetwork network = new();
                network.Wire(sketch.NodeCount, sketch.Capacitors, sketch.Ports, sketch.Switches);
                int switches = sketch.Switches.Length;
                PhaseForest[] forests = [.. rows.Select((_, j) => PhaseForest.Of(network, sketch.Closed.AsSpan(j * switches, switches)))];
                List<int[]> meshes = HeldCurrentMeshes.Find(network, forests, default, []);
                Fraction[][] exact = [.. rows.Select(r => r.Select(v => new Fraction(v)).ToArray())];
                Assert.Equal(rows[0].Length - DenseFractions.Rank(exact), meshes.Count);
                Assert.Equal(meshes.Count, DenseFractions.Rank([.. meshes.Select(m => m.Select(v => new Fraction(v)).ToArray())]));
                Assert.All(meshes, mesh => Assert.All(exact, row => Assert.True(Flow(row, mesh).IsZero)));
                Assert.All(meshes, mesh => Assert.Equal(1, mesh.Aggregate(0, (g, v) => v == 0 ? g : g == 0 ? Math.Abs(v) : Integers.Gcd(g, v))));
                larger += meshes.Any(m => m.Any(v => Math.Abs(v) > 1)) ? 1 : 0;
            },
            500);
        Assert.True(LawCheck.IsOneCase || larger > 20, $"{larger}");
    }

    /// <summary>Held currents between nodes of their own, each of which leads into one piece, out of it or past it in each phase.</summary>
    internal static (KernelSketch Sketch, int[][] Rows) WithLaws(int[][] rows)
    {
        // node 1 is the piece; current k flows from node 2 + 2k to node 3 + 2k
        int held = rows[0].Length;
        NetworkPort[] ports = [.. Enumerable.Range(0, held).Select(k => new NetworkPort(new(2 + (2 * k), 3 + (2 * k)), IsGiven: true, IsCurrentHeld: true))];
        NodePair[] switches = [.. Enumerable.Range(2, 2 * held).SelectMany(node => new NodePair[] { new(node, 0), new(node, 1) })];
        bool[] closed = [.. rows.SelectMany(row => row.SelectMany(v => new[] { v >= 0, v < 0, v <= 0, v > 0 }))];
        return (new KernelSketch(2 + (2 * held), [], ports, switches, [.. rows.Select(_ => 1)], closed), rows);
    }

    // the cuts of one phase give amounts of 1 and -1 alone, those of several phases together larger ones too
    private static void ForAll(Action<KernelSketch, bool[], Found> law) => s_networks.Holds(
        (sketch, rests) =>
        {
            CandidateNetwork network = new();
            network.Wire(sketch.NodeCount, sketch.Capacitors, sketch.Ports, sketch.Switches);
            int switches = sketch.Switches.Length;
            PhaseForest[] forests = [.. Enumerable.Range(0, sketch.Weights.Length).Select(j => PhaseForest.Of(network, sketch.Closed.AsSpan(j * switches, switches)))];
            rests = rests[..(Held(sketch).Length * forests.Length)];
            List<(int Phase, int Branch)> interruptions = [];
            law(sketch, rests, new Found(network, forests, HeldCurrentMeshes.Find(network, forests, rests, interruptions), interruptions));
        },
        1500);

    private sealed record Found(NetworkGraph Network, PhaseForest[] Forests, List<int[]> Meshes, List<(int Phase, int Branch)> Interruptions);

    private static int[] Held(KernelSketch sketch) => [.. Enumerable.Range(0, sketch.BranchCount).Where(sketch.IsCurrentHeld)];

    // a row for each piece of a phase that closed switches and held voltages join: what the held currents bring into it
    private static Fraction[][] Law(KernelSketch sketch, bool[] rests, int phase)
    {
        int[] joined = sketch.Joined(phase, byBranches: true), held = Held(sketch);
        return [.. joined.Distinct().Select(piece => held.Select((b, k) => rests.Length > 0 && rests[(k * sketch.Weights.Length) + phase]
            ? Fraction.Zero
            : new Fraction((joined[sketch.Ends(b).Second] == piece ? 1 : 0) - (joined[sketch.Ends(b).First] == piece ? 1 : 0))).ToArray())];
    }

    private static Fraction Flow(Fraction[] row, int[] mesh) => row.Select((v, k) => v * mesh[k]).Aggregate(Fraction.Zero, (a, b) => a + b);

    private static bool IsForced(Fraction[][] law, Fraction[] own) => DenseFractions.Rank([.. law, own]) == DenseFractions.Rank(law);
}
