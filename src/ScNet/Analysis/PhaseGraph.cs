using QuikGraph;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// One phase of a mode as a graph for people and for diagnoses: nodes that closed switches tie together
/// are one group, and capacitors, the input and a stiff output are the edges between groups.
/// </summary>
/// <remarks>
/// <para>
/// Phase 1 of a halving converter. The closed switches s1 and s2 make groups of vin and p, and of n and
/// vout; fly closes a loop with both ports:
/// </para>
/// <code>
///   vin ──s1── p ──fly── n ──s2── vout          {vin, p} ──fly── {vout, n}
///    │                             │     =>         │                │
///   (+)                          (load)            vin             vout
///    │                             │                └──── {gnd} ─────┘
///   gnd ───────────────────────── gnd
///
///   graph.Loops[0]  =>  +fly +vout -vin          graph.Cuts[0]  =>  +vin +fly
/// </code>
/// <para>
/// Groups, components and spanning forest are those on which the analysis itself runs, so that what is
/// shown is what was computed; loops and cuts are read off that forest here, since the graph library has
/// none for graphs with parallel edges and edges from a group to itself. Its connected components, spanning trees
/// and searches are sound on such graphs: <see cref="ToUndirectedGraph"/> gives the graph for them, and
/// <see cref="TryFindClosedPath"/> uses its breadth-first search.
/// </para>
/// <para>
/// Cost: time and memory linear in nodes, switches and edges, and in the total length of loops and cuts
/// when these are asked for. Source: C. A. Desoer and E. S. Kuh, "Basic Circuit Theory", McGraw-Hill,
/// 1969, on the fundamental loops and cut sets of a tree (from memory).
/// </para>
/// </remarks>
public sealed class PhaseGraph
{
    private readonly PhaseForest _forest;
    private readonly PhaseEdge[] _edges;
    private readonly Lazy<IReadOnlyList<FundamentalLoop>> _loops;
    private readonly Lazy<IReadOnlyList<FundamentalCut>> _cuts;
    private readonly Lazy<ClosedSwitchPaths> _paths;

    private PhaseGraph(Converter converter, Mode mode, int phaseNumber, PhaseForest forest)
    {
        SwitchedNetwork network = converter.Network;
        Converter = converter;
        Mode = mode;
        Phase = converter.Phases[phaseNumber - 1];
        _forest = forest;
        Groups = [.. Enumerable.Range(0, _forest.GroupCount).Select(g => new PhaseGroup(
            g, _forest.Component[g], [.. _forest.Members(g).ToArray().Order().Select(n => converter.Nodes[n])]))];
        _edges = MakeEdges(converter, _forest);
        ForestWalks walks = new(_forest, _edges);
        SpanningForest = walks.TreeEdges;
        Edges = Array.AsReadOnly(_edges);
        _loops = new(() => Array.AsReadOnly(walks.Loops()));
        _cuts = new(() => Array.AsReadOnly(walks.Cuts()));
        _paths = new(() => new ClosedSwitchPaths(converter, mode, phaseNumber));
    }

    /// <summary>The converter.</summary>
    public Converter Converter { get; }

    /// <summary>The mode.</summary>
    public Mode Mode { get; }

    /// <summary>The phase.</summary>
    public Phase Phase { get; }

    /// <summary>The vertices: which nodes are tied together; group 0 holds the reference node.</summary>
    public IReadOnlyList<PhaseGroup> Groups { get; }

    /// <summary>The edges: every capacitor in the order of <see cref="Converter.Capacitors"/>, a stiff output, the input.</summary>
    public IReadOnlyList<PhaseEdge> Edges { get; }

    /// <summary>The number of connected components; those without the reference node float.</summary>
    public int ComponentCount => _forest.ComponentCount;

    /// <summary>The edges of the spanning forest on which the analysis runs, from each root outwards; ports are in it before capacitors.</summary>
    public IReadOnlyList<PhaseEdge> SpanningForest { get; }

    /// <summary>One loop per edge outside the spanning forest, in the order of <see cref="Edges"/>: E - V + components of them.</summary>
    internal IReadOnlyList<FundamentalLoop> Loops => _loops.Value;

    /// <summary>One cut per edge of the spanning forest, in its order: V - components of them.</summary>
    internal IReadOnlyList<FundamentalCut> Cuts => _cuts.Value;

    /// <summary>The edges both ends of which are in one group.</summary>
    public IEnumerable<PhaseEdge> Shorted => _edges.Where(e => e.IsShorted);

    /// <summary>The edges in a component without the reference node.</summary>
    public IEnumerable<PhaseEdge> Floating => _edges.Where(e => Groups[e.Source].Floats);

    /// <summary>The edges in no loop, so that no charge can pass them in this phase: the bridges of the graph.</summary>
    public IEnumerable<PhaseEdge> Dangling
    {
        get
        {
            HashSet<PhaseEdge> inLoop = [.. Loops.SelectMany(l => l.Edges).Select(e => e.Edge)];
            return _edges.Where(e => !inLoop.Contains(e));
        }
    }

    /// <summary>Contracts the closed switches of one phase.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="phaseNumber">The phase number, from 1.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public static PhaseGraph Of(Converter converter, Mode mode, int phaseNumber)
    {
        ArgumentNullException.ThrowIfNull(converter);
        converter.RequireOwn(mode, nameof(mode));
        CheckPhase(converter, phaseNumber);
        SwitchedNetwork network = converter.Network;
        return Of(converter, mode, phaseNumber, PhaseForest.Of(network, network.ClosedIn(mode.Index, phaseNumber - 1)));
    }

    /// <summary>The phase as an analysis contracted it; nothing is searched again.</summary>
    /// <param name="analysis">The analysis of a mode.</param>
    /// <param name="phaseNumber">The phase number, from 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public static PhaseGraph Of(ModeAnalysis analysis, int phaseNumber)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        CheckPhase(analysis.Converter, phaseNumber);
        return Of(analysis.Converter, analysis.Mode, phaseNumber, analysis.Topology.Forests[phaseNumber - 1]);
    }

    /// <summary>The phase whose forest is at hand.</summary>
    internal static PhaseGraph Of(Converter converter, Mode mode, int phaseNumber, PhaseForest forest) => new(converter, mode, phaseNumber, forest);

    /// <summary>The group of a node.</summary>
    /// <exception cref="ArgumentException">The converter has no such node.</exception>
    public PhaseGroup GroupOf(string node) => Groups[CheckedGroup(node)];

    /// <summary>
    /// The graph as one of QuikGraph, a new one at each call that the caller may change: vertices are the
    /// indices of <see cref="Groups"/>, edges those of <see cref="Edges"/>, parallel ones and loops at one vertex included.
    /// </summary>
    public UndirectedGraph<int, PhaseEdge> ToUndirectedGraph()
    {
        UndirectedGraph<int, PhaseEdge> graph = new(allowParallelEdges: true);
        graph.AddVertexRange(Enumerable.Range(0, Groups.Count));
        graph.AddEdgeRange(_edges);
        return graph;
    }

    /// <summary>A shortest chain of closed switches from one node to another.</summary>
    /// <param name="from">The node to start from.</param>
    /// <param name="to">The node to reach.</param>
    /// <param name="path">The switches in order, none where the nodes are the same one or where there is no chain.</param>
    /// <returns>Whether closed switches tie the nodes together.</returns>
    /// <exception cref="ArgumentException">The converter has no such node.</exception>
    public bool TryFindClosedPath(string from, string to, out IReadOnlyList<Switch> path)
    {
        bool isTied = CheckedGroup(from) == CheckedGroup(to);
        path = _paths.Value.Find(from, to);
        return isTied;
    }

    /// <summary>Converter, mode and phase, and the counts of groups, edges and components.</summary>
    public override string ToString() =>
        $"{Converter.Name}, mode {Mode}, phase {Phase}: {Groups.Count} groups, {_edges.Length} edges, {ComponentCount} components";

    private static void CheckPhase(Converter converter, int phaseNumber)
    {
        if (phaseNumber < 1 || phaseNumber > converter.Phases.Count)
        {
            throw new ArgumentOutOfRangeException(nameof(phaseNumber), phaseNumber, $"Expected a phase number from 1 to {converter.Phases.Count}.");
        }
    }

    private static PhaseEdge[] MakeEdges(Converter converter, PhaseForest forest)
    {
        SwitchedNetwork network = converter.Network;
        List<PhaseEdge> edges = [];
        // held currents are no edges: not a current load's, nor those of the inductors, which come after the input
        for (int branch = 0; branch <= network.InputBranch; branch++)
        {
            (PhaseEdgeKind kind, string name) = branch < network.CapacitorCount ? (PhaseEdgeKind.Capacitor, converter.Capacitors[branch].Name)
                : branch == network.InputBranch ? (PhaseEdgeKind.Input, converter.InputNode)
                : (PhaseEdgeKind.Output, converter.OutputNode);
            if (kind != PhaseEdgeKind.Output || converter.Load == LoadKind.Stiff)
            {
                edges.Add(new PhaseEdge(
                    kind,
                    name,
                    kind == PhaseEdgeKind.Capacitor ? branch : null,
                    forest.Group[network.BranchFirst[branch]],
                    forest.Group[network.BranchSecond[branch]]));
            }
        }

        return [.. edges];
    }

    private int CheckedGroup(string node) => _forest.Group[Converter.Nodes.PositionOf(node)];
}
