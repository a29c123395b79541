using System.Runtime.InteropServices;
using ScNet.Search.Pairs;

namespace ScNet.Search.Atlases;

/// <summary>The networks of one ratio of which none beats another; of those with equal measures the first by place.</summary>
/// <remarks>What is kept does not depend on the order in which networks are offered. Not for several threads.</remarks>
internal sealed class FrontOfRatio
{
    private readonly List<MeasureKey> _keys = [];
    private readonly List<NetworkPlace> _places = [];

    /// <summary>The number of networks.</summary>
    public int Count => _keys.Count;

    /// <summary>The networks by their measures, in order.</summary>
    public IEnumerable<FrontEntry> Entries => _keys.Zip(_places, (key, place) => new FrontEntry(key, place)).OrderBy(e => e.Place);

    /// <summary>Whether some network asks for no more than this of anything and for less of something.</summary>
    /// <param name="key">Measures, or bounds that they are not below.</param>
    public bool Beats(in MeasureKey key)
    {
        ReadOnlySpan<MeasureKey> keys = CollectionsMarshal.AsSpan(_keys);
        for (int m = 0; m < keys.Length; m++)
        {
            ref readonly MeasureKey member = ref keys[m];
            if (member.IsWithin(key) && !key.IsWithin(member))
            {
                // what beats one often beats the next
                if (m > 0)
                {
                    (_keys[m - 1], _keys[m]) = (_keys[m], _keys[m - 1]);
                    (_places[m - 1], _places[m]) = (_places[m], _places[m - 1]);
                }

                return true;
            }
        }

        return false;
    }

    /// <summary>Adds a network that none beats, and drops those that it beats.</summary>
    /// <param name="key">Its measures.</param>
    /// <param name="place">Where it is found.</param>
    public void Add(in MeasureKey key, NetworkPlace place)
    {
        int kept = 0;
        for (int m = 0; m < _keys.Count; m++)
        {
            if (_keys[m] == key)
            {
                _places[m] = place.CompareTo(_places[m]) < 0 ? place : _places[m];
                return;
            }

            if (!key.IsWithin(_keys[m]))
            {
                (_keys[kept], _places[kept]) = (_keys[m], _places[m]);
                kept++;
            }
        }

        _keys.RemoveRange(kept, _keys.Count - kept);
        _places.RemoveRange(kept, _places.Count - kept);
        _keys.Add(key);
        _places.Add(place);
    }

    /// <summary>Adds all networks of another front of the ratio.</summary>
    public void Add(FrontOfRatio other)
    {
        for (int m = 0; m < other._keys.Count; m++)
        {
            if (!Beats(other._keys[m]))
            {
                Add(other._keys[m], other._places[m]);
            }
        }
    }
}
