using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>Reads fundamental loops and cuts off the spanning forest of a phase.</summary>
internal sealed class ForestWalks
{
    private readonly PhaseForest _forest;
    private readonly PhaseEdge[] _edges;

    // the forest's edge from each group towards its root; null for the roots
    private readonly PhaseEdge?[] _up;

    public ForestWalks(PhaseForest forest, PhaseEdge[] edges)
    {
        _forest = forest;
        _edges = edges;
        _up = new PhaseEdge?[forest.GroupCount];
        List<PhaseEdge> tree = [];
        foreach (int group in forest.GroupOrder)
        {
            int branch = forest.ParentBranch[group];
            if (branch >= 0)
            {
                PhaseEdge edge = EdgeOf(branch);
                _up[group] = edge;
                tree.Add(edge);
            }
        }

        TreeEdges = tree.AsReadOnly();
    }

    /// <summary>The edges of the forest, from each root outwards.</summary>
    public IReadOnlyList<PhaseEdge> TreeEdges { get; }

    /// <summary>One loop per edge outside the forest.</summary>
    public FundamentalLoop[] Loops()
    {
        HashSet<PhaseEdge> tree = [.. TreeEdges];
        return [.. _edges.Where(e => !tree.Contains(e)).Select(Loop)];
    }

    /// <summary>One cut per edge of the forest.</summary>
    public FundamentalCut[] Cuts()
    {
        FundamentalLoop[] loops = Loops();
        Dictionary<PhaseEdge, List<SignedEdge>> across = TreeEdges.ToDictionary(e => e, e => new List<SignedEdge> { new(e, 1) });
        foreach (FundamentalLoop loop in loops)
        {
            // a loop crosses the cut of each of its tree edges twice: along that edge, and back along its chord
            foreach (SignedEdge member in loop.Edges.Skip(1))
            {
                across[member.Edge].Add(new SignedEdge(loop.Chord, -member.Sign));
            }
        }

        List<int>[] below = [.. Enumerable.Range(0, _forest.GroupCount).Select(_ => new List<int>())];
        for (int group = 0; group < _forest.GroupCount; group++)
        {
            for (int at = group; _up[at] is not null; at = _forest.ParentGroup[at])
            {
                below[at].Add(group);
            }
        }

        return [.. _forest.GroupOrder.Where(g => _up[g] is not null).Select(g => new FundamentalCut([.. across[_up[g]!]], [.. below[g]]))];
    }

    // Along the chord to its second terminal, up to where the ways to the root meet, and down to the first.
    private FundamentalLoop Loop(PhaseEdge chord)
    {
        List<SignedEdge> walk = [new(chord, 1)];
        List<SignedEdge> down = [];
        TreePath path = _forest.GroupPath(chord.Target, chord.Source);
        while (path.MoveNext())
        {
            (path.IsUp ? walk : down).Add(new SignedEdge(EdgeOf(path.Edge), path.Sign));
        }

        down.Reverse();
        return new FundamentalLoop([.. walk, .. down]);
    }

    // edges are numbered as branches are, but for the output of a load current, which is none
    private PhaseEdge EdgeOf(int branch) => _edges[Math.Min(branch, _edges.Length - 1)];
}
