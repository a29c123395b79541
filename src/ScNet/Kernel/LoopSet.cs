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
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest[] _forests;
    private readonly List<int> _branches;
    private readonly List<int> _signs;
    private readonly List<int> _start;
    private readonly List<int> _phase;

    private LoopSet(SwitchedNetwork network, PhaseForest[] forests)
    {
        int expected = network.BranchCount * network.PhaseCount;
        _network = network;
        _forests = forests;
        _branches = new(2 * expected);
        _signs = new(2 * expected);
        _start = new(expected + 1) { 0 };
        _phase = new(expected);
    }

    public int Count => _phase.Count;

    /// <summary>How many loops, counted from the first, hold branches of held voltage only; the others are tied.</summary>
    public int VoltageLoopCount { get; private set; }

    /// <summary>The number of equations: one per loop of held voltages, and one for all the loops of a held current together.</summary>
    public int EquationCount => VoltageLoopCount + _network.HeldCurrents.Length;

    /// <summary>The phases, from 0, in which a held current has no path, with its branch.</summary>
    public List<(int Phase, int Branch)> Interruptions { get; } = [];

    /// <summary>
    /// The loops set aside, in pairs: the one that stayed at 2k, the one set aside at 2k + 1; null where there is none.
    /// </summary>
    public LoopSet? Repeats { get; private set; }

    public int Phase(int loop) => _phase[loop];

    /// <summary>Whether a loop is closed through a held current.</summary>
    public bool IsTied(int loop) => loop >= VoltageLoopCount;

    /// <summary>The equation to which a loop belongs.</summary>
    public int Equation(int loop) =>
        IsTied(loop) ? VoltageLoopCount + Array.IndexOf(_network.HeldCurrents, Branches(loop)[0]) : loop;

    public ReadOnlySpan<int> Branches(int loop) => Slice(_branches, loop);

    public ReadOnlySpan<int> Signs(int loop) => Slice(_signs, loop);

    /// <summary>Finds the loops of every phase.</summary>
    public static LoopSet Of(SwitchedNetwork network, PhaseForest[] forests)
    {
        LoopSet loops = new(network, forests);
        for (int phase = 0; phase < forests.Length; phase++)
        {
            for (int branch = 0; branch < network.BranchCount; branch++)
            {
                if (!network.IsCurrentHeld(branch) && !forests[phase].IsTreeBranch(branch))
                {
                    loops.Close(phase, branch);
                }
            }
        }

        loops.VoltageLoopCount = loops.Count;
        foreach (int branch in network.HeldCurrents)
        {
            loops.Tie(branch);
        }

        // last, since a capacitor that carries a held current in some phase does change its voltage
        loops.SetRepeatsAside();
        return loops;
    }

    /// <summary>The branches that a chain of loops joins with one branch, over all phases; one flag per branch.</summary>
    public bool[] Reach(int branch)
    {
        DisjointSets joined = new(_network.BranchCount);
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

    // From the branch's first terminal through it to the second, and back through the tree.
    private void Close(int phase, int branch)
    {
        PhaseForest forest = _forests[phase];
        Add(branch, 1);
        int from = forest.Group[_network.BranchSecond[branch]], to = forest.Group[_network.BranchFirst[branch]];
        while (from != to)
        {
            if (forest.Depth[from] >= forest.Depth[to])
            {
                Add(forest.ParentBranch[from], forest.SignTowardsParent(from));
                from = forest.ParentGroup[from];
            }
            else
            {
                Add(forest.ParentBranch[to], -forest.SignTowardsParent(to));
                to = forest.ParentGroup[to];
            }
        }

        _start.Add(_branches.Count);
        _phase.Add(phase);
    }

    private void Add(int branch, int sign)
    {
        _branches.Add(branch);
        _signs.Add(sign);
    }

    private void Tie(int branch)
    {
        for (int phase = 0; phase < _forests.Length; phase++)
        {
            if (_forests[phase].AreConnected(_network.BranchFirst[branch], _network.BranchSecond[branch]))
            {
                Close(phase, branch);
            }
            else
            {
                Interruptions.Add((phase, branch));
            }
        }
    }

    private void SetRepeatsAside()
    {
        List<(int First, int Repeat)> pairs = RepeatedLoops.Find(this, _network.CapacitorCount);
        if (pairs.Count == 0)
        {
            return;
        }

        Repeats = new LoopSet(_network, _forests);
        var isAside = new bool[Count];
        foreach ((int first, int repeat) in pairs)
        {
            Repeats.Copy(this, first);
            Repeats.Copy(this, repeat);
            isAside[repeat] = true;
        }

        Repeats.VoltageLoopCount = Repeats.Count;
        VoltageLoopCount -= pairs.Count;
        Compact(isAside);
    }

    private void Copy(LoopSet source, int loop)
    {
        _branches.AddRange(source.Branches(loop));
        _signs.AddRange(source.Signs(loop));
        _start.Add(_branches.Count);
        _phase.Add(source._phase[loop]);
    }

    // Moves the loops that stay together, in their order.
    private void Compact(bool[] isAside)
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
