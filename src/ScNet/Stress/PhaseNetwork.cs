using Fractions;
using ScNet.Kernel;

namespace ScNet.Stress;

/// <summary>
/// One phase of a mode with given capacitor voltages, which need not be the mode's own: rigid pieces
/// joined by resistive edges. Where the edges' loops do not sum to zero a surge flows.
/// </summary>
/// <remarks>
/// Over all positive resistances a potential difference takes exactly the values inside the hull of its
/// values over the spanning trees of the edges: docs/theory/stress.md, "The instant of a change".
/// </remarks>
internal sealed class PhaseNetwork
{
    private readonly RigidPieces _pieces;
    private readonly List<ResistiveEdge> _edges;
    private readonly int[] _component;
    private readonly Fraction[] _root;
    private readonly int[] _parentEdge;
    private readonly List<(int Edge, Fraction Surge)> _conflicts = [];
    private readonly Lazy<PathRange> _paths;
    private readonly UnknownGroups _groups;

    private PhaseNetwork(SwitchedNetwork network, RigidPieces pieces, HeldVoltages held, List<ResistiveEdge> edges)
    {
        _pieces = pieces;
        _edges = edges;
        _component = new int[pieces.PieceCount];
        _component.AsSpan().Fill(-1);
        _root = new Fraction[pieces.PieceCount];
        _parentEdge = new int[pieces.PieceCount];
        Span();
        _paths = new Lazy<PathRange>(() => new PathRange(pieces, edges));
        Spread = new Fraction[ComponentCount];
        FindConflicts();
        _groups = UnknownGroups.Of(network, pieces, held, _component, ComponentCount);
    }

    public int ComponentCount { get; private set; }

    /// <summary>Per component: the sum of the surges of a set of fundamental loops; zero where no loops conflict.</summary>
    public Fraction[] Spread { get; }

    /// <summary>Per component: a capacitor of unknown voltage closes a loop in it, so that its differences are unknown.</summary>
    public bool[] IsUnknown => _groups.IsUnknown;

    /// <summary>Per component: it floats on a capacitor of unknown voltage.</summary>
    public bool[] IsAdrift => _groups.IsAdrift;

    /// <summary>Whether every span came out exactly, not as the sum of all surges.</summary>
    public bool IsExact => !_paths.IsValueCreated || _paths.Value.IsExact;

    /// <summary>Whether some loop does not sum to zero.</summary>
    public bool HasConflict => _conflicts.Count > 0;

    /// <summary>Builds the phase.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="pieces">Its rigid pieces for the voltages.</param>
    /// <param name="held">The voltages.</param>
    /// <param name="mode">The mode whose switches are set.</param>
    /// <param name="phase">The phase, from 0.</param>
    public static PhaseNetwork Of(Converter converter, RigidPieces pieces, HeldVoltages held, int mode, int phase)
    {
        SwitchedNetwork network = converter.Network;
        List<ResistiveEdge> edges = [];
        ReadOnlySpan<bool> closed = network.ClosedIn(mode, phase);
        for (int s = 0; s < closed.Length; s++)
        {
            if (closed[s] && network.SwitchFirst[s] != network.SwitchSecond[s])
            {
                edges.Add(new ResistiveEdge(network.SwitchFirst[s], network.SwitchSecond[s], Fraction.Zero, s, IsSwitch: true));
            }
        }

        for (int c = 0; c < network.CapacitorCount; c++)
        {
            if (held[c] is { } voltage && !RigidPieces.IsRigid(converter, held, c))
            {
                edges.Add(new ResistiveEdge(network.BranchFirst[c], network.BranchSecond[c], voltage, c, IsSwitch: false));
            }
        }

        return new PhaseNetwork(network, pieces, held, edges);
    }

    /// <summary>The component of a node; component 0 holds the reference.</summary>
    public int Component(int node) => _component[_pieces.Piece[node]];

    /// <summary>The potential of a node against the first node of its component, along one spanning tree.</summary>
    public Fraction Potential(int node) => _root[_pieces.Piece[node]] + _pieces.Offset[node];

    /// <summary>First minus second potential of two nodes of one component, over all positive resistances.</summary>
    public Interval<Fraction> Difference(int first, int second)
    {
        int component = Component(first);
        Fraction tree = Potential(first) - Potential(second);
        if (_pieces.Piece[first] == _pieces.Piece[second])
        {
            return Intervals.Point(tree);
        }

        return IsUnknown[component] ? default
            : Spread[component].IsZero ? Intervals.Point(tree)
            : _paths.Value.Of(first, second) ?? new Interval<Fraction>(tree - Spread[component], tree + Spread[component]);
    }

    /// <summary>The loops that conflict: the edge that closes each, sum of the voltages round each, edges, and rigid branches between them.</summary>
    public IEnumerable<(int Chord, Fraction Surge, List<ResistiveEdge> Edges, HashSet<int> Branches)> Conflicts()
    {
        foreach ((int chord, Fraction surge) in _conflicts)
        {
            HashSet<int> loop = [chord];
            ToggleUp(loop, _pieces.Piece[_edges[chord].First]);
            ToggleUp(loop, _pieces.Piece[_edges[chord].Second]);
            HashSet<int> branches = [];
            List<ResistiveEdge> edges = [.. loop.Select(e => _edges[e])];
            foreach (ResistiveEdge edge in edges)
            {
                _pieces.Toggle(branches, edge.First);
                _pieces.Toggle(branches, edge.Second);
            }

            yield return (chord, surge, edges, branches);
        }
    }

    private void ToggleUp(HashSet<int> loop, int piece)
    {
        while (_parentEdge[piece] is var e and >= 0)
        {
            if (!loop.Remove(e))
            {
                loop.Add(e);
            }

            piece = OtherEnd(_edges[e], piece);
        }
    }

    private int OtherEnd(ResistiveEdge edge, int piece) =>
        _pieces.Piece[edge.First] == piece ? _pieces.Piece[edge.Second] : _pieces.Piece[edge.First];

    private void Span()
    {
        int[] first = new int[_edges.Count], second = new int[_edges.Count], order = new int[_edges.Count];
        for (int e = 0; e < order.Length; e++)
        {
            (first[e], second[e], order[e]) = (_pieces.Piece[_edges[e].First], _pieces.Piece[_edges[e].Second], e);
        }

        Incidence edgesOf = Incidence.Of(_pieces.PieceCount, first, second, order);
        Queue<int> queue = new();
        for (int start = 0; start < _component.Length; start++)
        {
            if (_component[start] >= 0)
            {
                continue;
            }

            Reach(start, Fraction.Zero, -1);
            while (queue.TryDequeue(out int piece))
            {
                foreach (int e in edgesOf[piece])
                {
                    ResistiveEdge edge = _edges[e];
                    int other = OtherEnd(edge, piece);
                    if (_component[other] < 0)
                    {
                        bool fromFirst = _pieces.Piece[edge.First] == piece;
                        (int near, int far) = fromFirst ? (edge.First, edge.Second) : (edge.Second, edge.First);
                        Reach(other, Potential(near) + (fromFirst ? -edge.Voltage : edge.Voltage) - _pieces.Offset[far], e);
                    }
                }
            }

            ComponentCount++;
        }

        void Reach(int piece, Fraction root, int edge)
        {
            _component[piece] = ComponentCount;
            _root[piece] = root;
            _parentEdge[piece] = edge;
            queue.Enqueue(piece);
        }
    }

    private void FindConflicts()
    {
        for (int e = 0; e < _edges.Count; e++)
        {
            ResistiveEdge edge = _edges[e];
            Fraction surge = (Potential(edge.First) - Potential(edge.Second) - edge.Voltage).Abs();
            if (!surge.IsZero)
            {
                _conflicts.Add((e, surge));
                Spread[Component(edge.First)] += surge;
            }
        }
    }

    /// <summary>The capacitors of unknown voltage that a node is joined to, directly or over others; in the converter's order.</summary>
    public IReadOnlyList<int> UnknownCapacitors(int node) => _groups.CapacitorsOf(Component(node));
}
