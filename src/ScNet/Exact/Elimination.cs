using System.Numerics;

namespace ScNet.Exact;

/// <summary>
/// Exact sparse Gaussian elimination over integers. Rows are combined without fractions and divided by
/// their common content; each pivot is one of least Markowitz cost among the shortest column and the
/// shortest row, so that fill stays low. The steps are kept, so that left vectors can be carried back
/// to the original rows.
/// </summary>
/// <remarks>
/// Columns come in three kinds, in this order: eager ones, which are pivoted first; deferred ones,
/// pivoted when no eager pivot is left; carried ones, never pivoted (right-hand sides).
/// Source: H. M. Markowitz, "The elimination form of the inverse", Management Science 3, 1957; content
/// removal as in E. H. Bareiss, Math. Comp. 22, 1968 (both from memory). Cost: for the networks served
/// here fill stays bounded, so time and memory are near-linear in the number of entries.
/// </remarks>
internal sealed class Elimination<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly SparseRows<T> _rows;
    private readonly JaggedLists _rowsOfColumn;
    private readonly int _pivotColumns;
    private readonly CountBuckets _byRow;
    private readonly CountBuckets _byColumn;
    private readonly bool[] _isPivotColumn;
    private readonly bool[] _isPivotRow;
    private readonly List<(int Row, int Column)> _pivots;
    private readonly List<RowOperation<T>> _operations;
    private int _stageFrom;
    private int _stageTo;

    private Elimination(SparseRows<T> rows, int eagerColumns, int deferredColumns)
    {
        _rows = rows;
        _pivotColumns = eagerColumns + deferredColumns;
        _byRow = new CountBuckets(rows.Count, _pivotColumns);
        _byColumn = new CountBuckets(_pivotColumns, rows.Count);
        _isPivotColumn = new bool[_pivotColumns];
        _isPivotRow = new bool[rows.Count];
        _pivots = new(_pivotColumns);
        _operations = new(2 * _pivotColumns);
        _rowsOfColumn = IndexColumns(rows, _pivotColumns);
    }

    /// <summary>The pivots in the order taken.</summary>
    public IReadOnlyList<(int Row, int Column)> Pivots => _pivots;

    /// <summary>The reduced rows: pivot rows as they stood when taken, the others with carried columns only.</summary>
    public SparseRows<T> Rows => _rows;

    /// <summary>Eliminates in place.</summary>
    /// <param name="rows">The rows; they become the reduced ones.</param>
    /// <param name="eagerColumns">How many columns, from 0, are pivoted first.</param>
    /// <param name="deferredColumns">How many columns after those are pivoted last.</param>
    /// <exception cref="OverflowException">A machine integer does not hold a value that arises.</exception>
    public static Elimination<T> Run(SparseRows<T> rows, int eagerColumns, int deferredColumns)
    {
        Elimination<T> elimination = new(rows, eagerColumns, deferredColumns);
        elimination.Stage(0, eagerColumns);
        elimination.Stage(eagerColumns, eagerColumns + deferredColumns);
        return elimination;
    }

    public bool IsPivotColumn(int column) => _isPivotColumn[column];

    public bool IsPivotRow(int row) => _isPivotRow[row];

    /// <summary>
    /// Carries the coefficients of a combination of reduced rows back to the original rows, in place:
    /// afterwards Σ coefficient · original row is the same combination.
    /// </summary>
    public void CarryBack(Span<Rational<T>> coefficients)
    {
        for (int k = _operations.Count - 1; k >= 0; k--)
        {
            RowOperation<T> step = _operations[k];
            Rational<T> weight = coefficients[step.Target];
            if (weight.IsZero)
            {
                continue;
            }

            weight /= step.Content;
            coefficients[step.Target] = weight * step.Scale;
            coefficients[step.Source] -= weight * step.Factor;
        }
    }

    /// <summary>
    /// Solves rows · x = 0 for the pivot columns by back-substitution, the entries of all other columns
    /// being given in <paramref name="x"/> (index by column); the pivot columns' are overwritten.
    /// </summary>
    public void SubstituteBack(Span<Rational<T>> x)
    {
        for (int k = _pivots.Count - 1; k >= 0; k--)
        {
            (int row, int column) = _pivots[k];
            ReadOnlySpan<int> columns = _rows.Columns(row);
            ReadOnlySpan<T> values = _rows.Values(row);
            Rational<T> sum = Rational<T>.Zero;
            T pivot = T.One;
            for (int e = 0; e < columns.Length; e++)
            {
                if (columns[e] == column)
                {
                    pivot = values[e];
                }
                else if (!x[columns[e]].IsZero)
                {
                    sum += x[columns[e]] * values[e];
                }
            }

            x[column] = sum.IsZero ? Rational<T>.Zero : -sum / pivot;
        }
    }

    private static JaggedLists IndexColumns(SparseRows<T> rows, int pivotColumns)
    {
        Span<int> counts = pivotColumns <= 256 ? stackalloc int[pivotColumns] : new int[pivotColumns];
        counts.Clear();
        int total = 0;
        for (int row = 0; row < rows.Count; row++)
        {
            foreach (int column in rows.Columns(row))
            {
                if (column < pivotColumns)
                {
                    counts[column]++;
                    total++;
                }
            }
        }

        JaggedLists index = new(pivotColumns, total + (total / 2) + 4);
        for (int column = 0; column < pivotColumns; column++)
        {
            index.AddList(counts[column]);
        }

        for (int row = 0; row < rows.Count; row++)
        {
            foreach (int column in rows.Columns(row))
            {
                if (column < pivotColumns)
                {
                    index.Append(column, row);
                }
            }
        }

        return index;
    }

    // Pivots on the columns of [from, to) until none of the remaining rows has an entry there.
    private void Stage(int from, int to)
    {
        (_stageFrom, _stageTo) = (from, to);
        for (int column = from; column < to; column++)
        {
            if (_rowsOfColumn.Length(column) > 0)
            {
                _byColumn.File(column, _rowsOfColumn.Length(column));
            }
        }

        for (int row = 0; row < _rows.Count; row++)
        {
            if (!_isPivotRow[row])
            {
                FileRow(row);
            }
        }

        while (_byColumn.Least() is var column and >= 0)
        {
            (int row, int pivotColumn) = Choose(column);
            Take(row, pivotColumn);
        }
    }

    // Candidates: the best row of a shortest column, and the best column of a shortest row.
    private (int Row, int Column) Choose(int shortestColumn)
    {
        int bestRow = -1;
        int bestLength = int.MaxValue;
        foreach (int row in _rowsOfColumn[shortestColumn])
        {
            int length = (2 * _rows.Length(row)) + (IsUnit(row, shortestColumn) ? 0 : 1);
            if (length < bestLength)
            {
                (bestRow, bestLength) = (row, length);
            }
        }

        int columnCount = _rowsOfColumn.Length(shortestColumn);
        long cost = (long)(columnCount - 1) * (_rows.Length(bestRow) - 1);
        if (cost > 0)
        {
            TryShortestRow(ref bestRow, ref shortestColumn, cost);
        }

        return (bestRow, shortestColumn);
    }

    private void TryShortestRow(ref int bestRow, ref int bestColumn, long cost)
    {
        bool hasCandidate = false;
        while (!hasCandidate && _byRow.Least() is var row and >= 0)
        {
            foreach (int column in _rows.Columns(row))
            {
                if (column < _pivotColumns && _byColumn.Count(column) is var count and >= 0)
                {
                    hasCandidate = true;
                    long other = (long)(count - 1) * (_rows.Length(row) - 1);
                    if (other < cost)
                    {
                        (bestRow, bestColumn, cost) = (row, column, other);
                    }
                }
            }

            if (!hasCandidate)
            {
                // nothing of this stage is left in the row; it is filed again when it changes
                _byRow.Remove(row);
            }
        }
    }

    private bool IsUnit(int row, int column)
    {
        T value = _rows.Values(row)[_rows.Find(row, column)];
        return value == T.One || value == -T.One;
    }

    private void Take(int row, int column)
    {
        _pivots.Add((row, column));
        _isPivotRow[row] = true;
        _isPivotColumn[column] = true;
        _byRow.Remove(row);
        _byColumn.Remove(column);
        foreach (int other in _rows.Columns(row))
        {
            if (other < _pivotColumns)
            {
                _rowsOfColumn.Remove(other, row);
                RefileColumn(other);
            }
        }

        T pivot = _rows.Values(row)[_rows.Find(row, column)];
        while (_rowsOfColumn.Length(column) > 0)
        {
            int target = _rowsOfColumn[column][^1];
            Combine(target, row, column, pivot);
            FileRow(target);
        }
    }

    private void Combine(int target, int source, int column, T pivot)
    {
        T entry = _rows.Values(target)[_rows.Find(target, column)];
        T common = pivot == T.One || pivot == -T.One ? T.One : Integers.Gcd(entry, pivot);
        T scale = checked(pivot / common);
        T factor = checked(entry / common);
        if (T.IsNegative(scale))
        {
            scale = checked(-scale);
            factor = checked(-factor);
        }

        if (scale != T.One)
        {
            foreach (ref T value in _rows.Values(target))
            {
                value = checked(value * scale);
            }
        }

        // The source row may move when the target grows, so its spans are taken anew at each entry.
        for (int e = 0; e < _rows.Length(source); e++)
        {
            Subtract(target, _rows.Columns(source)[e], checked(factor * _rows.Values(source)[e]));
        }

        _operations.Add(new(target, source, scale, factor, scale == T.One ? T.One : RemoveContent(target)));
    }

    private void Subtract(int row, int column, T amount)
    {
        int position = _rows.Find(row, column);
        if (position < 0)
        {
            _rows.Append(row, column, checked(-amount));
            if (column < _pivotColumns)
            {
                _rowsOfColumn.Append(column, row);
                RefileColumn(column);
            }

            return;
        }

        T value = checked(_rows.Values(row)[position] - amount);
        if (!T.IsZero(value))
        {
            _rows.Values(row)[position] = value;
            return;
        }

        _rows.RemoveAt(row, position);
        if (column < _pivotColumns)
        {
            _rowsOfColumn.Remove(column, row);
            RefileColumn(column);
        }
    }

    private T RemoveContent(int row)
    {
        Span<T> values = _rows.Values(row);
        T content = T.Zero;
        foreach (T value in values)
        {
            content = T.IsZero(content) ? T.Abs(value) : Integers.Gcd(content, value);
            if (content == T.One)
            {
                return content;
            }
        }

        if (T.IsZero(content))
        {
            return T.One;
        }

        foreach (ref T value in values)
        {
            value /= content;
        }

        return content;
    }

    // Only columns of the present stage are filed; a deferred column waits for its own.
    private void RefileColumn(int column)
    {
        int count = _rowsOfColumn.Length(column);
        if (count > 0 && column >= _stageFrom && column < _stageTo && !_isPivotColumn[column])
        {
            _byColumn.File(column, count);
        }
        else
        {
            _byColumn.Remove(column);
        }
    }

    private void FileRow(int row)
    {
        int length = _rows.Length(row);
        if (length > 0)
        {
            _byRow.File(row, Math.Min(length, _pivotColumns));
        }
        else
        {
            _byRow.Remove(row);
        }
    }
}
