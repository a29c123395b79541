using System.Numerics;

namespace ScNet.Kernel;

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
    private readonly PivotQueue<T> _queue;
    private readonly bool[] _isPivotColumn;
    private readonly bool[] _isPivotRow;
    private readonly List<(int Row, int Column)> _pivots;
    private readonly List<RowOperation<T>> _operations;

    private Elimination(SparseRows<T> rows, int eagerColumns, int deferredColumns)
    {
        int pivotColumns = eagerColumns + deferredColumns;
        _rows = rows;
        _queue = new PivotQueue<T>(rows, pivotColumns);
        _isPivotColumn = new bool[pivotColumns];
        _isPivotRow = new bool[rows.Count];
        _pivots = new(pivotColumns);
        _operations = new(2 * pivotColumns);
    }

    /// <summary>The pivots in the order taken.</summary>
    public IReadOnlyList<(int Row, int Column)> Pivots => _pivots;

    /// <summary>What was done to rows, in the order done.</summary>
    public IReadOnlyList<RowOperation<T>> Operations => _operations;

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

    // Pivots on the columns of [from, to) until none of the remaining rows has an entry there.
    private void Stage(int from, int to)
    {
        _queue.Begin(from, to, _isPivotRow);
        while (_queue.TryChoose(out int row, out int column))
        {
            Take(row, column);
        }
    }

    private void Take(int row, int column)
    {
        _pivots.Add((row, column));
        _isPivotRow[row] = true;
        _isPivotColumn[column] = true;
        _queue.Retire(row, column);
        T pivot = _rows.Values(row)[_rows.Find(row, column)];
        while (!_queue.RowsOf(column).IsEmpty)
        {
            int target = _queue.RowsOf(column)[^1];
            Combine(target, row, column, pivot);
            _queue.FileRow(target);
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
            _queue.NoteAdded(row, column);
            return;
        }

        T value = checked(_rows.Values(row)[position] - amount);
        if (!T.IsZero(value))
        {
            _rows.Values(row)[position] = value;
            return;
        }

        _rows.RemoveAt(row, position);
        _queue.NoteRemoved(row, column);
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
}
