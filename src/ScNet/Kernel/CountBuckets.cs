namespace ScNet.Kernel;

/// <summary>
/// Items filed by a small count, so that one with the least count is found at once: doubly linked
/// lists, one per count. Filing, moving and removing take constant time.
/// </summary>
internal sealed class CountBuckets
{
    private const int None = -1;

    private int[] _head = [];
    private Entry[] _entries = [];
    private int _counts;
    private int _least;

    public CountBuckets()
    {
    }

    public CountBuckets(int itemCount, int largestCount) => Reset(itemCount, largestCount);

    public int Count(int item) => _entries[item].Count;

    /// <summary>Takes everything out, for other numbers of items and counts; new memory is taken only for larger ones than before.</summary>
    public void Reset(int itemCount, int largestCount)
    {
        _counts = largestCount + 1;
        if (_head.Length < _counts)
        {
            _head = new int[_counts];
        }

        if (_entries.Length < itemCount)
        {
            _entries = new Entry[itemCount];
        }

        _head.AsSpan(0, _counts).Fill(None);
        _entries.AsSpan(0, itemCount).Fill(new Entry { Count = None });
        _least = _counts;
    }

    /// <summary>Files an item under a count, wherever it was before.</summary>
    public void File(int item, int count)
    {
        ref Entry entry = ref _entries[item];
        if (entry.Count == count)
        {
            return;
        }

        Remove(item);
        int first = _head[count];
        entry = new Entry { Count = count, Previous = None, Next = first };
        if (first != None)
        {
            _entries[first].Previous = item;
        }

        _head[count] = item;
        _least = Math.Min(_least, count);
    }

    /// <summary>Takes an item out, if it is in.</summary>
    public void Remove(int item)
    {
        ref Entry entry = ref _entries[item];
        if (entry.Count == None)
        {
            return;
        }

        if (entry.Previous == None)
        {
            _head[entry.Count] = entry.Next;
        }
        else
        {
            _entries[entry.Previous].Next = entry.Next;
        }

        if (entry.Next != None)
        {
            _entries[entry.Next].Previous = entry.Previous;
        }

        entry.Count = None;
    }

    /// <summary>An item with the least count, or -1 where nothing is filed.</summary>
    public int Least()
    {
        while (_least < _counts && _head[_least] == None)
        {
            _least++;
        }

        return _least < _counts ? _head[_least] : None;
    }

    // an item and its neighbours in the list of its count
    private struct Entry
    {
        public int Count;
        public int Next;
        public int Previous;
    }
}
