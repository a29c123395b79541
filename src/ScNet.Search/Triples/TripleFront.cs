namespace ScNet.Search.Triples;

/// <summary>The triples of one ratio whose capacitor figures no other triple's beat, with all that have the same figures.</summary>
internal sealed class TripleFront
{
    private readonly Dictionary<TripleSums, List<(int First, int Second, int Third)>> _entries = [];

    /// <summary>The figures with their triples of spaces.</summary>
    public IReadOnlyDictionary<TripleSums, List<(int First, int Second, int Third)>> Entries => _entries;

    /// <summary>Takes a triple in, unless another beats it.</summary>
    public void Add(in TripleSums sums, int first, int second, int third)
    {
        if (_entries.TryGetValue(sums, out List<(int First, int Second, int Third)>? equals))
        {
            equals.Add((first, second, third));
            return;
        }

        foreach (TripleSums other in _entries.Keys)
        {
            if (other.IsWithin(sums))
            {
                return;
            }
        }

        foreach (TripleSums other in _entries.Keys.ToArray())
        {
            if (sums.IsWithin(other))
            {
                _entries.Remove(other);
            }
        }

        _entries.Add(sums, [(first, second, third)]);
    }
}
