using BenchmarkDotNet.Attributes;
using ScNet.Kernel;
using ScNet.Search;
using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Benchmarks;

/// <summary>
/// The search for all two-phase networks of four capacitors: the same pairs of loop spaces decided by the walk of the
/// atlas and one by one by the kernel's solver of candidates, and the whole atlas.
/// </summary>
public class AtlasSearch
{
    private const int Capacitors = 4;

    private readonly SignedPermutations _group = new(Capacitors);
    private readonly LoopSpaceOrbit[] _fixed;
    private readonly MovingOrbit[] _moving;
    private readonly List<(NodePair[] Switches, bool[] Closed)> _candidates = [];
    private readonly NodePair[] _capacitors = [.. Enumerable.Range(0, Capacitors).Select(c => new NodePair(Terminals.PositivePlate(c), Terminals.BottomPlate(c)))];
    private readonly NetworkPort[] _ports =
    [
        new NetworkPort(new NodePair(Terminals.Output, Terminals.Reference), IsGiven: false),
        new NetworkPort(new NodePair(Terminals.Input, Terminals.Reference), IsGiven: true),
    ];
    private readonly CandidateNetwork _network = new();
    private readonly CandidateSolver _solver = new();
    private readonly int[] _weights = [1, 1];

    /// <summary>Takes the spaces of three loops without symmetry with all spaces of two loops, so that all pairs differ.</summary>
    public AtlasSearch()
    {
        IReadOnlyList<LoopSpaceOrbit> orbits = LoopSpaceOrbits.Of(Capacitors, usingAll: true).Orbits;
        _moving = [.. orbits.Where(o => o.Space.Dimension == 2).Select(o => MovingOrbit.Of(o, _group))];
        _fixed = [.. orbits.Where(o => o.Space.Dimension == 3 && o.Generators.Length == 0)];
        int[] positions = new int[Capacitors];
        foreach (LoopSpaceOrbit orbit in _fixed)
        {
            foreach (MovingOrbit moving in _moving)
            {
                foreach (uint way in moving.Ways)
                {
                    int turns = MovingOrbit.Unpack(way, positions);
                    _candidates.Add(SwitchesOf(orbit.Wirings[0], moving.Orbit.Wirings[0].Moved(positions, turns)));
                }
            }
        }

        if (Walk() != _candidates.Count || Solver() == 0)
        {
            throw new InvalidOperationException($"The walk decides {Walk()} pairs, but there are {_candidates.Count}.");
        }
    }

    /// <summary>The pairs by the walk.</summary>
    [Benchmark(Baseline = true)]
    public long Walk()
    {
        PairWalk walk = new(Capacitors);
        Counter counter = new();
        foreach (LoopSpaceOrbit orbit in _fixed)
        {
            foreach (MovingOrbit moving in _moving)
            {
                walk.Run(orbit, moving, counter);
            }
        }

        return walk.PairCount;
    }

    /// <summary>The same pairs one by one.</summary>
    [Benchmark]
    public int Solver()
    {
        int solved = 0;
        foreach ((NodePair[] switches, bool[] closed) in _candidates)
        {
            _network.Wire(Terminals.Count(Capacitors), _capacitors, _ports, switches);
            solved += _solver.Solve(_network, closed, _weights) == NetworkStatus.Solved ? 1 : 0;
        }

        return solved;
    }

    /// <summary>The atlas of up to four capacitors, fronts and all.</summary>
    [Benchmark]
    public long Atlas() => Search.Atlas.Of(Capacitors).NetworkCount;

    // from the first terminal of each node to the others, those of the second phase behind those of the first
    private static (NodePair[] Switches, bool[] Closed) SwitchesOf(Wiring first, Wiring second)
    {
        NodePair[] ofFirst = [.. Of(first)], ofSecond = [.. Of(second)];
        bool[] isFirst = [.. Enumerable.Range(0, ofFirst.Length + ofSecond.Length).Select(s => s < ofFirst.Length)];
        return ([.. ofFirst, .. ofSecond], [.. isFirst, .. isFirst.Select(f => !f)]);

        static IEnumerable<NodePair> Of(Wiring wiring)
        {
            for (int t = 1; t < wiring.TerminalCount; t++)
            {
                int earlier = Enumerable.Range(0, t).FirstOrDefault(e => wiring.Joins(e, t), t);
                if (earlier < t)
                {
                    yield return new NodePair(earlier, t);
                }
            }
        }
    }

    private sealed class Counter : IPairVisitor
    {
        public long Count { get; private set; }

        public void Visit(PairWalk walk, int place) => Count++;
    }
}
