namespace ScNet.Kernel;

/// <summary>
/// The fundamental loops of every phase: one per branch outside the spanning forest, as signed lists of
/// branches. A current load adds one loop per phase, closed through the load, and these carry charge in
/// the proportion of the duties.
/// </summary>
/// <remarks>
/// The sign of a branch is 1 where the loop runs through it from its first terminal to its second.
/// A loop that repeats another phase's loop of the same capacitor with sources only is set aside: at the
/// ideal point and in the slow-switching limit that capacitor's voltage never changes, so no charge flows
/// in either (docs/theory/exact-steady-state.md). <see cref="Repeats"/> keeps them for the fast limit.
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

    /// <summary>How many loops, counted from the last, are closed through a current load and tied together.</summary>
    public int LoadLoopCount { get; private set; }

    /// <summary>The number of equations: one per loop, the loops of a current load making one together.</summary>
    public int EquationCount => LoadLoopCount == 0 ? Count : Count - LoadLoopCount + 1;

    /// <summary>The phases, from 0, in which a current load has no path.</summary>
    public List<int> InterruptedPhases { get; } = [];

    /// <summary>
    /// The loops set aside, in pairs: the one that stayed at 2k, the one set aside at 2k + 1; null where there is none.
    /// </summary>
    public LoopSet? Repeats { get; private set; }

    public int Phase(int loop) => _phase[loop];

    public bool IsLoadLoop(int loop) => loop >= Count - LoadLoopCount;

    /// <summary>The equation to which a loop belongs.</summary>
    public int Equation(int loop) => Math.Min(loop, EquationCount - 1);

    public ReadOnlySpan<int> Branches(int loop) => Slice(_branches, loop);

    public ReadOnlySpan<int> Signs(int loop) => Slice(_signs, loop);

    /// <summary>Finds the loops of every phase.</summary>
    public static LoopSet Of(SwitchedNetwork network, PhaseForest[] forests)
    {
        LoopSet loops = new(network, forests);
        int lastBranch = network.Load == LoadKind.Stiff ? network.BranchCount : network.BranchCount - 1;
        for (int phase = 0; phase < forests.Length; phase++)
        {
            for (int k = 0; k < lastBranch; k++)
            {
                int branch = k == network.OutputBranch && network.Load == LoadKind.Current ? network.InputBranch : k;
                if (!forests[phase].IsTreeBranch(branch))
                {
                    loops.Close(phase, branch);
                }
            }
        }

        if (network.Load == LoadKind.Current)
        {
            loops.CloseThroughLoad();
        }

        // last, since a capacitor that carries the load's current in some phase does change its voltage
        loops.SetRepeatsAside();
        return loops;
    }

    /// <summary>The branches that a chain of loops joins with one branch, over all phases; one flag per branch.</summary>
    public bool[] Reach(int branch)
    {
        var reached = new bool[_network.BranchCount];
        reached[branch] = true;
        for (bool isGrowing = true; isGrowing;)
        {
            isGrowing = false;
            for (int loop = 0; loop < Count; loop++)
            {
                bool touches = false, isWhole = true;
                foreach (int member in Branches(loop))
                {
                    touches |= reached[member];
                    isWhole &= reached[member];
                }

                if (touches && !isWhole)
                {
                    isGrowing = true;
                    foreach (int member in Branches(loop))
                    {
                        reached[member] = true;
                    }
                }
            }
        }

        return reached;
    }

    private ReadOnlySpan<int> Slice(List<int> items, int loop) =>
        System.Runtime.InteropServices.CollectionsMarshal.AsSpan(items)[_start[loop].._start[loop + 1]];

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

    private void CloseThroughLoad()
    {
        for (int phase = 0; phase < _forests.Length; phase++)
        {
            if (_forests[phase].Component[_forests[phase].Group[_network.Output]] == 0)
            {
                Close(phase, _network.OutputBranch);
                LoadLoopCount++;
            }
            else
            {
                InterruptedPhases.Add(phase);
            }
        }
    }

    private void SetRepeatsAside()
    {
        foreach ((int first, int repeat) in RepeatedLoops.Find(this, _network.CapacitorCount))
        {
            Repeats ??= new LoopSet(_network, _forests);
            Repeats.Copy(this, first);
            Repeats.Copy(this, repeat);
            Drop(repeat);
        }
    }

    private void Copy(LoopSet source, int loop)
    {
        _branches.AddRange(source.Branches(loop));
        _signs.AddRange(source.Signs(loop));
        _start.Add(_branches.Count);
        _phase.Add(source._phase[loop]);
    }

    private void Drop(int loop)
    {
        int start = _start[loop], length = _start[loop + 1] - start;
        _branches.RemoveRange(start, length);
        _signs.RemoveRange(start, length);
        _phase.RemoveAt(loop);
        _start.RemoveAt(loop + 1);
        for (int l = loop + 1; l < _start.Count; l++)
        {
            _start[l] -= length;
        }
    }
}
