using QuikGraph;
using QuikGraph.Algorithms;
using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

public class PhaseGraphTests
{
    private static readonly Converter s_half = Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n")
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Build();

    private static PhaseGraph Of(Converter converter, int phase) => PhaseGraph.Of(converter, converter.Modes[0], phase);

    [Fact]
    public void The_drawn_example_is_what_the_graph_says()
    {
        PhaseGraph graph = Of(s_half, 1);
        Assert.Equal([["gnd"], ["vin", "p"], ["vout", "n"]], graph.Groups.Select(g => g.Nodes));
        Assert.Equal("+fly +vout -vin", Assert.Single(graph.Loops).ToString());
        Assert.Equal(["vin", "vout"], graph.SpanningForest.Select(e => e.Name));
        Assert.Equal(["+vin +fly", "+vout -fly"], graph.Cuts.Select(c => c.ToString()));
        Assert.Equal([graph.GroupOf("p").Index], graph.Cuts[0].Groups);
        Assert.Equal("Half, mode default, phase 1: 3 groups, 3 edges, 1 components", graph.ToString());
        Assert.Equal("1 {vin, p}", graph.GroupOf("p").ToString());
        Assert.Equal("fly (1 – 2)", graph.Edges[0].ToString());
        Assert.Equal([PhaseEdgeKind.Capacitor, PhaseEdgeKind.Output, PhaseEdgeKind.Input], graph.Edges.Select(e => e.Kind));
        Assert.Equal([0, null, null], graph.Edges.Select(e => e.Index));
        Assert.Same(s_half.Phases[0], graph.Phase);
    }

    [Fact]
    public void The_phase_of_an_analysis_is_the_one_of_its_mode()
    {
        ModeAnalysis analysis = ModeAnalysis.Of(s_half);
        Assert.Equal(["gnd n", "vin", "p vout"], PhaseGraph.Of(analysis, 2).Groups.Select(g => string.Join(" ", g.Nodes.Order(StringComparer.Ordinal))));
        Assert.Equal("+fly +vout -vin", Assert.Single(PhaseGraph.Of(analysis, 1).Loops).ToString());
        Assert.Equal(Of(s_half, 2).ToString(), PhaseGraph.Of(analysis, 2).ToString());
    }

    [Fact]
    public void Shorted_floating_and_dangling_elements_are_found()
    {
        Converter converter = Converter.Create("oddities").Input("vin").Output("vout")
            .Capacitor("shorted", "a", "b").Capacitor("floating", "x", "y").Capacitor("parallel", "x", "y")
            .Capacitor("lone", "u", "v").Capacitor("dangling", "vin", "w")
            .Switch("s1", "a", "b", on: 1).Switch("s2", "a", "gnd", on: 1).Switch("s3", "vin", "vout", on: 1)
            .Build();
        PhaseGraph graph = Of(converter, 1);
        Assert.Equal(["shorted"], graph.Shorted.Select(e => e.Name));
        Assert.Equal(["floating", "parallel", "lone"], graph.Floating.Select(e => e.Name));
        Assert.Equal(["lone", "dangling"], graph.Dangling.Select(e => e.Name));
        Assert.Equal(3, graph.ComponentCount);
        Assert.Equal("+shorted", graph.Loops[0].ToString());
        Assert.True(graph.GroupOf("u").Floats);
        Assert.False(graph.GroupOf("w").Floats);
    }

    [Fact]
    public void A_load_current_is_no_edge()
    {
        Converter converter = Converter.Create("soft").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", "gnd").Switch("s1", "vin", "vout", on: 1).Build();
        PhaseGraph graph = Of(converter, 1);
        Assert.Equal(["out", "vin"], graph.Edges.Select(e => e.Name));
        Assert.Equal(["vin"], graph.SpanningForest.Select(e => e.Name));
        Assert.Equal("+out -vin", Assert.Single(graph.Loops).ToString());
    }

    [Fact]
    public void The_shortest_chain_of_closed_switches_is_named_in_order()
    {
        Converter converter = Converter.Create("chain").Input("vin").Output("vout")
            .Switch("long1", "vin", "a", on: 1).Switch("long2", "a", "b", on: 1).Switch("long3", "b", "c", on: 1)
            .Switch("short", "a", "c", on: 1).Switch("self", "a", "a", on: 1).Switch("twin", "c", "a", on: 1)
            .Switch("open", "c", "vout", on: 2)
            .Build();
        PhaseGraph graph = Of(converter, 1);
        Assert.True(graph.TryFindClosedPath("c", "vin", out IReadOnlyList<Switch> path));
        Assert.Equal(2, path.Count);
        Assert.Contains(path[0].Name, new[] { "short", "twin" });
        Assert.Equal("long1", path[1].Name);
        Assert.False(graph.TryFindClosedPath("vin", "vout", out path));
        Assert.Empty(path);
        Assert.True(graph.TryFindClosedPath("b", "b", out path));
        Assert.Empty(path);
    }

    [Fact]
    public void The_graph_handed_out_is_the_callers_own()
    {
        PhaseGraph graph = Of(s_half, 2);
        UndirectedGraph<int, PhaseEdge> own = graph.ToUndirectedGraph();
        own.RemoveVertex(0);
        Assert.Equal(3, graph.ToUndirectedGraph().VertexCount);
        Assert.Equal(2, own.ConnectedComponents(new Dictionary<int, int>()));
    }

    [Fact]
    public void Misuse_is_an_argument_exception_that_says_what_was_expected()
    {
        Converter other = Converter.Create("other").Input("vin").Output("vout").Switch("s", "vin", "vout", on: 1).Build();
        Assert.Throws<ArgumentException>(() => PhaseGraph.Of(s_half, other.Modes[0], 1));
        ArgumentOutOfRangeException range = Assert.Throws<ArgumentOutOfRangeException>(() => Of(s_half, 3));
        Assert.Contains("from 1 to 2", range.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentOutOfRangeException>(() => Of(s_half, 0));
        Assert.Throws<ArgumentOutOfRangeException>("phaseNumber", () => PhaseGraph.Of(ModeAnalysis.Of(s_half), 0));
        Assert.Throws<ArgumentOutOfRangeException>("phaseNumber", () => PhaseGraph.Of(ModeAnalysis.Of(s_half), 3));
        Assert.Contains("no node 'q'", Assert.Throws<ArgumentException>(() => Of(s_half, 1).GroupOf("q")).Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Of(s_half, 1).TryFindClosedPath("q", "p", out _));
    }
}
