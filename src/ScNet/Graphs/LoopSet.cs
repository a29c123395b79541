namespace ScNet.Graphs;

/// <summary>
/// The fundamental loops of every phase: one per branch outside the spanning forest, as signed lists of
/// branches. A current load adds one loop per phase, closed through the load, and these carry charge in
/// the proportion of the duties.
/// </summary>
/// <remarks>
/// The sign of a branch is 1 where the loop runs through it from its first terminal to its second.
/// A loop that repeats another phase's loop of one capacitor with sources only is set apart: it says
/// nothing new, and in the slow-switching limit no charge flows in either, because that capacitor's
/// voltage never changes (docs/theory/exact-steady-state.md).
/// </remarks>
internal sealed class LoopSet
{
    private readonly SwitchedNetwork _network;
    private readonly PhaseForest[] _forests;
    private readonly List<int> _branches;
    private readonly List<int> _signs;
    private readonly List<int> _start;
    private readonly List<int> _phase;
    private int[] _equation = [];
    private readonly List<(int Loop, int First)> _repeats = [];

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

    /// <summary>Loops that repeat the first loop of the same capacitor with sources only.</summary>
    public IReadOnlyList<(int Loop, int First)> Repeats => _repeats;

    /// <summary>The number of equations: one per loop but the repeats, the loops of a current load making one together.</summary>
    public int EquationCount { get; private set; }

    /// <summary>The phases, from 0, in which a current load has no path.</summary>
    public List<int> InterruptedPhases { get; } = [];

    public int Phase(int loop) => _phase[loop];

    public bool IsLoadLoop(int loop) => loop >= Count - LoadLoopCount;

    /// <summary>The equation to which a loop belongs, or -1 for a repeat.</summary>
    public int Equation(int loop) => _equation[loop];

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

        loops.FindRepeats();
        if (network.Load == LoadKind.Current)
        {
            loops.CloseThroughLoad();
        }

        loops.NumberEquations();
        return loops;
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

    private void NumberEquations()
    {
        _equation = new int[Count];
        foreach ((int repeat, _) in _repeats)
        {
            _equation[repeat] = -1;
        }

        for (int loop = 0; loop < Count - LoadLoopCount; loop++)
        {
            _equation[loop] = _equation[loop] < 0 ? -1 : EquationCount++;
        }

        if (LoadLoopCount > 0)
        {
            _equation.AsSpan(Count - LoadLoopCount).Fill(EquationCount++);
        }
    }

    private void FindRepeats()
    {
        int capacitors = _network.CapacitorCount;
        Span<int> uses = capacitors <= 256 ? stackalloc int[capacitors] : new int[capacitors];
        Span<int> heldBySources = capacitors <= 256 ? stackalloc int[capacitors] : new int[capacitors];
        uses.Clear();
        heldBySources.Clear();
        for (int loop = 0; loop < Count; loop++)
        {
            foreach (int branch in Branches(loop))
            {
                if (branch < capacitors)
                {
                    uses[branch]++;
                }
            }

            if (IsOfSourcesAndOneCapacitor(loop, out int capacitor))
            {
                heldBySources[capacitor]++;
            }
        }

        for (int capacitor = 0; capacitor < capacitors; capacitor++)
        {
            if (uses[capacitor] > 1 && uses[capacitor] == heldBySources[capacitor])
            {
                SetRepeatsApart(capacitor);
            }
        }
    }

    private bool IsOfSourcesAndOneCapacitor(int loop, out int capacitor)
    {
        ReadOnlySpan<int> branches = Branches(loop);
        capacitor = branches[0];
        if (capacitor >= _network.CapacitorCount)
        {
            return false;
        }

        foreach (int branch in branches[1..])
        {
            if (branch < _network.CapacitorCount)
            {
                return false;
            }
        }

        return true;
    }

    // Held at different voltages in different phases, a capacitor carries charge after all.
    private void SetRepeatsApart(int capacitor)
    {
        List<int> own = [];
        for (int loop = 0; loop < Count; loop++)
        {
            if (Branches(loop)[0] == capacitor)
            {
                own.Add(loop);
                if (!IsSameLoop(own[0], loop))
                {
                    return;
                }
            }
        }

        foreach (int loop in own[1..])
        {
            _repeats.Add((loop, own[0]));
        }
    }

    // Both start at the same capacitor and go on through one or two sources, whose order may differ.
    private bool IsSameLoop(int left, int right)
    {
        ReadOnlySpan<int> branches = Branches(right);
        if (Branches(left).Length != branches.Length)
        {
            return false;
        }

        for (int e = 0; e < branches.Length; e++)
        {
            int other = Branches(left).IndexOf(branches[e]);
            if (other < 0 || Signs(left)[other] != Signs(right)[e])
            {
                return false;
            }
        }

        return true;
    }
}
