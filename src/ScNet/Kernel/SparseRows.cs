using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// Growing sparse rows of integers in one slab: the entries of a row are contiguous and in no order.
/// A row that outgrows its place moves to the end of the slab.
/// </summary>
internal sealed class SparseRows<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly JaggedLists _columns;
    private T[] _values;

    public SparseRows(int rowCapacity, int entryCapacity)
    {
        _columns = new JaggedLists(rowCapacity, entryCapacity);
        _values = new T[entryCapacity];
    }

    /// <summary>No rows; nothing is ever added to them.</summary>
    public static SparseRows<T> None { get; } = new(0, 0);

    public int Count => _columns.Count;

    /// <summary>Forgets all rows and keeps the memory.</summary>
    public void Reset() => _columns.Reset();

    public int AddRow() => _columns.AddList();

    public int Length(int row) => _columns.Length(row);

    public ReadOnlySpan<int> Columns(int row) => _columns[row];

    public Span<T> Values(int row) => _values.AsSpan(_columns.Start(row), _columns.Length(row));

    /// <summary>The position of a column within a row, or -1.</summary>
    public int Find(int row, int column) => _columns[row].IndexOf(column);

    public void Append(int row, int column, T value)
    {
        int before = _columns.Start(row);
        int length = _columns.Length(row);
        int slot = _columns.Append(row, column);
        if (_values.Length < _columns.Capacity)
        {
            Array.Resize(ref _values, _columns.Capacity);
        }

        if (_columns.Start(row) != before)
        {
            _values.AsSpan(before, length).CopyTo(_values.AsSpan(_columns.Start(row)));
        }

        _values[slot] = value;
    }

    /// <summary>Removes the entry at a position; the last entry takes its place.</summary>
    public void RemoveAt(int row, int position)
    {
        int start = _columns.Start(row);
        _values[start + position] = _values[start + _columns.Length(row) - 1];
        _columns.RemoveAt(row, position);
    }
}
