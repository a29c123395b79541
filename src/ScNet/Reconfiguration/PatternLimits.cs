using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>
/// Both limits of patterns, without allocation: the least dissipation, and the least charging loss, of all
/// flows that deliver one unit and balance the capacitors.
/// </summary>
/// <remarks>
/// Loops of branches and closed switches span all flows; exact elimination leaves one that delivers and those
/// that deliver nothing, and orthogonal projection on the latter gives the least. With two phases both limits
/// are such minima: docs/theory/value-decided-flow.md. Cost: rows² · (switches + capacitors).
/// </remarks>
internal sealed class PatternLimits
{
    // What is left of a vector after projection, relative to it, when it is nothing but rounding.
    private const double RoundingShare = 1e-12;

    private readonly SwitchedNetwork _network;
    private readonly int[] _edgeFirst;
    private readonly int[] _edgeSecond;
    private readonly int[] _edges;
    private readonly int _netColumns;
    private readonly int _width;
    private readonly double[] _slowWeights;
    private readonly double[] _fastWeights;
    private readonly double[] _vector;
    private readonly bool _isLoopedWithoutSwitches;
    private int[] _rows = [];
    private double[] _basis = [];
    private int _rowCount;
    private int _rank;

    public PatternLimits(Converter converter)
    {
        _network = converter.Network;
        int capacitors = _network.CapacitorCount, perPhase = capacitors + _network.SwitchCount;
        _edgeFirst = [.. _network.BranchFirst[.._network.BranchCount], .. _network.SwitchFirst[.._network.SwitchCount]];
        _edgeSecond = [.. _network.BranchSecond[.._network.BranchCount], .. _network.SwitchSecond[.._network.SwitchCount]];
        _edges = new int[_edgeFirst.Length];
        _netColumns = capacitors + 1;
        _width = _netColumns + (2 * perPhase);
        _vector = new double[2 * perPhase];
        _slowWeights = new double[2 * perPhase];
        _fastWeights = new double[2 * perPhase];
        DisjointSets parts = new(_network.NodeCount);
        for (int branch = 0; branch < _network.BranchCount; branch++)
        {
            _isLoopedWithoutSwitches |= parts.Find(_edgeFirst[branch]) == parts.Find(_edgeSecond[branch]);
            parts.Join(_edgeFirst[branch], _edgeSecond[branch]);
        }

        for (int phase = 0; phase < 2; phase++)
        {
            double inverseDuty = 1 / _network.Duties[phase].ToDouble();
            for (int i = 0; i < perPhase; i++)
            {
                double ohms = i < capacitors ? converter.Capacitors[i].EsrOhms : converter.Switches[i - capacitors].Ohms;
                _fastWeights[(phase * perPhase) + i] = Math.Sqrt(ohms * inverseDuty);
                _slowWeights[(phase * perPhase) + i] = i < capacitors ? Math.Sqrt(0.5 * converter.Capacitors[i].ElastancePerFarad) : 0;
            }
        }
    }

    /// <summary>The spanning forest of the phase added last: branches first, then switches.</summary>
    public SpanningForest Forest { get; } = new();

    /// <summary>Forgets the pattern before.</summary>
    public void Clear() => _rowCount = 0;

    /// <summary>Adds the loops of one phase.</summary>
    /// <param name="phase">The phase from 0.</param>
    /// <param name="closed">Its closed switches, a bit each.</param>
    public void AddLoops(int phase, int closed)
    {
        int count = _network.BranchCount;
        for (int branch = 0; branch < count; branch++)
        {
            _edges[branch] = branch;
        }

        for (int s = 0; s < _network.SwitchCount; s++)
        {
            if (((closed >> s) & 1) != 0)
            {
                _edges[count++] = _network.BranchCount + s;
            }
        }

        ReadOnlySpan<int> edges = _edges.AsSpan(0, count);
        Forest.Build(_network.NodeCount, _edgeFirst, _edgeSecond, edges);
        foreach (int edge in edges)
        {
            if (Forest.ParentEdge[_edgeFirst[edge]] != edge && Forest.ParentEdge[_edgeSecond[edge]] != edge)
            {
                AddLoop(phase, edge);
            }
        }
    }

    /// <summary>Eliminates the loops of both phases.</summary>
    /// <returns>
    /// Whether the numbers stayed small and a flow delivers something. Never where branches alone form a loop:
    /// what a capacitor between sources for ever carries is not decided by least dissipation.
    /// </returns>
    public bool TryReduce()
    {
        Span<int> rows = _rows.AsSpan(0, _rowCount * _width);
        return !_isLoopedWithoutSwitches
            && EchelonForm.TryReduce(rows, _width, _netColumns, out _rank)
            && _rank > 0
            && EchelonForm.Leading(rows.Slice((_rank - 1) * _width, _width)) == _netColumns - 1;
    }

    /// <summary>The slow-switching limit in ohms at 1 Hz.</summary>
    public double SlowOhmsAtOneHertz() => Least(_slowWeights);

    /// <summary>The fast-switching limit in ohms.</summary>
    public double FastOhms() => Least(_fastWeights);

    private void AddLoop(int phase, int edge)
    {
        int start = _rowCount++ * _width;
        if (_rows.Length < start + _width)
        {
            Array.Resize(ref _rows, 2 * (start + _width));
        }

        Span<int> row = _rows.AsSpan(start, _width);
        row.Clear();
        Pass(row, phase, edge, 1);
        TreePath back = Forest.Path(_edgeSecond[edge], _edgeFirst[edge]);
        while (back.MoveNext())
        {
            Pass(row, phase, back.Edge, back.Sign);
        }
    }

    private void Pass(Span<int> row, int phase, int edge, int sign)
    {
        int capacitors = _network.CapacitorCount, own = _netColumns + (phase * (capacitors + _network.SwitchCount));
        if (edge >= _network.BranchCount)
        {
            row[own + capacitors + edge - _network.BranchCount] = sign;
        }
        else if (edge < capacitors)
        {
            row[edge] = sign;
            row[own + edge] = sign;
        }
        else if (edge == _network.OutputBranch)
        {
            row[capacitors] = sign;
        }
    }

    private double Least(ReadOnlySpan<double> weights)
    {
        int length = _vector.Length, count = 0;
        if (_basis.Length < (_rowCount - _rank) * length)
        {
            _basis = new double[2 * _rowCount * length];
        }

        Span<double> vector = _vector;
        for (int row = _rank; row < _rowCount; row++)
        {
            double norm = Rest(row, weights, count);
            if (norm > 0)
            {
                Span<double> own = _basis.AsSpan(count++ * length, length);
                for (int i = 0; i < length; i++)
                {
                    own[i] = vector[i] / norm;
                }
            }
        }

        double rest = Rest(_rank - 1, weights, count) / _rows[((_rank - 1) * _width) + _netColumns - 1];
        return rest * rest;
    }

    // Projected twice, for the first time may leave rounding of the size of what is left.
    private double Rest(int row, ReadOnlySpan<double> weights, int count)
    {
        Span<double> vector = _vector;
        ReadOnlySpan<int> charges = _rows.AsSpan((row * _width) + _netColumns, vector.Length);
        for (int i = 0; i < vector.Length; i++)
        {
            vector[i] = charges[i] * weights[i];
        }

        double whole = Math.Sqrt(Product(vector, vector));
        for (int k = 0; k < 2 * count; k++)
        {
            ReadOnlySpan<double> other = _basis.AsSpan(k % count * vector.Length, vector.Length);
            double share = Product(vector, other);
            for (int i = 0; i < vector.Length; i++)
            {
                vector[i] -= share * other[i];
            }
        }

        double rest = Math.Sqrt(Product(vector, vector));
        return rest > RoundingShare * whole ? rest : 0;
    }

    private static double Product(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length && i < b.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }
}
