using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// The rows and columns that are still to be eliminated, filed by length, so that a pivot of low
/// Markowitz cost is found at once: the best row of a shortest column or the best column of a shortest
/// row.
/// </summary>
internal sealed class PivotQueue<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly JaggedLists _rowsOfColumn = new(0, 0);
    private readonly CountBuckets _byRow = new();
    private readonly CountBuckets _byColumn = new();
    private SparseRows<T> _rows = SparseRows<T>.None;
    private int[] _columnCounts = [];
    private int _pivotColumns;
    private int _stageFrom;
    private int _stageTo;

    /// <summary>Lists the rows of each column, for other rows; nothing is offered yet.</summary>
    public void Reset(SparseRows<T> rows, int pivotColumns)
    {
        _rows = rows;
        _pivotColumns = pivotColumns;
        (_stageFrom, _stageTo) = (0, 0);
        _byRow.Reset(rows.Count, pivotColumns);
        _byColumn.Reset(pivotColumns, rows.Count);
        IndexColumns();
    }

    /// <summary>The rows still to be eliminated that have an entry in a column.</summary>
    public ReadOnlySpan<int> RowsOf(int column) => _rowsOfColumn[column];

    /// <summary>Empties the list of a column whose entries have been eliminated.</summary>
    public void ForgetRowsOf(int column) => _rowsOfColumn.Clear(column);

    /// <summary>Begins to offer the columns of [from, to).</summary>
    public void Begin(int from, int to, ReadOnlySpan<bool> isRetired)
    {
        (_stageFrom, _stageTo) = (from, to);
        for (int column = from; column < to; column++)
        {
            FileColumn(column);
        }

        for (int row = 0; row < _rows.Count; row++)
        {
            if (!isRetired[row])
            {
                FileRow(row);
            }
        }
    }

    /// <summary>The next pivot, or false when no row has an entry in the columns of the stage.</summary>
    public bool TryChoose(out int row, out int column)
    {
        column = _byColumn.Least();
        row = -1;
        if (column < 0)
        {
            return false;
        }

        int bestLength = int.MaxValue;
        foreach (int candidate in _rowsOfColumn[column])
        {
            int length = (2 * _rows.Length(candidate)) + (IsUnit(candidate, column) ? 0 : 1);
            if (length < bestLength)
            {
                (row, bestLength) = (candidate, length);
            }
        }

        long cost = (long)(_rowsOfColumn.Length(column) - 1) * (_rows.Length(row) - 1);
        if (cost > 0)
        {
            TryShortestRow(ref row, ref column, cost);
        }

        return true;
    }

    /// <summary>Takes a pivot's row out of all lists, and its column out of the offer.</summary>
    public void Retire(int row, int column)
    {
        _byRow.Remove(row);
        foreach (int other in _rows.Columns(row))
        {
            NoteRemoved(row, other);
        }

        _byColumn.Remove(column);
    }

    /// <summary>Files an entry that has come into a row.</summary>
    public void NoteAdded(int row, int column)
    {
        if (column < _pivotColumns)
        {
            _rowsOfColumn.Append(column, row);
            FileColumn(column);
        }
    }

    /// <summary>Forgets an entry that has vanished from a row.</summary>
    public void NoteRemoved(int row, int column)
    {
        if (column < _pivotColumns)
        {
            _rowsOfColumn.Remove(column, row);
            FileColumn(column);
        }
    }

    /// <summary>Files a row by its present length.</summary>
    public void FileRow(int row) => _byRow.File(row, Math.Min(_rows.Length(row), _pivotColumns));

    private void IndexColumns()
    {
        if (_columnCounts.Length < _pivotColumns)
        {
            _columnCounts = new int[_pivotColumns];
        }

        Span<int> counts = _columnCounts.AsSpan(0, _pivotColumns);
        counts.Clear();
        int total = 0;
        for (int row = 0; row < _rows.Count; row++)
        {
            foreach (int column in _rows.Columns(row))
            {
                if (column < counts.Length)
                {
                    counts[column]++;
                    total++;
                }
            }
        }

        _rowsOfColumn.Reset(_pivotColumns, total + (total / 2) + 4);
        foreach (int count in counts)
        {
            _rowsOfColumn.AddList(count);
        }

        for (int row = 0; row < _rows.Count; row++)
        {
            foreach (int column in _rows.Columns(row))
            {
                if (column < counts.Length)
                {
                    _rowsOfColumn.Append(column, row);
                }
            }
        }
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
                // nothing of this stage is left in the row, or nothing at all; it is filed again when it changes
                _byRow.Remove(row);
            }
        }
    }

    private bool IsUnit(int row, int column)
    {
        T value = _rows.Values(row)[_rows.Find(row, column)];
        return value == T.One || value == -T.One;
    }

    // Only columns of the present stage are offered; a deferred column waits for its own. A pivot's column
    // empties as its entries are eliminated and does not come back.
    private void FileColumn(int column)
    {
        int count = _rowsOfColumn.Length(column);
        if (count > 0 && column >= _stageFrom && column < _stageTo)
        {
            _byColumn.File(column, count);
        }
        else
        {
            _byColumn.Remove(column);
        }
    }
}
