using System.Runtime.InteropServices;

namespace ScNet.Search.Triples;

/// <summary>The triples of one ratio whose capacitor figures no other triple's beat, with all that have the same figures.</summary>
/// <remarks>What is kept does not depend on the order in which triples come. Not for several threads.</remarks>
internal sealed class TripleFront
{
    private readonly List<(TripleSums Sums, List<TriplePlace> Places)> _entries = [];

    /// <summary>The figures with their triples, both in order.</summary>
    public IEnumerable<(TripleSums Sums, TriplePlace[] Places)> Entries => _entries
        .Select(e => (e.Sums, e.Places.Order().ToArray()))
        .OrderBy(e => e.Sums.ChargeVoltage).ThenBy(e => e.Sums.HighestVoltage).ThenBy(e => e.Sums.Charge);

    /// <summary>Takes a triple in, unless another beats it.</summary>
    public void Add(in TripleSums sums, TriplePlace place)
    {
        if (Find(sums) is { } places)
        {
            places.Add(place);
        }
    }

    /// <summary>Takes in all triples of another front of the ratio.</summary>
    public void Add(TripleFront other)
    {
        foreach ((TripleSums sums, List<TriplePlace> places) in other._entries)
        {
            Find(sums)?.AddRange(places);
        }
    }

    // the triples of these figures, after what they beat is gone; null where they are beaten
    private List<TriplePlace>? Find(in TripleSums sums)
    {
        Span<(TripleSums Sums, List<TriplePlace> Places)> entries = CollectionsMarshal.AsSpan(_entries);
        for (int e = 0; e < entries.Length; e++)
        {
            if (entries[e].Sums.IsWithin(sums))
            {
                List<TriplePlace>? same = entries[e].Sums == sums ? entries[e].Places : null;
                if (e > 0)
                {
                    // what beats one often beats the next
                    (entries[e - 1], entries[e]) = (entries[e], entries[e - 1]);
                }

                return same;
            }
        }

        TripleSums taken = sums;
        _entries.RemoveAll(e => taken.IsWithin(e.Sums));
        List<TriplePlace> fresh = [];
        _entries.Add((sums, fresh));
        return fresh;
    }
}
