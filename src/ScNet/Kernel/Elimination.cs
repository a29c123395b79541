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
    private readonly PivotQueue<T> _queue = new();
    private readonly List<(int Row, int Column)> _pivots = [];
    private readonly List<RowOperation<T>> _operations = [];
    private SparseRows<T> _rows = SparseRows<T>.None;
    private bool[] _isPivotColumn = [];
    private bool[] _isPivotRow = [];
    private int[] _place = [];
    private bool _hasOverflown;

    /// <summary>The pivots in the order taken.</summary>
    public IReadOnlyList<(int Row, int Column)> Pivots => _pivots;

    /// <summary>What was done to rows, in the order done.</summary>
    public IReadOnlyList<RowOperation<T>> Operations => _operations;

    /// <summary>The reduced rows: pivot rows as they stood when taken, the others with carried columns only.</summary>
    public SparseRows<T> Rows => _rows;

    /// <summary>Eliminates in place, in a workspace of its own.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a value that arises.</exception>
    public static Elimination<T> Run(SparseRows<T> rows, int eagerColumns, int deferredColumns)
    {
        Elimination<T> elimination = new();
        Integers.Demand(elimination.TryRun(rows, eagerColumns, deferredColumns));
        return elimination;
    }

    /// <summary>Eliminates in place; what an elimination before has left is forgotten.</summary>
    /// <param name="rows">The rows; they become the reduced ones.</param>
    /// <param name="eagerColumns">How many columns, from 0, are pivoted first.</param>
    /// <param name="deferredColumns">How many columns after those are pivoted last.</param>
    /// <returns>False where a machine integer does not hold a value that arises; nothing may be read then.</returns>
    public bool TryRun(SparseRows<T> rows, int eagerColumns, int deferredColumns)
    {
        _rows = rows;
        Reset(eagerColumns + deferredColumns);
        return !_hasOverflown && TryStage(0, eagerColumns) && TryStage(eagerColumns, eagerColumns + deferredColumns);
    }

    public bool IsPivotColumn(int column) => _isPivotColumn[column];

    public bool IsPivotRow(int row) => _isPivotRow[row];

    /// <summary>
    /// Carries the coefficients of a combination of reduced rows back to the original rows, in place:
    /// afterwards Σ coefficient · original row is the same combination.
    /// </summary>
    /// <returns>False where a machine integer does not hold a value that arises.</returns>
    public bool TryCarryBack(Span<Rational<T>> coefficients)
    {
        bool hasOverflown = false;
        for (int k = _operations.Count - 1; k >= 0 && !hasOverflown; k--)
        {
            RowOperation<T> step = _operations[k];
            Rational<T> weight = coefficients[step.Target];
            if (weight.IsZero)
            {
                continue;
            }

            weight = Rational<T>.Divide(weight, step.Content, ref hasOverflown);
            coefficients[step.Target] = Rational<T>.Multiply(weight, step.Scale, ref hasOverflown);
            coefficients[step.Source] = Rational<T>.Add(
                coefficients[step.Source], -Rational<T>.Multiply(weight, step.Factor, ref hasOverflown), ref hasOverflown);
        }

        return !hasOverflown;
    }

    /// <summary>
    /// Solves rows · x = 0 for the pivot columns by back-substitution, the entries of all other columns
    /// being given in <paramref name="x"/> (index by column); the pivot columns' are overwritten.
    /// </summary>
    /// <returns>False where a machine integer does not hold a value that arises.</returns>
    public bool TrySubstituteBack(Span<Rational<T>> x)
    {
        bool hasOverflown = false;
        for (int k = _pivots.Count - 1; k >= 0 && !hasOverflown; k--)
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
                    sum = Rational<T>.Add(sum, Rational<T>.Multiply(x[columns[e]], values[e], ref hasOverflown), ref hasOverflown);
                }
            }

            x[column] = sum.IsZero ? Rational<T>.Zero : -Rational<T>.Divide(sum, pivot, ref hasOverflown);
        }

        return !hasOverflown;
    }

    /// <summary>As <see cref="TryCarryBack"/>.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a value that arises.</exception>
    public void CarryBack(Span<Rational<T>> coefficients) => Integers.Demand(TryCarryBack(coefficients));

    /// <summary>As <see cref="TrySubstituteBack"/>.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a value that arises.</exception>
    public void SubstituteBack(Span<Rational<T>> x) => Integers.Demand(TrySubstituteBack(x));

    /// <summary>
    /// The combination of original rows that is 1 in one deferred pivot column and 0 in every other pivot
    /// column, as coefficients by row.
    /// </summary>
    /// <param name="column">A deferred column that has a pivot.</param>
    /// <param name="coefficients">Receives the coefficients.</param>
    /// <returns>False where a machine integer does not hold a value that arises.</returns>
    public bool TryCombine(int column, Span<Rational<T>> coefficients)
    {
        coefficients.Clear();
        bool hasOverflown = false;

        // pivot rows of deferred columns hold no eager one, and none of a deferred column pivoted before
        int first = 0;
        while (_pivots[first].Column != column)
        {
            first++;
        }

        for (int k = first; k < _pivots.Count && !hasOverflown; k++)
        {
            (int row, int pivoted) = _pivots[k];
            Rational<T> rest = k == first ? Rational<T>.One : Rational<T>.Zero;
            for (int l = first; l < k; l++)
            {
                int position = _rows.Find(_pivots[l].Row, pivoted);
                if (position >= 0)
                {
                    rest = Rational<T>.Add(
                        rest, -Rational<T>.Multiply(coefficients[_pivots[l].Row], _rows.Values(_pivots[l].Row)[position], ref hasOverflown), ref hasOverflown);
                }
            }

            coefficients[row] = Rational<T>.Divide(rest, _rows.Values(row)[_rows.Find(row, pivoted)], ref hasOverflown);
        }

        return !hasOverflown && TryCarryBack(coefficients);
    }

    private void Reset(int pivotColumns)
    {
        _pivots.Clear();
        _operations.Clear();
        _pivots.EnsureCapacity(pivotColumns);
        _operations.EnsureCapacity(pivotColumns + (pivotColumns / 2));
        _hasOverflown = false;
        if (_isPivotColumn.Length < pivotColumns)
        {
            _isPivotColumn = new bool[pivotColumns];
        }

        if (_isPivotRow.Length < _rows.Count)
        {
            _isPivotRow = new bool[_rows.Count];
        }

        _isPivotColumn.AsSpan(0, pivotColumns).Clear();
        _isPivotRow.AsSpan(0, _rows.Count).Clear();
        int last = 0;
        for (int row = 0; row < _rows.Count; row++)
        {
            ReadOnlySpan<int> columns = _rows.Columns(row);
            ReadOnlySpan<T> values = _rows.Values(row);
            for (int e = 0; e < columns.Length; e++)
            {
                last = Math.Max(last, columns[e]);
                _hasOverflown |= Integers.IsLeast(values[e]);
            }
        }

        if (_place.Length <= last)
        {
            _place = new int[last + 1];
        }

        _queue.Reset(_rows, pivotColumns);
    }

    // Pivots on the columns of [from, to) until none of the remaining rows has an entry there.
    private bool TryStage(int from, int to)
    {
        _queue.Begin(from, to, _isPivotRow);
        while (!_hasOverflown && _queue.TryChoose(out int row, out int column))
        {
            Take(row, column);
        }

        return !_hasOverflown;
    }

    private void Take(int row, int column)
    {
        _pivots.Add((row, column));
        _isPivotRow[row] = true;
        _isPivotColumn[column] = true;
        _queue.Retire(row, column);
        T pivot = _rows.Values(row)[_rows.Find(row, column)];

        // rows that combining adds to other columns do not change this list
        ReadOnlySpan<int> targets = _queue.RowsOf(column);
        for (int k = targets.Length - 1; k >= 0 && !_hasOverflown; k--)
        {
            Combine(targets[k], row, column, pivot);
            _queue.FileRow(targets[k]);
        }

        _queue.ForgetRowsOf(column);
    }

    private void Combine(int target, int source, int column, T pivot)
    {
        T entry = TakeOut(target, column);
        T common = pivot == T.One || pivot == -T.One ? T.One : Integers.Gcd(entry, pivot);
        T scale = pivot / common, factor = entry / common;
        if (T.IsNegative(scale))
        {
            (scale, factor) = (-scale, -factor);
        }

        if (scale != T.One)
        {
            foreach (ref T value in _rows.Values(target))
            {
                value = Integers.Multiply(value, scale, ref _hasOverflown);
            }
        }

        MarkPlaces(target);
        SubtractMultiple(target, source, column, factor);
        foreach (int marked in _rows.Columns(target))
        {
            _place[marked] = 0;
        }

        _operations.Add(new(target, source, scale, factor, scale == T.One || _hasOverflown ? T.One : RemoveContent(target)));
    }

    private T TakeOut(int row, int column)
    {
        int position = _rows.Find(row, column);
        T entry = _rows.Values(row)[position];
        _rows.RemoveAt(row, position);
        return entry;
    }

    // Where each column stands in the target, so that no entry is searched for.
    private void MarkPlaces(int row)
    {
        ReadOnlySpan<int> columns = _rows.Columns(row);
        for (int position = 0; position < columns.Length; position++)
        {
            _place[columns[position]] = position + 1;
        }
    }

    private void SubtractMultiple(int target, int source, int pivotColumn, T factor)
    {
        // the source stays as it is, wherever the target moves
        ReadOnlySpan<int> columns = _rows.Columns(source);
        ReadOnlySpan<T> amounts = _rows.Values(source);
        Span<T> values = _rows.Values(target);
        for (int e = 0; e < columns.Length && e < amounts.Length; e++)
        {
            int column = columns[e];
            if (column == pivotColumn)
            {
                continue;
            }

            T amount = Integers.Multiply(factor, amounts[e], ref _hasOverflown);
            int position = _place[column] - 1;
            if (position < 0)
            {
                Insert(target, column, -amount);
                values = _rows.Values(target);
                continue;
            }

            T value = Integers.Subtract(values[position], amount, ref _hasOverflown);
            values[position] = value;
            if (T.IsZero(value))
            {
                Remove(target, column, position);
                values = _rows.Values(target);
            }
        }
    }

    private void Insert(int row, int column, T value)
    {
        _rows.Append(row, column, value);
        _place[column] = _rows.Length(row);
        _queue.NoteAdded(row, column);
    }

    private void Remove(int row, int column, int position)
    {
        _rows.RemoveAt(row, position);
        _place[column] = 0;
        if (position < _rows.Length(row))
        {
            _place[_rows.Columns(row)[position]] = position + 1;
        }

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
