namespace ScNet.Kernel;

/// <summary>
/// Many short lists of integers in one slab. A list that outgrows its place moves to the end with twice
/// the room; the last list grows in place.
/// </summary>
internal sealed class JaggedLists
{
    private const int SmallestRoom = 4;

    private Place[] _places;
    private int[] _items;
    private int _used;

    public JaggedLists(int listCapacity, int itemCapacity)
    {
        _places = listCapacity > 0 ? new Place[listCapacity] : [];
        _items = itemCapacity > 0 ? new int[itemCapacity] : [];
    }

    public int Count { get; private set; }

    public int Capacity => _items.Length;

    public ReadOnlySpan<int> this[int list]
    {
        get
        {
            ref Place place = ref _places[list];
            return _items.AsSpan(place.Start, place.Length);
        }
    }

    public int Start(int list) => _places[list].Start;

    public int Length(int list) => _places[list].Length;

    /// <summary>Forgets all lists and keeps the memory, more of it if need be.</summary>
    public void Reset(int listCapacity = 0, int itemCapacity = 0)
    {
        (Count, _used) = (0, 0);
        _places = _places.Length < listCapacity ? new Place[listCapacity] : _places;
        _items = _items.Length < itemCapacity ? new int[itemCapacity] : _items;
    }

    /// <summary>Adds an empty list, with room for so many items.</summary>
    public int AddList(int room = 0)
    {
        if (Count == _places.Length)
        {
            Array.Resize(ref _places, Math.Max(SmallestRoom, 2 * Count));
        }

        Reserve(_used + room);
        _places[Count] = new Place { Start = _used, Room = room };
        _used += room;
        return Count++;
    }

    /// <summary>Appends an item and returns the slot it went to.</summary>
    public int Append(int list, int item)
    {
        ref Place place = ref _places[list];
        if (place.Length == place.Room)
        {
            Grow(ref place);
        }

        int slot = place.Start + place.Length++;
        _items[slot] = item;
        return slot;
    }

    public void Clear(int list) => _places[list].Length = 0;

    /// <summary>Removes the item at a position; the last item takes its place.</summary>
    public void RemoveAt(int list, int position)
    {
        ref Place place = ref _places[list];
        int last = --place.Length;
        _items[place.Start + position] = _items[place.Start + last];
    }

    /// <summary>Removes an item that is known to be there, found soonest where it is the last; the last item takes its place.</summary>
    public void Remove(int list, int item)
    {
        ReadOnlySpan<int> items = this[list];
        RemoveAt(list, items[^1] == item ? items.Length - 1 : items.IndexOf(item));
    }

    private void Grow(ref Place place)
    {
        if (place.Start + place.Room == _used)
        {
            // the last list needs no move; one item at a time keeps rows that are filled in order dense
            Reserve(_used + 1);
            place.Room++;
            _used++;
            return;
        }

        int room = Math.Max(SmallestRoom, 2 * place.Room);
        Reserve(_used + room);
        _items.AsSpan(place.Start, place.Length).CopyTo(_items.AsSpan(_used));
        place.Start = _used;
        place.Room = room;
        _used += room;
    }

    private void Reserve(int capacity)
    {
        if (capacity > _items.Length)
        {
            Array.Resize(ref _items, Math.Max(capacity, checked(2 * _items.Length)));
        }
    }

    // where a list lies in the slab
    private struct Place
    {
        public int Start;
        public int Length;
        public int Room;
    }
}
