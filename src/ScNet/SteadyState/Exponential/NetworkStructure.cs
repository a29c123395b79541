using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// What connections alone decide about a switched linear network: the proper tree that makes capacitor voltages and
/// inductor currents states, what is joined in each phase, and which states nothing ever moves.
/// </summary>
/// <remarks>
/// Sources first, then capacitors, large ones first, so that those that depend on others are small; inductors last,
/// small ones first, for the same reason. docs/theory/two-port.md.
/// </remarks>
internal sealed class NetworkStructure
{
    public const int Input = 0;
    public const int Load = 1;
    public const int SourceCount = 2;

    private readonly int[] _parentNode;
    private readonly int[] _parentEdge;

    private NetworkStructure(SwitchedLinearNetwork network, double[] farads, double[] henries)
    {
        Network = network;
        CapacitorState = new int[network.Capacitors.Length];
        InductorState = new int[network.Inductors.Length];
        _parentNode = new int[network.NodeCount];
        _parentEdge = new int[network.NodeCount];
        Cluster = new int[network.NodeCount];
        NodeStates = [];
        NodeSources = new int[network.NodeCount * SourceCount];
        FindVoltages(farads);
        PhaseGroup = [.. Enumerable.Range(0, network.PhaseCount).Select(j => Groups(r => network.Closed[j][r]))];
        FreeVoltages = FindFreeVoltages();
        InductorLinks = [];
        InductorLoads = new int[network.Inductors.Length * network.InputCount];
        RestingInductors = [.. Enumerable.Repeat<int[]>([], network.PhaseCount)];
        (Fault, FaultPhase) = FindCurrents(henries);
        FreeCurrents = [];
        FindFreeCurrents();
    }

    public SwitchedLinearNetwork Network { get; }

    /// <summary>The state of each capacitor in the tree, or -1 for one whose voltage follows from others.</summary>
    public int[] CapacitorState { get; }

    public int VoltageStates { get; private set; }

    /// <summary>The number of each inductor among those whose currents are states, or -1 for one whose current follows.</summary>
    public int[] InductorState { get; }

    public int CurrentStates { get; private set; }

    /// <summary>Nodes joined by sources and capacitors, numbered from 0, which holds the reference.</summary>
    public int[] Cluster { get; }

    public int ClusterCount { get; private set; }

    /// <summary>Per node and voltage state: the node's voltage against its cluster's first node, 1, 0 or -1.</summary>
    public int[] NodeStates { get; private set; }

    /// <summary>Per node and source (<see cref="Input"/>, <see cref="Load"/>): likewise.</summary>
    public int[] NodeSources { get; }

    /// <summary>Per phase and cluster: the least cluster that conducting resistors join it to.</summary>
    public int[][] PhaseGroup { get; }

    /// <summary>Per inductor and current state: its current.</summary>
    public int[] InductorLinks { get; private set; }

    /// <summary>Per inductor and input: its part of a load current.</summary>
    public int[] InductorLoads { get; }

    /// <summary>Patterns of capacitor voltages that no phase ever changes: one number per capacitor.</summary>
    public IReadOnlyList<int[]> FreeVoltages { get; }

    /// <summary>Patterns of currents that circulate in inductors without any resistance: one number per current state.</summary>
    public List<int[]> FreeCurrents { get; }

    /// <summary>Per phase: the inductors that it leaves without a path, where these may rest.</summary>
    public int[][] RestingInductors { get; }

    public NetworkFault Fault { get; private set; }

    /// <summary>The phase of the fault, or -1.</summary>
    public int FaultPhase { get; private set; }

    /// <summary>The input whose current has no path, where that is the fault.</summary>
    public int FaultInput { get; private set; }

    public static NetworkStructure Of(SwitchedLinearNetwork network, double[] farads, double[] henries) => new(network, farads, henries);

    // Sources and capacitors as a forest, and every node's voltage by its branches.
    private void FindVoltages(double[] farads)
    {
        DisjointSets sets = new(Network.NodeCount);
        List<(int First, int Second, int Edge)> tree = [];
        TryJoin(sets, tree, Network.InputNode, 0, -1 - Input);
        if (Network.IsStiff)
        {
            TryJoin(sets, tree, Network.OutputNode, 0, -1 - Load);
        }

        CapacitorState.AsSpan().Fill(-1);
        foreach (int i in Enumerable.Range(0, farads.Length).OrderByDescending(i => farads[i]))
        {
            if (TryJoin(sets, tree, Network.Capacitors[i].First, Network.Capacitors[i].Second, i))
            {
                CapacitorState[i] = VoltageStates++;
            }
        }

        NodeStates = new int[Network.NodeCount * VoltageStates];
        Cluster.AsSpan().Fill(-1);
        ILookup<int, (int First, int Second, int Edge)> at = tree.Concat(tree.Select(e => (First: e.Second, Second: e.First, Edge: e.Edge)))
            .ToLookup(e => e.First);
        Queue<int> open = new();
        for (int start = 0; start < Network.NodeCount; start++)
        {
            if (Cluster[start] >= 0)
            {
                continue;
            }

            Cluster[start] = ClusterCount;
            open.Enqueue(start);
            while (open.TryDequeue(out int node))
            {
                foreach ((int _, int other, int edge) in at[node].Where(e => Cluster[e.Second] < 0))
                {
                    Cluster[other] = ClusterCount;
                    open.Enqueue(other);
                    NodeStates.AsSpan(node * VoltageStates, VoltageStates).CopyTo(NodeStates.AsSpan(other * VoltageStates));
                    NodeSources.AsSpan(node * SourceCount, SourceCount).CopyTo(NodeSources.AsSpan(other * SourceCount));
                    if (edge >= 0)
                    {
                        NodeStates[(other * VoltageStates) + CapacitorState[edge]] += Network.Capacitors[edge].First == other ? 1 : -1;
                    }
                    else
                    {
                        // the reference is where the first search starts
                        NodeSources[(other * SourceCount) - 1 - edge] = 1;
                    }
                }
            }

            ClusterCount++;
        }
    }

    private static bool TryJoin(DisjointSets sets, List<(int First, int Second, int Edge)> tree, int first, int second, int edge)
    {
        if (sets.Find(first) == sets.Find(second))
        {
            return false;
        }

        sets.Join(first, second);
        tree.Add((first, second, edge));
        return true;
    }

    private int[] Groups(Predicate<int> isClosed)
    {
        DisjointSets sets = new(ClusterCount);
        for (int r = 0; r < Network.Resistors.Length; r++)
        {
            if (isClosed(r))
            {
                sets.Join(Cluster[Network.Resistors[r].First], Cluster[Network.Resistors[r].Second]);
            }
        }

        return [.. Enumerable.Range(0, ClusterCount).Select(sets.Find)];
    }

    // Inductors that are the only connection between parts that no phase joins otherwise: their currents follow.
    private (NetworkFault Fault, int Phase) FindCurrents(double[] henries)
    {
        int count = Network.Inductors.Length;
        int[] ever = Groups(r => Network.Closed.Any(closed => closed[r]));
        CurrentGraph always = new(Network, Cluster, ever, henries);
        CurrentStates = count - always.TreeCount;
        InductorLinks = new int[count * CurrentStates];
        InductorState.AsSpan().Fill(-1);
        int state = 0;
        for (int e = 0; e < count; e++)
        {
            if (!always.IsInTree(e))
            {
                InductorLinks[(e * CurrentStates) + state] = 1;
                foreach ((int inductor, int sign) in always.Path(Cluster[Network.Inductors[e].First], Cluster[Network.Inductors[e].Second]))
                {
                    InductorLinks[(inductor * CurrentStates) + state] -= sign;
                }

                InductorState[e] = state++;
            }
        }

        foreach ((int input, NodePair nodes) in Network.Loads)
        {
            if (!always.AreJoined(Cluster[nodes.First], Cluster[nodes.Second]))
            {
                FaultInput = input;
                return (NetworkFault.LoadWithoutPath, -1);
            }

            foreach ((int inductor, int sign) in always.Path(Cluster[nodes.First], Cluster[nodes.Second]))
            {
                InductorLoads[(inductor * Network.InputCount) + input] -= sign;
            }
        }

        for (int j = 0; j < Network.PhaseCount; j++)
        {
            CurrentGraph now = new(Network, Cluster, PhaseGroup[j], henries);
            foreach ((int input, NodePair nodes) in Network.Loads)
            {
                if (!now.AreJoined(Cluster[nodes.First], Cluster[nodes.Second]))
                {
                    FaultInput = input;
                    return (NetworkFault.LoadWithoutPath, j);
                }
            }

            if (now.TreeCount > always.TreeCount && !(Network.InductorsMayRest && TryRest(j, now, now.TreeCount - always.TreeCount)))
            {
                return (NetworkFault.InductorWithoutPath, j);
            }
        }

        return (NetworkFault.None, -1);
    }

    // Inductors of the forest that no loop contains: with no current in them every law of currents of the phase holds.
    private bool TryRest(int phase, CurrentGraph now, int lawCount)
    {
        HashSet<int> inLoops = [];
        int count = Network.Inductors.Length;
        foreach (int e in Enumerable.Range(0, count).Where(e => !now.IsInTree(e)))
        {
            inLoops.UnionWith(now.Path(Cluster[Network.Inductors[e].First], Cluster[Network.Inductors[e].Second]).Select(p => p.Inductor));
        }

        RestingInductors[phase] = [.. Enumerable.Range(0, count).Where(e => now.IsInTree(e) && !inLoops.Contains(e)
            && InductorLinks.AsSpan(e * CurrentStates, CurrentStates).ContainsAnyExcept(0))];
        int[] rows = [.. RestingInductors[phase].SelectMany(e => InductorLinks[(e * CurrentStates)..((e + 1) * CurrentStates)])];
        return EchelonForm.TryReduce(rows, CurrentStates, CurrentStates, out int rank) && rank == lawCount;
    }

    // Voltages that leave every resistor and inductor without any, in all phases: what no loop contains.
    private List<int[]> FindFreeVoltages()
    {
        int count = Network.Capacitors.Length;
        List<int> rows = [];
        for (int j = 0; j < Network.PhaseCount; j++)
        {
            CapacitorLoops.AddTo(rows, Network, Network.Closed[j]);
        }

        int[] matrix = [.. rows];
        return EchelonForm.TryReduce(matrix, count, count, out int rank) ? NullPatterns.Of(matrix, count, rank) : [];
    }

    private void FindFreeCurrents()
    {
        DisjointSets bare = new(Network.NodeCount), sets = new(Network.NodeCount);
        sets.Join(Network.InputNode, 0);
        if (Network.IsStiff)
        {
            sets.Join(Network.OutputNode, 0);
        }

        List<int> tree = [];
        for (int e = 0; e < Network.Inductors.Length; e++)
        {
            (int first, int second) = (Network.Inductors[e].First, Network.Inductors[e].Second);
            if (Network.HasWinding[e])
            {
                continue;
            }

            if (bare.Find(first) == bare.Find(second))
            {
                FreeCurrents.Add(Circulation(tree, e));
                continue;
            }

            if (sets.Find(first) == sets.Find(second))
            {
                (Fault, FaultPhase) = (NetworkFault.InductorAcrossSources, -1);
            }

            tree.Add(e);
            bare.Join(first, second);
            sets.Join(first, second);
        }
    }

    // The loop that an inductor closes with those of a forest, by current states.
    private int[] Circulation(List<int> tree, int closing)
    {
        var pattern = new int[CurrentStates];
        Set(closing, 1);
        int from = Network.Inductors[closing].First, to = Network.Inductors[closing].Second;
        foreach ((int inductor, int sign) in ForestPath.Of(tree, e => Network.Inductors[e], from, to))
        {
            Set(inductor, -sign);
        }

        return pattern;

        void Set(int inductor, int value)
        {
            if (InductorState[inductor] is var state and >= 0)
            {
                pattern[state] = value;
            }
        }
    }
}
