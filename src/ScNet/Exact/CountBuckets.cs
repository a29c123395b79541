namespace ScNet.Exact;

/// <summary>
/// Items filed by a small count, so that one with the least count is found at once: doubly linked
/// lists, one per count. Filing, moving and removing take constant time.
/// </summary>
internal sealed class CountBuckets
{
    private const int None = -1;

    private readonly int[] _head;
    private readonly int[] _next;
    private readonly int[] _previous;
    private readonly int[] _count;
    private int _least;

    public CountBuckets(int itemCount, int largestCount)
    {
        _head = new int[largestCount + 1];
        _next = new int[itemCount];
        _previous = new int[itemCount];
        _count = new int[itemCount];
        _head.AsSpan().Fill(None);
        _count.AsSpan().Fill(None);
        _least = _head.Length;
    }

    public int Count(int item) => _count[item];

    /// <summary>Files an item under a count, wherever it was before.</summary>
    public void File(int item, int count)
    {
        Remove(item);
        _count[item] = count;
        int first = _head[count];
        _previous[item] = None;
        _next[item] = first;
        if (first != None)
        {
            _previous[first] = item;
        }

        _head[count] = item;
        _least = Math.Min(_least, count);
    }

    /// <summary>Takes an item out, if it is in.</summary>
    public void Remove(int item)
    {
        int count = _count[item];
        if (count == None)
        {
            return;
        }

        int previous = _previous[item], next = _next[item];
        if (previous == None)
        {
            _head[count] = next;
        }
        else
        {
            _next[previous] = next;
        }

        if (next != None)
        {
            _previous[next] = previous;
        }

        _count[item] = None;
    }

    /// <summary>An item with the least count, or -1 where nothing is filed.</summary>
    public int Least()
    {
        while (_least < _head.Length && _head[_least] == None)
        {
            _least++;
        }

        return _least < _head.Length ? _head[_least] : None;
    }
}
