using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class CandidateSolverTests
{
    // one workspace for many networks, as a search uses it
    private sealed class Workspace
    {
        public CandidateNetwork Network { get; } = new();

        public CandidateSolver Solver { get; } = new();

        public NetworkStatus Solve(KernelSketch sketch)
        {
            Network.Wire(sketch.NodeCount, sketch.Capacitors, sketch.Ports, sketch.Switches);
            return Solver.Solve(Network, sketch.Closed, sketch.Weights);
        }
    }

    [Fact]
    public void The_outcome_is_that_of_the_ranks_of_the_plain_equations() =>
        ForAll((sketch, space) => Assert.Equal(sketch.Status(), space.Solve(sketch)));

    [Fact]
    public void Voltages_add_up_round_every_loop_of_every_phase() => ForAll((sketch, space) =>
    {
        if (space.Solve(sketch) is not (NetworkStatus.Solved or NetworkStatus.Circulating))
        {
            return;
        }

        for (int given = sketch.FirstGiven; given < sketch.BranchCount; given++)
        {
            Fraction[] voltages = [.. Enumerable.Range(0, sketch.BranchCount).Select(b => space.Solver.Voltage(b, given)).Select(v => new Fraction(v.Numerator, v.Denominator))];
            var average = new Fraction[sketch.BranchCount];
            for (int phase = 0; phase < sketch.Weights.Length; phase++)
            {
                Fraction?[] potentials = Potentials(sketch, voltages, phase);
                for (int b = 0; b < sketch.BranchCount; b++)
                {
                    Fraction difference = potentials[sketch.Ends(b).First]!.Value - potentials[sketch.Ends(b).Second]!.Value;
                    average[b] += difference * sketch.Weights[phase];
                    Assert.True(sketch.IsCurrentHeld(b) || difference == voltages[b]);
                }
            }

            for (int b = 0; b < sketch.BranchCount; b++)
            {
                Assert.Equal(voltages[b] * sketch.Weights.Sum(), average[b]);
            }
        }
    });

    [Fact]
    public void Charges_obey_the_current_law_balance_and_the_proportion_of_the_phases() => ForAll((sketch, space) =>
    {
        if (space.Solve(sketch) is not (NetworkStatus.Solved or NetworkStatus.Circulating))
        {
            return;
        }

        int phases = sketch.Weights.Length;
        for (int port = sketch.Capacitors.Length; port < sketch.FirstGiven; port++)
        {
            var charges = new long[sketch.BranchCount * phases];
            long unit = space.Solver.Charges(port, charges);
            Assert.NotEqual(0, unit);
            for (int b = 0; b < sketch.FirstGiven; b++)
            {
                Assert.Equal(b == port ? unit : 0, Enumerable.Range(0, phases).Sum(j => charges[(b * phases) + j]));
            }

            for (int phase = 0; phase < phases; phase++)
            {
                int[] joined = sketch.Joined(phase);
                var sum = new long[sketch.NodeCount];
                for (int b = 0; b < sketch.BranchCount; b++)
                {
                    long charge = charges[(b * phases) + phase];
                    sum[joined[sketch.Ends(b).First]] += charge;
                    sum[joined[sketch.Ends(b).Second]] -= charge;
                    Assert.True(!sketch.IsCurrentHeld(b) || charge * sketch.Weights[0] == charges[b * phases] * sketch.Weights[phase]);
                }

                Assert.All(sum, s => Assert.Equal(0, s));
            }
        }
    });

    [Fact]
    public void The_equations_of_a_phase_are_the_same_where_the_loops_span_the_same_space()
    {
        // two switches in series short the same branch as one; parallel capacitors hold one voltage whichever way they are joined
        CandidateNetwork network = new();
        CandidateSolver solver = new();
        NetworkPort[] ports = [new(new(2, 0), IsGiven: false), new(new(1, 0), IsGiven: true)];
        network.Wire(5, [new(1, 3), new(3, 2)], ports, [new(3, 4), new(4, 2), new(3, 2)]);
        int[] direct = solver.PhaseEquations(network, [false, false, true]).ToArray();
        int[] detour = solver.PhaseEquations(network, [true, true, false]).ToArray();
        Assert.Equal(direct, detour);
        Assert.Equal([1, 0, 1, -1, 0, 1, 0, 0], direct);
    }

    [Fact]
    public void Weights_that_might_overflow_are_told()
    {
        CandidateNetwork network = new();
        NetworkPort[] ports = [new(new(2, 0), IsGiven: false, IsCurrentHeld: true), new(new(1, 0), IsGiven: true)];
        network.Wire(3, [new(1, 2)], ports, [new(2, 0)]);
        Assert.Equal(NetworkStatus.Overflown, new CandidateSolver().Solve(network, [false, false, false], [1, CandidateSolver.LargestWeight + 1, 1]));
    }

    [Fact]
    public void Once_warm_a_candidate_is_built_and_solved_without_allocation()
    {
        Workspace space = new();
        KernelSketch sketch = SeriesParallel();
        var charges = new long[sketch.BranchCount * 2];
        long unit = 0;
        for (int k = 0; k < 100; k++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            NetworkStatus status = space.Solve(sketch);
            unit = space.Solver.Charges(4, charges);
            Assert.True(k == 0 || GC.GetAllocatedBytesForCurrentThread() == before, "The workspace allocated.");
            Assert.Equal(NetworkStatus.Solved, status);
        }

        Assert.Equal((1, 5), space.Solver.Voltage(4, 5));
        Assert.Equal(5, unit);
        Assert.Equal([1, -1, 1, -1, 1, -1, 1, -1, 1, 4, -1, 0], charges);
    }

    // Four capacitors in series with the output in phase 1, in parallel with it in phase 2: ratio 1/5 (common practice, no source).
    private static KernelSketch SeriesParallel()
    {
        NodePair[] capacitors = [.. Enumerable.Range(0, 4).Select(c => new NodePair(3 + (2 * c), 4 + (2 * c)))];
        NodePair[] series = [new(1, 3), new(4, 5), new(6, 7), new(8, 9), new(10, 2)];
        NodePair[] parallel = [.. capacitors.SelectMany(c => new NodePair[] { new(c.First, 2), new(c.Second, 0) })];
        bool[] closed = [.. series.Select(_ => true), .. parallel.Select(_ => false), .. series.Select(_ => false), .. parallel.Select(_ => true)];
        return new KernelSketch(
            11, capacitors, [new(new(2, 0), IsGiven: false), new(new(1, 0), IsGiven: true)], [.. series, .. parallel], [1, 1], closed);
    }

    private static void ForAll(Action<KernelSketch, Workspace> law)
    {
        Workspace[] spaces = [.. Enumerable.Range(0, 1).Select(_ => new Workspace())];
        KernelSketch.Any.Holds(
            sketch =>
            {
                lock (spaces)
                {
                    law(sketch, spaces[0]);
                }
            },
            3000);
    }

    // By going along the branches until nothing changes; nodes that no held voltage reaches start a piece of their own.
    private static Fraction?[] Potentials(KernelSketch sketch, Fraction[] voltages, int phase)
    {
        int[] joined = sketch.Joined(phase);
        var potentials = new Fraction?[sketch.NodeCount];
        for (int start = 0; start < sketch.NodeCount; start++)
        {
            potentials[joined[start]] ??= Fraction.Zero;
            for (int round = 0; round < sketch.NodeCount; round++)
            {
                for (int b = 0; b < sketch.BranchCount; b++)
                {
                    int first = joined[sketch.Ends(b).First], second = joined[sketch.Ends(b).Second];
                    if (!sketch.IsCurrentHeld(b))
                    {
                        potentials[first] ??= potentials[second] + voltages[b];
                        potentials[second] ??= potentials[first] - voltages[b];
                    }
                }
            }
        }

        return [.. joined.Select(n => potentials[n])];
    }
}
