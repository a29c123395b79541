using System.Runtime.InteropServices;

namespace ScNet.Kernel;

/// <summary>
/// The fundamental loops of every phase: one per branch of held voltage outside the spanning forest, as
/// signed lists of branches. A port that holds its current adds one loop per phase, closed through the port,
/// and these are tied: they carry charge in the proportion of the duties. Where held currents meet at a piece of the
/// network that nothing else touches, only their meshes (<see cref="HeldCurrentMeshes"/>) carry charge, each with one
/// loop per phase.
/// </summary>
/// <remarks>
/// The sign of a branch is 1 where the loop runs through it from its first terminal to its second; the branch
/// that closes a loop comes first in it. The loop of a mesh lists a branch that it takes twice two times. A loop that repeats another phase's loop of the same capacitor with
/// ports only is set aside: at the ideal point and in the slow-switching limit that capacitor's voltage never
/// changes, so no charge flows in either (docs/theory/exact-steady-state.md). <see cref="Repeats"/> keeps
/// them for the fast limit. Cost: linear in nodes and branches of all phases and in the total length of loops.
/// </remarks>
internal sealed class LoopSet
{
    private readonly List<int> _branches = [];
    private readonly List<int> _signs = [];
    private readonly List<int> _start = [0];
    private readonly List<int> _phase = [];
    private List<int>? _meshOfTied;
    private readonly RepeatedLoops _repeated = new();
    private List<(int Phase, int Branch)>? _interruptions;
    private NetworkGraph? _network;
    private LoopSet? _repeats;
    private bool[] _isAside = [];

    public int Count => _phase.Count;

    /// <summary>The number of branches in all loops together.</summary>
    public int EntryCount => _branches.Count;

    /// <summary>How many loops, counted from the first, hold branches of held voltage only; the others are tied.</summary>
    public int VoltageLoopCount { get; private set; }

    /// <summary>Whether held currents meet at pieces that nothing else touches, so that loops are of meshes of them.</summary>
    public bool HasMeshes { get; private set; }

    /// <summary>The number of held currents, or of the meshes that they form, that are free of one another.</summary>
    public int MeshCount { get; private set; }

    /// <summary>The number of equations: one per loop of held voltages, and one for all the loops of a held current together.</summary>
    public int EquationCount => VoltageLoopCount + MeshCount;

    /// <summary>The phases, from 0, in which a held current can but be zero, with its branch.</summary>
    public IReadOnlyList<(int Phase, int Branch)> Interruptions => _interruptions ?? [];

    /// <summary>
    /// The loops set aside, in pairs: the one that stayed at 2k, the one set aside at 2k + 1; null where there is none.
    /// </summary>
    public LoopSet? Repeats => _repeats is { Count: > 0 } ? _repeats : null;

    public int Phase(int loop) => _phase[loop];

    /// <summary>Whether a loop is closed through a held current.</summary>
    public bool IsTied(int loop) => loop >= VoltageLoopCount;

    /// <summary>The equation to which a loop belongs.</summary>
    public int Equation(int loop) => IsTied(loop) ? VoltageLoopCount + _meshOfTied![loop - VoltageLoopCount] : loop;

    /// <summary>The mesh of a loop that is tied.</summary>
    public int Mesh(int loop) => _meshOfTied![loop - VoltageLoopCount];

    public ReadOnlySpan<int> Branches(int loop) => Slice(_branches, loop);

    public ReadOnlySpan<int> Signs(int loop) => Slice(_signs, loop);

    /// <summary>Finds the loops of every phase.</summary>
    /// <param name="network">The network.</param>
    /// <param name="forests">Its phases.</param>
    /// <param name="rests">
    /// Whether a held current is zero in a phase that leaves it without a path, index k · phases + phase for the k-th of
    /// <see cref="NetworkGraph.HeldCurrents"/>; empty where none is.
    /// </param>
    public static LoopSet Of(NetworkGraph network, ReadOnlySpan<PhaseForest> forests, ReadOnlySpan<bool> rests = default)
    {
        LoopSet loops = new();
        int expected = network.BranchCount * forests.Length;
        loops._branches.EnsureCapacity(2 * expected);
        loops._signs.EnsureCapacity(2 * expected);
        loops._start.EnsureCapacity(expected + 1);
        loops._phase.EnsureCapacity(expected);
        loops.Find(network, forests, rests);
        return loops;
    }

    /// <summary>Forgets what it held and finds the loops of other phases; new memory is taken only for more of them than before.</summary>
    public void Find(NetworkGraph network, ReadOnlySpan<PhaseForest> forests, ReadOnlySpan<bool> rests = default)
    {
        Clear(network);
        for (int phase = 0; phase < forests.Length; phase++)
        {
            for (int branch = 0; branch < network.BranchCount; branch++)
            {
                if (!network.IsCurrentHeld(branch) && !forests[phase].IsTreeBranch(branch))
                {
                    Close(forests[phase], phase, branch);
                }
            }
        }

        VoltageLoopCount = Count;
        Tie(forests, rests);

        // last, since a capacitor that carries a held current in some phase does change its voltage
        SetRepeatsAside();
    }

    /// <summary>The branches that a chain of loops joins with one branch, over all phases; one flag per branch.</summary>
    public bool[] Reach(int branch)
    {
        DisjointSets joined = new(_network!.BranchCount);
        for (int loop = 0; loop < Count; loop++)
        {
            foreach (int member in Branches(loop))
            {
                joined.Join(member, Branches(loop)[0]);
            }
        }

        var reached = new bool[_network.BranchCount];
        for (int other = 0; other < reached.Length; other++)
        {
            reached[other] = joined.Find(other) == joined.Find(branch);
        }

        return reached;
    }

    private ReadOnlySpan<int> Slice(List<int> items, int loop) => CollectionsMarshal.AsSpan(items)[_start[loop].._start[loop + 1]];

    private void Clear(NetworkGraph network)
    {
        _network = network;
        _branches.Clear();
        _signs.Clear();
        _start.Clear();
        _start.Add(0);
        _phase.Clear();
        _meshOfTied?.Clear();
        (MeshCount, HasMeshes) = (0, false);
        _interruptions?.Clear();
        _repeats?.Clear(network);
    }

    // From the branch's first terminal through it to the second, and back through the tree.
    private void Close(PhaseForest forest, int phase, int branch)
    {
        Add(branch, 1);
        TreePath back = forest.Path(_network!.BranchSecond[branch], _network.BranchFirst[branch]);
        while (back.MoveNext())
        {
            Add(back.Edge, back.Sign);
        }

        _start.Add(_branches.Count);
        _phase.Add(phase);
    }

    private void Add(int branch, int sign)
    {
        _branches.Add(branch);
        _signs.Add(sign);
    }

    private void Tie(ReadOnlySpan<PhaseForest> forests, ReadOnlySpan<bool> rests)
    {
        NetworkGraph network = _network!;
        bool hasPaths = true;
        for (int k = 0; k < network.HeldCurrentCount; k++)
        {
            int branch = network.HeldCurrents[k];
            for (int phase = 0; phase < forests.Length; phase++)
            {
                hasPaths &= forests[phase].AreConnected(network.BranchFirst[branch], network.BranchSecond[branch])
                    || (!rests.IsEmpty && rests[(k * forests.Length) + phase]);
            }
        }

        if (!hasPaths)
        {
            TieMeshes(forests, rests);
            return;
        }

        MeshCount = network.HeldCurrentCount;
        for (int k = 0; k < MeshCount; k++)
        {
            int branch = network.HeldCurrents[k];
            for (int phase = 0; phase < forests.Length; phase++)
            {
                if (forests[phase].AreConnected(network.BranchFirst[branch], network.BranchSecond[branch]))
                {
                    (_meshOfTied ??= []).Add(k);
                    Close(forests[phase], phase, branch);
                }
            }
        }
    }

    private void TieMeshes(ReadOnlySpan<PhaseForest> forests, ReadOnlySpan<bool> rests)
    {
        List<int[]> meshes = HeldCurrentMeshes.Find(_network!, forests, rests, _interruptions ??= []);
        (MeshCount, HasMeshes) = (meshes.Count, true);
        for (int m = 0; m < meshes.Count; m++)
        {
            for (int phase = 0; phase < forests.Length; phase++)
            {
                int start = _branches.Count;
                foreach ((int branch, int amount) in HeldCurrentMeshes.Loop(_network!, forests[phase], meshes[m]))
                {
                    for (int k = 0; k < Math.Abs(amount); k++)
                    {
                        Add(branch, Math.Sign(amount));
                    }
                }

                if (_branches.Count > start)
                {
                    (_meshOfTied ??= []).Add(m);
                    _start.Add(_branches.Count);
                    _phase.Add(phase);
                }
            }
        }
    }

    private void SetRepeatsAside()
    {
        ReadOnlySpan<(int First, int Repeat)> pairs = _repeated.Find(this, _network!.CapacitorCount);
        if (pairs.IsEmpty)
        {
            return;
        }

        if (_isAside.Length < Count)
        {
            _isAside = new bool[Count];
        }

        _isAside.AsSpan().Clear();
        _repeats ??= new LoopSet();
        _repeats._network = _network;
        foreach ((int first, int repeat) in pairs)
        {
            _repeats.Copy(this, first);
            _repeats.Copy(this, repeat);
            _isAside[repeat] = true;
        }

        _repeats.VoltageLoopCount = _repeats.Count;
        VoltageLoopCount -= pairs.Length;
        Compact(_isAside.AsSpan(0, Count));
    }

    private void Copy(LoopSet source, int loop)
    {
        _branches.AddRange(source.Branches(loop));
        _signs.AddRange(source.Signs(loop));
        _start.Add(_branches.Count);
        _phase.Add(source._phase[loop]);
    }

    // Moves the loops that stay together, in their order.
    private void Compact(ReadOnlySpan<bool> isAside)
    {
        Span<int> branches = CollectionsMarshal.AsSpan(_branches), signs = CollectionsMarshal.AsSpan(_signs);
        int kept = 0, start = 0, end = 0;
        for (int loop = 0; loop < isAside.Length; loop++)
        {
            int next = _start[loop + 1];
            if (!isAside[loop])
            {
                branches[start..next].CopyTo(branches[end..]);
                signs[start..next].CopyTo(signs[end..]);
                end += next - start;
                _phase[kept] = _phase[loop];
                _start[++kept] = end;
            }

            start = next;
        }

        _branches.RemoveRange(end, _branches.Count - end);
        _signs.RemoveRange(end, _signs.Count - end);
        _phase.RemoveRange(kept, _phase.Count - kept);
        _start.RemoveRange(kept + 1, _start.Count - kept - 1);
    }
}
