using CsCheck;
using QuikGraph;
using QuikGraph.Algorithms;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>Laws of loops and cuts (Desoer and Kuh, Basic Circuit Theory, 1969; from memory) on random networks.</summary>
[Trait("Kind", "Law")]
public class PhaseGraphLaws
{
    private static void Sample(Action<PhaseGraph> check) => AnyNetworks.Gen.Holds(
        sample =>
        {
            Converter converter = sample.Build();
            foreach (Phase phase in converter.Phases)
            {
                check(PhaseGraph.Of(converter, converter.Modes[0], phase.Number));
            }
        },
        count: 500,
        print: s => s.ToString());

    [Fact]
    public void There_are_edges_less_vertices_plus_components_loops_and_the_rest_are_cuts() => Sample(graph =>
    {
        Assert.Equal(graph.Edges.Count - graph.Groups.Count + graph.ComponentCount, graph.Loops.Count);
        Assert.Equal(graph.Groups.Count - graph.ComponentCount, graph.Cuts.Count);
        Assert.Equal(graph.SpanningForest, graph.Cuts.Select(c => c.TreeEdge));
        Assert.Equal(graph.Edges.Except(graph.SpanningForest), graph.Loops.Select(l => l.Chord));
    });

    [Fact]
    public void Every_loop_is_a_closed_walk_that_takes_no_edge_twice() => Sample(graph =>
    {
        foreach (FundamentalLoop loop in graph.Loops)
        {
            int at = Start(loop.Edges[0]);
            foreach (SignedEdge step in loop.Edges)
            {
                Assert.Equal(at, Start(step));
                at = End(step);
            }

            Assert.Equal(Start(loop.Edges[0]), at);
            Assert.Equal(loop.Edges.Count, loop.Edges.Select(e => e.Edge).Distinct().Count());
            Assert.Equal(loop.Edges.Count, loop.Edges.Select(Start).Distinct().Count());
        }
    });

    [Fact]
    public void Loops_and_cuts_are_orthogonal() => Sample(graph =>
    {
        foreach (FundamentalLoop loop in graph.Loops)
        {
            Assert.All(graph.Cuts, cut => Assert.Equal(0, Product(loop.Edges, cut.Edges, e => e.Name + e.Kind)));
        }
    });

    [Fact]
    public void A_cut_holds_exactly_the_edges_that_lead_into_its_groups() => Sample(graph =>
    {
        foreach (FundamentalCut cut in graph.Cuts)
        {
            Assert.Equal(
                graph.Edges.Where(e => cut.Groups.Contains(e.Source) != cut.Groups.Contains(e.Target)).ToHashSet(),
                cut.Edges.Select(e => e.Edge).ToHashSet());
            bool leadsOut = cut.Groups.Contains(cut.TreeEdge.Source);
            Assert.All(cut.Edges, e => Assert.Equal(leadsOut, cut.Groups.Contains(Start(e))));
        }
    });

    [Fact]
    public void Components_are_those_that_the_graph_library_finds() => Sample(graph =>
    {
        Dictionary<int, int> components = [];
        Assert.Equal(graph.ToUndirectedGraph().ConnectedComponents(components), graph.ComponentCount);
        foreach (PhaseGroup a in graph.Groups)
        {
            Assert.All(graph.Groups, b => Assert.Equal(components[a.Index] == components[b.Index], a.Component == b.Component));
        }
    });

    [Fact]
    public void Spanning_trees_of_the_graph_library_are_as_large_on_these_multigraphs() => Sample(graph =>
    {
        PhaseEdge[] tree = [.. graph.ToUndirectedGraph().MinimumSpanningTreeKruskal(_ => 1)];
        Assert.Equal(graph.SpanningForest.Count, tree.Length);
        UndirectedGraph<int, PhaseEdge> alone = new();
        alone.AddVertexRange(graph.Groups.Select(g => g.Index));
        alone.AddEdgeRange(tree);
        Assert.Equal(graph.ComponentCount, alone.ConnectedComponents(new Dictionary<int, int>()));
    });

    [Fact]
    public void Groups_are_the_components_of_the_closed_switches_and_paths_exist_within_them_only() => Sample(graph =>
    {
        Converter converter = graph.Converter;
        foreach (string from in converter.Nodes)
        {
            foreach (string to in converter.Nodes)
            {
                bool isTied = graph.TryFindClosedPath(from, to, out IReadOnlyList<Switch> path);
                Assert.Equal(graph.GroupOf(from) == graph.GroupOf(to), isTied);
                string at = from;
                foreach (Switch step in path)
                {
                    Assert.True(graph.Mode.ClosedPhases[converter.Switches.PositionOf(step.Name)].Contains(graph.Phase.Number));
                    at = step.FirstNode == at ? step.SecondNode : step.FirstNode;
                }

                Assert.Equal(isTied ? to : from, at);
            }
        }
    });

    [Fact]
    public void Removing_an_edge_splits_its_component_exactly_where_it_dangles() => Sample(graph =>
    {
        HashSet<PhaseEdge> dangling = [.. graph.Dangling];
        foreach (PhaseEdge edge in graph.Edges)
        {
            UndirectedGraph<int, PhaseEdge> without = graph.ToUndirectedGraph();
            without.RemoveEdge(edge);
            int count = without.ConnectedComponents(new Dictionary<int, int>());
            Assert.Equal(dangling.Contains(edge), count == graph.ComponentCount + 1);
        }
    });

    [Fact]
    public void The_analysis_runs_on_the_same_loops() => AnyNetworks.Gen.Where(s => s.Load == LoadKind.Stiff).Holds(sample =>
    {
        Converter converter = sample.Build();
        SwitchedNetwork network = converter.Network;
        PhaseForest[] forests = [.. Enumerable.Range(0, network.PhaseCount).Select(j => PhaseForest.Of(network, network.ClosedIn(0, j)))];
        LoopSet loops = LoopSet.Of(network, forests);
        for (int l = 0; l < loops.Count; l++)
        {
            PhaseGraph graph = PhaseGraph.Of(converter, converter.Modes[0], loops.Phase(l) + 1);
            PhaseEdge chord = graph.Edges[loops.Branches(l)[0]];
            FundamentalLoop same = Assert.Single(graph.Loops, loop => loop.Chord == chord);
            var expected = loops.Branches(l).ToArray().Zip(loops.Signs(l).ToArray(), (b, s) => new SignedEdge(graph.Edges[b], s));
            Assert.Equal(expected.ToHashSet(), same.Edges.ToHashSet());
        }
    });

    [Fact]
    public void Order_and_names_of_the_elements_change_nothing() => AnyNetworks.Gen.Select(Gen.Int[0, 500]).Holds((sample, seed) =>
    {
        Random random = new(seed);
        Converter one = sample.Build();
        var capacitors = sample.Capacitors.ToArray();
        var switches = sample.Switches.ToArray();
        random.Shuffle(capacitors);
        random.Shuffle(switches);
        Converter two = sample.Build(capacitors, switches, "z");
        for (int phase = 1; phase <= sample.Phases; phase++)
        {
            PhaseGraph left = PhaseGraph.Of(one, one.Modes[0], phase), right = PhaseGraph.Of(two, two.Modes[0], phase);
            Assert.Equal(Partition(left), Partition(right));
            Assert.Equal(Names(left.Shorted), Names(right.Shorted));
            Assert.Equal(Names(left.Floating), Names(right.Floating));
            Assert.Equal(Names(left.Dangling), Names(right.Dangling));

            // loops and cuts of different trees span the same spaces
            Assert.Equal(left.Loops.Count, right.Loops.Count);
            Assert.All(left.Loops, loop => Assert.All(right.Cuts, cut => Assert.Equal(0, Product(loop.Edges, cut.Edges, e => e.Name + e.Kind))));
            Assert.All(right.Loops, loop => Assert.All(left.Cuts, cut => Assert.Equal(0, Product(loop.Edges, cut.Edges, e => e.Name + e.Kind))));
        }
    });

    private static int Start(SignedEdge step) => step.Sign > 0 ? step.Edge.Source : step.Edge.Target;

    private static int End(SignedEdge step) => step.Sign > 0 ? step.Edge.Target : step.Edge.Source;

    private static int Product(IEnumerable<SignedEdge> loop, IEnumerable<SignedEdge> cut, Func<PhaseEdge, string> key)
    {
        Dictionary<string, int> signs = cut.ToDictionary(e => key(e.Edge), e => e.Sign);
        return loop.Sum(e => e.Sign * signs.GetValueOrDefault(key(e.Edge)));
    }

    private static string Partition(PhaseGraph graph) => string.Join(" | ", graph.Groups
        .Select(g => string.Join(",", g.Nodes.Select(n => n.Replace('z', 'n')).Order(StringComparer.Ordinal))).Order(StringComparer.Ordinal));

    private static string Names(IEnumerable<PhaseEdge> edges) => string.Join(",", edges.Select(e => e.Name).Order(StringComparer.Ordinal));
}
