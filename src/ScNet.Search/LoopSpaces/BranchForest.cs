namespace ScNet.Search.LoopSpaces;

/// <summary>
/// A spanning forest of one phase's graph, whose branches are the input source, the output and the capacitors, each
/// from its positive to its negative end.
/// </summary>
internal sealed class BranchForest
{
    private readonly Wiring _wiring;
    private readonly int[] _parent;
    private readonly int[] _parentBranch;
    private readonly int[] _depth;
    private readonly int[] _order;

    private BranchForest(Wiring wiring)
    {
        _wiring = wiring;
        _parent = new int[wiring.NodeCount];
        _parentBranch = new int[wiring.NodeCount];
        _depth = new int[wiring.NodeCount];
        _order = new int[wiring.NodeCount];
        _parent.AsSpan().Fill(-1);
        _parentBranch.AsSpan().Fill(-1);
        _depth.AsSpan().Fill(-1);
    }

    /// <summary>The number of pieces of the graph; 1 where every node's potential is determined.</summary>
    public int PieceCount { get; private set; }

    /// <summary>The number of branches.</summary>
    public int BranchCount => _wiring.CapacitorCount + LoopSpace.FirstCapacitorColumn;

    /// <summary>The forest of a wiring.</summary>
    public static BranchForest Of(Wiring wiring)
    {
        BranchForest forest = new(wiring);
        int placed = 0;
        for (int root = 0; root < wiring.NodeCount; root++)
        {
            if (forest._depth[root] < 0)
            {
                forest.PieceCount++;
                placed = forest.Grow(root, placed);
            }
        }

        return forest;
    }

    /// <summary>The nodes at a branch's ends.</summary>
    public (int Positive, int Negative) Ends(int branch)
    {
        ReadOnlySpan<byte> nodes = _wiring.Nodes;
        return branch switch
        {
            LoopSpace.InputColumn => (nodes[Terminals.Input], 0),
            LoopSpace.OutputColumn => (nodes[Terminals.Output], 0),
            _ => (nodes[Terminals.PositivePlate(branch - LoopSpace.FirstCapacitorColumn)], nodes[Terminals.BottomPlate(branch - LoopSpace.FirstCapacitorColumn)]),
        };
    }

    /// <summary>
    /// Writes the loop that each branch outside the forest closes, a row of entries 1 and −1 per loop: the sum of the
    /// branches' voltages with these signs is zero.
    /// </summary>
    /// <returns>The number of loops.</returns>
    public int Loops(Span<sbyte> rows)
    {
        rows.Clear();
        int loops = 0;
        for (int branch = 0; branch < BranchCount; branch++)
        {
            if (_parentBranch.AsSpan().Contains(branch))
            {
                continue;
            }

            Span<sbyte> row = rows.Slice(loops++ * BranchCount, BranchCount);
            row[branch] = 1;
            (int positive, int negative) = Ends(branch);
            while (positive != negative)
            {
                // the way back from the positive end adds with the other sign
                if (_depth[positive] >= _depth[negative])
                {
                    row[_parentBranch[positive]] += (sbyte)(Ends(_parentBranch[positive]).Positive == positive ? -1 : 1);
                    positive = _parent[positive];
                }
                else
                {
                    row[_parentBranch[negative]] += (sbyte)(Ends(_parentBranch[negative]).Positive == negative ? 1 : -1);
                    negative = _parent[negative];
                }
            }
        }

        return loops;
    }

    /// <summary>The steps from the root of the first piece to every other node of it: node by node, the node it is reached from and the branch, whose voltage adds with the sign.</summary>
    public IEnumerable<(int Node, int From, int Branch, int Sign)> Steps()
    {
        foreach (int node in _order)
        {
            if (_parent[node] >= 0)
            {
                int branch = _parentBranch[node];
                yield return (node, _parent[node], branch, Ends(branch).Positive == node ? 1 : -1);
            }
        }
    }

    private int Grow(int root, int placed)
    {
        int next = placed;
        _depth[root] = 0;
        _order[placed++] = root;
        for (; next < placed; next++)
        {
            int node = _order[next];
            for (int branch = 0; branch < BranchCount; branch++)
            {
                (int positive, int negative) = Ends(branch);
                int other = positive == node ? negative : negative == node ? positive : node;
                if (_depth[other] < 0)
                {
                    (_depth[other], _parent[other], _parentBranch[other]) = (_depth[node] + 1, node, branch);
                    _order[placed++] = other;
                }
            }
        }

        return placed;
    }
}
