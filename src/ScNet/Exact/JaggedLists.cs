namespace ScNet.Exact;

/// <summary>
/// Many short lists of integers in one slab. A list that outgrows its place moves to the end with twice
/// the room; the last list grows in place.
/// </summary>
internal sealed class JaggedLists
{
    private const int SmallestRoom = 4;

    private int[] _start;
    private int[] _length;
    private int[] _room;
    private int[] _items;
    private int _used;

    public JaggedLists(int listCapacity, int itemCapacity)
    {
        _start = new int[listCapacity];
        _length = new int[listCapacity];
        _room = new int[listCapacity];
        _items = new int[itemCapacity];
    }

    public int Count { get; private set; }

    public int Capacity => _items.Length;

    public ReadOnlySpan<int> this[int list] => _items.AsSpan(_start[list], _length[list]);

    public int Start(int list) => _start[list];

    public int Length(int list) => _length[list];

    /// <summary>Adds an empty list, with room for so many items.</summary>
    public int AddList(int room = 0)
    {
        if (Count == _start.Length)
        {
            int capacity = Math.Max(SmallestRoom, 2 * Count);
            Array.Resize(ref _start, capacity);
            Array.Resize(ref _length, capacity);
            Array.Resize(ref _room, capacity);
        }

        Reserve(_used + room);
        _start[Count] = _used;
        _length[Count] = 0;
        _room[Count] = room;
        _used += room;
        return Count++;
    }

    /// <summary>Appends an item and returns the slot it went to.</summary>
    public int Append(int list, int item)
    {
        if (_length[list] == _room[list])
        {
            Grow(list);
        }

        int slot = _start[list] + _length[list]++;
        _items[slot] = item;
        return slot;
    }

    /// <summary>Removes the item at a position; the last item takes its place.</summary>
    public void RemoveAt(int list, int position)
    {
        int last = --_length[list];
        _items[_start[list] + position] = _items[_start[list] + last];
    }

    public void Clear(int list) => _length[list] = 0;

    /// <summary>Removes an item that is known to be there; the last item takes its place.</summary>
    public void Remove(int list, int item) => RemoveAt(list, this[list].IndexOf(item));

    private void Grow(int list)
    {
        if (_start[list] + _room[list] == _used)
        {
            // the last list needs no move; one item at a time keeps rows that are filled in order dense
            Reserve(_used + 1);
            _room[list]++;
            _used++;
            return;
        }

        int room = Math.Max(SmallestRoom, 2 * _room[list]);
        Reserve(_used + room);
        this[list].CopyTo(_items.AsSpan(_used));
        _start[list] = _used;
        _room[list] = room;
        _used += room;
    }

    private void Reserve(int capacity)
    {
        if (capacity > _items.Length)
        {
            Array.Resize(ref _items, Math.Max(capacity, checked(2 * _items.Length)));
        }
    }
}
