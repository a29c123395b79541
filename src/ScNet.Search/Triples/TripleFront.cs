using System.Runtime.InteropServices;

namespace ScNet.Search.Triples;

/// <summary>The triples of one ratio by their capacitor figures: those of figures that no other triple's beat, or all.</summary>
/// <remarks>What is kept does not depend on the order in which triples come. Not for several threads.</remarks>
/// <param name="keepsBeaten">Whether figures stay that others beat.</param>
internal sealed class TripleFront(bool keepsBeaten)
{
    private readonly List<(TripleSums Sums, List<TriplePlace> Places)> _unbeaten = [];
    private readonly Dictionary<TripleSums, List<TriplePlace>> _all = [];

    /// <summary>The figures with their triples, both in order; what beats another comes before it.</summary>
    public IEnumerable<(TripleSums Sums, TriplePlace[] Places)> Entries => _unbeaten.Concat(_all.Select(a => (Sums: a.Key, Places: a.Value)))
        .Select(e => (e.Sums, e.Places.Order().ToArray()))
        .OrderBy(e => e.Sums.ChargeVoltage).ThenBy(e => e.Sums.HighestVoltage).ThenBy(e => e.Sums.Charge);

    /// <summary>Takes a triple in, unless another beats it and such are not kept.</summary>
    public void Add(in TripleSums sums, TriplePlace place) => Find(sums)?.Add(place);

    /// <summary>Takes in all triples of another front of the ratio.</summary>
    public void Add(TripleFront other)
    {
        foreach ((TripleSums sums, List<TriplePlace> places) in other._unbeaten)
        {
            Find(sums)?.AddRange(places);
        }

        foreach ((TripleSums sums, List<TriplePlace> places) in other._all)
        {
            Find(sums)?.AddRange(places);
        }
    }

    // the triples of these figures; null where they are not kept
    private List<TriplePlace>? Find(in TripleSums sums) => keepsBeaten
        ? CollectionsMarshal.GetValueRefOrAddDefault(_all, sums, out _) ??= []
        : FindUnbeaten(sums);

    // what they beat goes
    private List<TriplePlace>? FindUnbeaten(in TripleSums sums)
    {
        Span<(TripleSums Sums, List<TriplePlace> Places)> entries = CollectionsMarshal.AsSpan(_unbeaten);
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
        _unbeaten.RemoveAll(e => taken.IsWithin(e.Sums));
        List<TriplePlace> fresh = [];
        _unbeaten.Add((sums, fresh));
        return fresh;
    }
}
