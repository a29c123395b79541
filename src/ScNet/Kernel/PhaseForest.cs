namespace ScNet.Kernel;

/// <summary>
/// One phase of a mode with closed switches contracted, and breadth-first spanning forests of both
/// layers: of the closed switches within each contracted node, and of the branches of held voltage
/// between contracted nodes. Built once, read many times.
/// </summary>
/// <remarks>Cost: time and memory linear in nodes, switches and branches.</remarks>
internal sealed class PhaseForest
{
    public const int None = -1;

    private readonly SwitchedNetwork _network;
    private readonly int[] _groupStart;

    private PhaseForest(SwitchedNetwork network)
    {
        int n = network.NodeCount;
        _network = network;
        NodeOrder = new int[n];
        Group = new int[n];
        ParentNode = new int[n];
        ParentSwitch = new int[n];
        _groupStart = new int[n + 1];
        Group.AsSpan().Fill(None);
    }

    /// <summary>Every node, group after group; within a group each node after its parent.</summary>
    public int[] NodeOrder { get; }

    /// <summary>The contracted node ("group") of each node; group 0 holds the reference.</summary>
    public int[] Group { get; }

    /// <summary>The node through which the search reached each node, or -1 for the first of its group.</summary>
    public int[] ParentNode { get; }

    /// <summary>The closed switch through which it did, or -1.</summary>
    public int[] ParentSwitch { get; }

    public int GroupCount { get; private set; }

    /// <summary>Whether some closed switches form a loop, so that resistances decide how they share charge.</summary>
    public bool HasSwitchLoop { get; private set; }

    /// <summary>Groups in the order of the search: each after its parent, component after component.</summary>
    public int[] GroupOrder { get; private set; } = [];

    /// <summary>The group through which the search reached each group, or -1 for the root of a component.</summary>
    public int[] ParentGroup { get; private set; } = [];

    /// <summary>The tree branch to the parent, or -1.</summary>
    public int[] ParentBranch { get; private set; } = [];

    /// <summary>The number of tree branches up to the root.</summary>
    public int[] Depth { get; private set; } = [];

    /// <summary>The component of each group; component 0 holds the reference, the others float.</summary>
    public int[] Component { get; private set; } = [];

    public int ComponentCount { get; private set; }

    /// <summary>The nodes of a group, each after its parent.</summary>
    public ReadOnlySpan<int> Members(int group) => NodeOrder.AsSpan(_groupStart[group], _groupStart[group + 1] - _groupStart[group]);

    /// <summary>Whether closed switches and branches of held voltage lead from one node to another.</summary>
    public bool AreConnected(int first, int second) => Component[Group[first]] == Component[Group[second]];

    public bool IsTreeBranch(int branch)
    {
        int first = Group[_network.BranchFirst[branch]], second = Group[_network.BranchSecond[branch]];
        return ParentBranch[first] == branch || ParentBranch[second] == branch;
    }

    /// <summary>1 where a group's tree branch has its first terminal at the group, -1 where it has it at the parent.</summary>
    public int SignTowardsParent(int group) => Group[_network.BranchFirst[ParentBranch[group]]] == group ? 1 : -1;

    /// <summary>Contracts the closed switches and searches both layers.</summary>
    /// <param name="network">The network.</param>
    /// <param name="closed">One flag per switch.</param>
    public static PhaseForest Of(SwitchedNetwork network, ReadOnlySpan<bool> closed)
    {
        PhaseForest forest = new(network);
        forest.Contract(closed);
        forest.Span();
        return forest;
    }

    private void Contract(ReadOnlySpan<bool> closed)
    {
        int found = 0;
        int closedEnds = 0;
        for (int start = 0; start < _network.NodeCount; start++)
        {
            if (Group[start] != None)
            {
                continue;
            }

            int next = found;
            Reach(start, None, None, ref found);
            for (; next < found; next++)
            {
                int node = NodeOrder[next];
                foreach (int s in _network.SwitchIncidence[node])
                {
                    if (!closed[s])
                    {
                        continue;
                    }

                    int other = _network.SwitchFirst[s] == node ? _network.SwitchSecond[s] : _network.SwitchFirst[s];
                    closedEnds += other == node ? 0 : 1;
                    if (Group[other] == None)
                    {
                        Reach(other, node, s, ref found);
                    }
                }
            }

            _groupStart[++GroupCount] = found;
        }

        HasSwitchLoop = closedEnds / 2 > _network.NodeCount - GroupCount;
    }

    private void Reach(int node, int parent, int viaSwitch, ref int found)
    {
        Group[node] = GroupCount;
        ParentNode[node] = parent;
        ParentSwitch[node] = viaSwitch;
        NodeOrder[found++] = node;
    }

    private void Span()
    {
        GroupOrder = new int[GroupCount];
        ParentGroup = new int[GroupCount];
        ParentBranch = new int[GroupCount];
        Depth = new int[GroupCount];
        Component = new int[GroupCount];
        Component.AsSpan().Fill(None);
        int found = 0;
        for (int start = 0; start < GroupCount; start++)
        {
            if (Component[start] != None)
            {
                continue;
            }

            int next = found;
            Reach(start, None, None, ref found);
            for (; next < found; next++)
            {
                Visit(GroupOrder[next], ref found);
            }

            ComponentCount++;
        }

        void Reach(int group, int parent, int branch, ref int found)
        {
            Component[group] = ComponentCount;
            ParentGroup[group] = parent;
            ParentBranch[group] = branch;
            Depth[group] = parent == None ? 0 : Depth[parent] + 1;
            GroupOrder[found++] = group;
        }

        void Visit(int group, ref int found)
        {
            foreach (int node in Members(group))
            {
                foreach (int branch in _network.BranchIncidence[node])
                {
                    int end = _network.BranchFirst[branch] == node ? _network.BranchSecond[branch] : _network.BranchFirst[branch];
                    if (Component[Group[end]] == None)
                    {
                        Reach(Group[end], group, branch, ref found);
                    }
                }
            }
        }
    }
}
