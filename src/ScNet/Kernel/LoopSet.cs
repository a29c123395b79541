using System.Runtime.InteropServices;

namespace ScNet.Kernel;

/// <summary>
/// The fundamental loops of every phase: one per branch of held voltage outside the spanning forest, as
/// signed lists of branches. A port that holds its current adds one loop per phase, closed through the port,
/// and these are tied: they carry charge in the proportion of the duties.
/// </summary>
/// <remarks>
/// The sign of a branch is 1 where the loop runs through it from its first terminal to its second; the branch
/// that closes a loop comes first in it. A loop that repeats another phase's loop of the same capacitor with
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
    private readonly RepeatedLoops _repeated = new();
    private NetworkGraph? _network;
    private LoopSet? _repeats;
    private bool[] _isAside = [];

    public int Count => _phase.Count;

    /// <summary>The number of branches in all loops together.</summary>
    public int EntryCount => _branches.Count;

    /// <summary>How many loops, counted from the first, hold branches of held voltage only; the others are tied.</summary>
    public int VoltageLoopCount { get; private set; }

    /// <summary>The number of equations: one per loop of held voltages, and one for all the loops of a held current together.</summary>
    public int EquationCount => VoltageLoopCount + _network!.HeldCurrentCount;

    /// <summary>The phases, from 0, in which a held current has no path, with its branch.</summary>
    public List<(int Phase, int Branch)> Interruptions { get; } = [];

    /// <summary>
    /// The loops set aside, in pairs: the one that stayed at 2k, the one set aside at 2k + 1; null where there is none.
    /// </summary>
    public LoopSet? Repeats => _repeats is { Count: > 0 } ? _repeats : null;

    public int Phase(int loop) => _phase[loop];

    /// <summary>Whether a loop is closed through a held current.</summary>
    public bool IsTied(int loop) => loop >= VoltageLoopCount;

    /// <summary>The equation to which a loop belongs.</summary>
    public int Equation(int loop) =>
        IsTied(loop) ? VoltageLoopCount + _network!.HeldCurrents.AsSpan().IndexOf(Branches(loop)[0]) : loop;

    public ReadOnlySpan<int> Branches(int loop) => Slice(_branches, loop);

    public ReadOnlySpan<int> Signs(int loop) => Slice(_signs, loop);

    /// <summary>Finds the loops of every phase.</summary>
    public static LoopSet Of(NetworkGraph network, ReadOnlySpan<PhaseForest> forests)
    {
        LoopSet loops = new();
        int expected = network.BranchCount * forests.Length;
        loops._branches.EnsureCapacity(2 * expected);
        loops._signs.EnsureCapacity(2 * expected);
        loops._start.EnsureCapacity(expected + 1);
        loops._phase.EnsureCapacity(expected);
        loops.Find(network, forests);
        return loops;
    }

    /// <summary>Forgets what it held and finds the loops of other phases; new memory is taken only for more of them than before.</summary>
    public void Find(NetworkGraph network, ReadOnlySpan<PhaseForest> forests)
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
        foreach (int branch in network.HeldCurrents.AsSpan(0, network.HeldCurrentCount))
        {
            Tie(forests, branch);
        }

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
        Interruptions.Clear();
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

    private void Tie(ReadOnlySpan<PhaseForest> forests, int branch)
    {
        for (int phase = 0; phase < forests.Length; phase++)
        {
            if (forests[phase].AreConnected(_network!.BranchFirst[branch], _network.BranchSecond[branch]))
            {
                Close(forests[phase], phase, branch);
            }
            else
            {
                Interruptions.Add((phase, branch));
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
