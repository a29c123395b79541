using QuikGraph;
using QuikGraph.Algorithms.Observers;
using QuikGraph.Algorithms.Search;

namespace ScNet.Analysis;

/// <summary>The closed switches of one phase as a graph over the nodes, and shortest chains in it.</summary>
/// <remarks>
/// QuikGraph's breadth-first search marks vertices, not pairs of vertices, so parallel switches and a
/// switch with both terminals on one node do it no harm. Cost: linear in nodes and switches per search.
/// </remarks>
internal sealed class ClosedSwitchPaths
{
    private readonly UndirectedGraph<string, TaggedEdge<string, Switch>> _graph = new(allowParallelEdges: true);

    public ClosedSwitchPaths(Converter converter, Mode mode, int phaseNumber)
    {
        _graph.AddVertexRange(converter.Nodes);
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch closed = converter.Switches[s];
            if (mode.ClosedPhases[s].Contains(phaseNumber))
            {
                _graph.AddEdge(new TaggedEdge<string, Switch>(closed.FirstNode, closed.SecondNode, closed));
            }
        }
    }

    /// <summary>The switches of a shortest chain, none where there is no chain.</summary>
    public IReadOnlyList<Switch> Find(string from, string to)
    {
        UndirectedBreadthFirstSearchAlgorithm<string, TaggedEdge<string, Switch>> search = new(_graph);
        UndirectedVertexPredecessorRecorderObserver<string, TaggedEdge<string, Switch>> predecessors = new();
        using (predecessors.Attach(search))
        {
            search.Compute(from);
        }

        return predecessors.TryGetPath(to, out IEnumerable<TaggedEdge<string, Switch>> path) ? [.. path.Select(e => e.Tag)] : [];
    }
}
