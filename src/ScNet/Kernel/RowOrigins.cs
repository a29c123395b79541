using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// Carries single reduced rows of an elimination back to the original ones, each at the cost of the rows
/// that it came of. All rows at once are carried back by <see cref="Elimination{T}.CarryBack"/>.
/// </summary>
internal sealed class RowOrigins<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly IReadOnlyList<RowOperation<T>> _operations;
    private readonly int[] _start;
    private readonly int[] _byTarget;
    private readonly int[] _pivotOrder;
    private readonly Rational<T>[] _weights;
    private readonly bool[] _isDue;
    private readonly PriorityQueue<int, int> _due = new();

    public RowOrigins(Elimination<T> elimination)
    {
        int rows = elimination.Rows.Count;
        _operations = elimination.Operations;
        _pivotOrder = new int[rows];
        _pivotOrder.AsSpan().Fill(int.MaxValue);
        for (int k = 0; k < elimination.Pivots.Count; k++)
        {
            _pivotOrder[elimination.Pivots[k].Row] = k;
        }

        _weights = new Rational<T>[rows];
        _isDue = new bool[rows];
        _start = new int[rows + 1];
        foreach (RowOperation<T> operation in _operations)
        {
            _start[operation.Target + 1]++;
        }

        for (int row = 0; row < rows; row++)
        {
            _start[row + 1] += _start[row];
        }

        int[] next = _start[..rows];
        _byTarget = new int[_operations.Count];
        for (int k = 0; k < _byTarget.Length; k++)
        {
            _byTarget[next[_operations[k].Target]++] = k;
        }
    }

    /// <summary>The last step that was done to a row, if there was any.</summary>
    public bool TryGetLast(int row, out RowOperation<T> operation)
    {
        bool has = _start[row + 1] > _start[row];
        operation = has ? _operations[_byTarget[_start[row + 1] - 1]] : default;
        return has;
    }

    /// <summary>The original rows of which a multiple of a reduced row is made, with their weights.</summary>
    /// <param name="row">The row.</param>
    /// <param name="weight">How much of it.</param>
    /// <param name="withoutLast">Whether the row is meant as it was before its last step.</param>
    public List<(int Row, Rational<T> Weight)> Of(int row, Rational<T> weight, bool withoutLast = false)
    {
        List<(int Row, Rational<T> Weight)> origins = [];
        Add(row, weight);
        while (_due.TryDequeue(out int target, out _))
        {
            Rational<T> own = _weights[target];
            (_weights[target], _isDue[target]) = (Rational<T>.Zero, false);
            if (own.IsZero)
            {
                continue;
            }

            // a source has been a pivot before, so nothing is added to it once it is its turn
            for (int k = _start[target + 1] - (withoutLast && target == row ? 2 : 1); k >= _start[target]; k--)
            {
                RowOperation<T> step = _operations[_byTarget[k]];
                own /= step.Content;
                Add(step.Source, -own * step.Factor);
                own *= step.Scale;
            }

            origins.Add((target, own));
        }

        return origins;

        void Add(int source, Rational<T> more)
        {
            _weights[source] += more;
            if (!_isDue[source])
            {
                _isDue[source] = true;
                _due.Enqueue(source, -_pivotOrder[source]);
            }
        }
    }
}
