namespace ScNet.Kernel;

/// <summary>
/// One phase of a mode with closed switches contracted, and breadth-first spanning forests of both
/// layers: of the closed switches within each contracted node, and of the branches of held voltage
/// between contracted nodes. Built once, read many times; a workspace builds it again on the same memory.
/// </summary>
/// <remarks>Cost: time and memory linear in nodes, switches and branches.</remarks>
internal sealed class PhaseForest
{
    public const int None = SpanningForest.None;

    private readonly SpanningForest _nodes = new();
    private readonly SpanningForest _groups = new();
    private NetworkGraph? _network;
    private int[] _closed = [];
    private int[] _groupStart = [];
    private int[] _ends = [];

    /// <summary>Every node, group after group; within a group each node after its parent.</summary>
    public int[] NodeOrder => _nodes.Order;

    /// <summary>The contracted node ("group") of each node; group 0 holds the reference.</summary>
    public int[] Group => _nodes.Tree;

    /// <summary>The node through which the search reached each node, or -1 for the first of its group.</summary>
    public int[] ParentNode => _nodes.Parent;

    /// <summary>The closed switch through which it did, or -1.</summary>
    public int[] ParentSwitch => _nodes.ParentEdge;

    public int GroupCount => _nodes.TreeCount;

    /// <summary>Whether some closed switches form a loop, so that resistances decide how they share charge.</summary>
    public bool HasSwitchLoop { get; private set; }

    /// <summary>Groups in the order of the search: each after its parent, component after component.</summary>
    public int[] GroupOrder => _groups.Order;

    /// <summary>The group through which the search reached each group, or -1 for the root of a component.</summary>
    public int[] ParentGroup => _groups.Parent;

    /// <summary>The tree branch to the parent, or -1.</summary>
    public int[] ParentBranch => _groups.ParentEdge;

    /// <summary>The number of tree branches up to the root.</summary>
    public int[] Depth => _groups.Depth;

    /// <summary>The component of each group; component 0 holds the reference, the others float.</summary>
    public int[] Component => _groups.Tree;

    public int ComponentCount => _groups.TreeCount;

    /// <summary>The nodes of a group, each after its parent.</summary>
    public ReadOnlySpan<int> Members(int group) => NodeOrder.AsSpan(_groupStart[group].._groupStart[group + 1]);

    /// <summary>Whether closed switches and branches of held voltage lead from one node to another.</summary>
    public bool AreConnected(int first, int second) => Component[Group[first]] == Component[Group[second]];

    /// <summary>Whether a branch is in the forest.</summary>
    public bool IsTreeBranch(int branch) =>
        ParentBranch[Group[_network!.BranchFirst[branch]]] == branch || ParentBranch[Group[_network.BranchSecond[branch]]] == branch;

    /// <summary>1 where a group's tree branch has its first terminal at the group, -1 where it has it at the parent.</summary>
    public int SignTowardsParent(int group) => _groups.Sign[group];

    /// <summary>The tree branches between two nodes of one component.</summary>
    public TreePath Path(int from, int to) => _groups.Path(Group[from], Group[to]);

    /// <summary>The tree branches between two groups of one component.</summary>
    public TreePath GroupPath(int from, int to) => _groups.Path(from, to);

    /// <summary>The closed switches between two nodes of one group, along its tree.</summary>
    public TreePath SwitchPath(int from, int to) => _nodes.Path(from, to);

    /// <summary>Contracts the closed switches and searches both layers.</summary>
    /// <param name="network">The network.</param>
    /// <param name="closed">One flag per switch.</param>
    public static PhaseForest Of(NetworkGraph network, ReadOnlySpan<bool> closed)
    {
        PhaseForest forest = new();
        forest.Build(network, closed);
        return forest;
    }

    /// <summary>Forgets what it held and builds the forests of another phase or network.</summary>
    public void Build(NetworkGraph network, ReadOnlySpan<bool> closed)
    {
        _network = network;
        Span<int> closedSwitches = SpanningForest.Scratch(ref _closed, network.SwitchCount, stackalloc int[SpanningForest.SmallCount]);
        int closedCount = 0, joining = 0;
        for (int s = 0; s < closed.Length; s++)
        {
            if (closed[s])
            {
                closedSwitches[closedCount++] = s;
                joining += network.SwitchFirst[s] != network.SwitchSecond[s] ? 1 : 0;
            }
        }

        _nodes.Build(network.NodeCount, network.SwitchFirst, network.SwitchSecond, closedSwitches[..closedCount]);
        HasSwitchLoop = joining > network.NodeCount - GroupCount;
        StartGroups(network.NodeCount);
        Span<int> ends = SpanningForest.Scratch(ref _ends, 2 * network.BranchCount, stackalloc int[SpanningForest.SmallCount]);
        Span<int> first = ends[..network.BranchCount], second = ends[network.BranchCount..];
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            first[branch] = Group[network.BranchFirst[branch]];
            second[branch] = Group[network.BranchSecond[branch]];
        }

        _groups.Build(GroupCount, first, second, network.HeldVoltages.AsSpan(0, network.HeldVoltageCount));
    }

    private void StartGroups(int nodeCount)
    {
        if (_groupStart.Length <= nodeCount)
        {
            _groupStart = new int[nodeCount + 1];
        }

        for (int k = nodeCount - 1; k >= 0; k--)
        {
            _groupStart[Group[NodeOrder[k]]] = k;
        }

        _groupStart[GroupCount] = nodeCount;
    }
}
