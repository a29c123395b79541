namespace ScNet.Kernel;

/// <summary>
/// Solves one small network after the other on the same memory: contracts the closed switches of each phase, finds
/// the loops, eliminates them, and keeps voltages and charges. For searches; one per thread.
/// </summary>
/// <remarks>
/// Once the largest network has been seen, nothing is allocated. The loops' equations are carried along with the
/// identity, so that every reduced row tells the combination of loops that it is: rows give voltages, combinations
/// give charges (docs/theory/exact-steady-state.md). All loops take part, repeated ones too, which leaves such a
/// network circulating. Cost: loops² · (branches + loops), under a microsecond for six branches in two phases
/// (docs/performance.md); for larger networks <see cref="Elimination{T}"/> grows more slowly.
/// </remarks>
internal sealed class CandidateSolver
{
    /// <summary>The largest weight of a phase; with larger ones a network counts as overflown.</summary>
    public const int LargestWeight = 1 << 20;

    private readonly DisjointSets _nodes = new();
    private readonly SpanningForest _forest = new();
    private int[] _first = [];
    private int[] _second = [];
    private int[] _loops = [];
    private int[] _phaseOfLoop = [];
    private int[] _matrix = [];
    private int[] _rowOfColumn = [];
    private int[] _weights = [];
    private NetworkGraph? _network;
    private int _phaseCount;
    private int _loopCount;
    private int _voltageLoopCount;
    private int _equationCount;
    private int _width;

    /// <summary>Solves a network for the voltages and charges of all branches.</summary>
    /// <param name="network">The network; it is read again when results are asked for.</param>
    /// <param name="closed">Whether switch s is closed in phase j, at index j · switches + s.</param>
    /// <param name="weights">Whole numbers in the proportion of the phases' durations, one per phase, up to <see cref="LargestWeight"/>.</param>
    public NetworkStatus Solve(NetworkGraph network, ReadOnlySpan<bool> closed, ReadOnlySpan<int> weights)
    {
        _network = network;
        _phaseCount = weights.Length;
        Reserve(network);
        if (!TryFindLoops(network, closed))
        {
            return NetworkStatus.Interrupted;
        }

        return TryFillMatrix(network, weights)
            && EchelonForm.TryReduce(_matrix.AsSpan(0, _equationCount * _width), _width, network.FirstGivenBranch, out int rank)
            ? Judge(network, rank)
            : NetworkStatus.Overflown;
    }

    /// <summary>Kirchhoff's voltage law of one phase alone: the reduced equations of its loops, which are the same whenever the loops span the same space.</summary>
    /// <param name="network">The network; none of its currents may be held.</param>
    /// <param name="closed">One flag per switch.</param>
    /// <returns>The rows, a column per branch; valid until the next call. Their entries are 0, 1 and -1, since the loops of a graph are totally unimodular.</returns>
    public ReadOnlySpan<int> PhaseEquations(NetworkGraph network, ReadOnlySpan<bool> closed)
    {
        _network = network;
        _phaseCount = 1;
        Reserve(network);
        TryFindLoops(network, closed);
        Span<int> rows = _loops.AsSpan(0, _loopCount * network.BranchCount);
        Integers.Demand(EchelonForm.TryReduce(rows, network.BranchCount, network.BranchCount, out int rank));
        return rows[..(rank * network.BranchCount)];
    }

    /// <summary>The voltage of a branch per volt of one given port, the others at zero, as a fraction not reduced; what the loops leave free is at zero.</summary>
    /// <param name="branch">The branch.</param>
    /// <param name="given">The branch of the given port.</param>
    public (int Numerator, int Denominator) Voltage(int branch, int given)
    {
        if (branch >= _network!.FirstGivenBranch)
        {
            return (branch == given ? 1 : 0, 1);
        }

        int row = _rowOfColumn[branch];
        return row < 0 ? (0, 1) : (-_matrix[(row * _width) + given], _matrix[(row * _width) + branch]);
    }

    /// <summary>
    /// The charge through every branch, from its first terminal to its second, in every phase that delivers charge to
    /// a port whose voltage follows, none to the other ones, and balances every capacitor.
    /// </summary>
    /// <param name="following">The branch of that port, which has a voltage.</param>
    /// <param name="charges">Receives the charges; index branch · phases + phase.</param>
    /// <returns>The charge that the port takes in a period, in the same unit; it may be negative.</returns>
    public long Charges(int following, Span<long> charges)
    {
        NetworkGraph network = _network!;
        ReadOnlySpan<int> row = _matrix.AsSpan(_rowOfColumn[following] * _width, _width);
        charges.Clear();
        for (int loop = 0; loop < _loopCount; loop++)
        {
            long charge = row[network.BranchCount + Equation(loop)];
            if (charge == 0)
            {
                continue;
            }

            charge *= loop < _voltageLoopCount ? 1 : _weights[_phaseOfLoop[loop]];
            ReadOnlySpan<int> signs = _loops.AsSpan(loop * network.BranchCount, network.BranchCount);
            for (int branch = 0, at = _phaseOfLoop[loop]; branch < signs.Length; branch++, at += _phaseCount)
            {
                charges[at] += signs[branch] * charge;
            }
        }

        return row[following];
    }

    // Loops of held voltages first, then those closed through each held current.
    private bool TryFindLoops(NetworkGraph network, ReadOnlySpan<bool> closed)
    {
        _loopCount = 0;
        bool hasAllPaths = true;
        ReadOnlySpan<int> held = network.HeldVoltages.AsSpan(0, network.HeldVoltageCount);
        for (int phase = 0; phase < _phaseCount; phase++)
        {
            Contract(network, closed.Slice(phase * network.SwitchCount, network.SwitchCount));
            _forest.Build(network.NodeCount, _first, _second, held);
            foreach (int branch in held)
            {
                if (_forest.ParentEdge[_first[branch]] != branch && _forest.ParentEdge[_second[branch]] != branch)
                {
                    Close(network, phase, branch);
                }
            }
        }

        _voltageLoopCount = _loopCount;
        _equationCount = _loopCount;
        foreach (int branch in network.HeldCurrents.AsSpan(0, network.HeldCurrentCount))
        {
            for (int phase = 0; phase < _phaseCount; phase++)
            {
                Contract(network, closed.Slice(phase * network.SwitchCount, network.SwitchCount));
                _forest.Build(network.NodeCount, _first, _second, held);
                hasAllPaths &= _forest.Tree[_first[branch]] == _forest.Tree[_second[branch]];
                if (hasAllPaths)
                {
                    Close(network, phase, branch);
                }
            }

            _equationCount++;
        }

        return hasAllPaths;
    }

    private void Contract(NetworkGraph network, ReadOnlySpan<bool> closed)
    {
        _nodes.Reset(network.NodeCount);
        for (int s = 0; s < closed.Length; s++)
        {
            if (closed[s])
            {
                _nodes.Join(network.SwitchFirst[s], network.SwitchSecond[s]);
            }
        }

        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            _first[branch] = _nodes.Find(network.BranchFirst[branch]);
            _second[branch] = _nodes.Find(network.BranchSecond[branch]);
        }
    }

    private void Close(NetworkGraph network, int phase, int branch)
    {
        Span<int> signs = _loops.AsSpan(_loopCount * network.BranchCount, network.BranchCount);
        signs.Clear();
        signs[branch] = 1;
        TreePath back = _forest.Path(_second[branch], _first[branch]);
        while (back.MoveNext())
        {
            signs[back.Edge] = back.Sign;
        }

        _phaseOfLoop[_loopCount++] = phase;
    }

    private int Equation(int loop) => loop < _voltageLoopCount ? loop : _voltageLoopCount + ((loop - _voltageLoopCount) / _phaseCount);

    private bool TryFillMatrix(NetworkGraph network, ReadOnlySpan<int> weights)
    {
        weights.CopyTo(_weights);
        _width = network.BranchCount + _equationCount;
        Grow(ref _matrix, _equationCount * _width);
        bool hasOverflown = weights.ContainsAnyExceptInRange(1, LargestWeight);
        Span<int> matrix = _matrix.AsSpan(0, _equationCount * _width);
        matrix.Clear();
        for (int equation = 0; equation < _equationCount; equation++)
        {
            matrix[(equation * _width) + network.BranchCount + equation] = 1;
        }

        for (int loop = 0; loop < _loopCount; loop++)
        {
            Span<int> row = matrix.Slice(Equation(loop) * _width, network.BranchCount);
            ReadOnlySpan<int> signs = _loops.AsSpan(loop * network.BranchCount, network.BranchCount);
            int weight = loop < _voltageLoopCount ? 1 : weights[_phaseOfLoop[loop]];
            for (int branch = 0; branch < row.Length; branch++)
            {
                row[branch] = Integers.Add(row[branch], signs[branch] * weight, ref hasOverflown);
            }
        }

        return !hasOverflown;
    }

    private NetworkStatus Judge(NetworkGraph network, int rank)
    {
        _rowOfColumn.AsSpan(0, network.FirstGivenBranch).Fill(-1);
        bool isContradictory = false;
        for (int row = 0; row < _equationCount; row++)
        {
            ReadOnlySpan<int> own = _matrix.AsSpan(row * _width, network.BranchCount);
            int leading = EchelonForm.Leading(own);
            if (row < rank)
            {
                _rowOfColumn[leading] = row;
            }
            else
            {
                isContradictory |= leading >= 0;
            }
        }

        if (isContradictory)
        {
            return NetworkStatus.Contradictory;
        }

        // where each of these columns has a pivot, its row holds none of the others
        bool isOpen = _rowOfColumn.AsSpan(network.CapacitorCount, network.FirstGivenBranch - network.CapacitorCount).Contains(-1);
        return isOpen ? NetworkStatus.Open : rank < _equationCount ? NetworkStatus.Circulating : NetworkStatus.Solved;
    }

    private void Reserve(NetworkGraph network)
    {
        // every branch closes at most one loop in a phase
        int branches = network.BranchCount, loops = branches * _phaseCount;
        Grow(ref _first, branches);
        Grow(ref _second, branches);
        Grow(ref _rowOfColumn, branches);
        Grow(ref _weights, _phaseCount);
        Grow(ref _phaseOfLoop, loops);
        Grow(ref _loops, loops * branches);
    }

    private static void Grow(ref int[] array, int length)
    {
        if (array.Length < length)
        {
            array = new int[length];
        }
    }
}
