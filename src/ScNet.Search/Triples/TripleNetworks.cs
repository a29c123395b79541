namespace ScNet.Search.Triples;

/// <summary>The networks of a ratio, wired.</summary>
internal static class TripleNetworks
{
    /// <summary>
    /// A network in the fewest switches per choice of capacitors that nothing beats, fewer capacitors counting as better; where a search kept what is beaten, also those choices that take fewer switches
    /// than all that beat them.
    /// </summary>
    /// <param name="searches">A search per number of capacitors, ascending.</param>
    /// <param name="ratio">Output and input voltage in lowest terms.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<SearchedNetwork> Of(IReadOnlyList<TripleSearch> searches, (int Output, int Input) ratio, CancellationToken cancellationToken = default)
    {
        List<(TripleSums Sums, SearchedNetwork Network)> kept = [];
        foreach (TripleSearch search in searches.Where(s => s.Fronts.ContainsKey(ratio)))
        {
            foreach ((TripleSums sums, TriplePlace[] places) in search.Fronts[ratio].Entries)
            {
                cancellationToken.ThrowIfCancellationRequested();
                int fewest = kept.Where(k => k.Sums.IsWithin(sums)).Select(k => k.Network.Switches.Count).DefaultIfEmpty(TripleWirings.AnyNumber).Min();
                int most = fewest == TripleWirings.AnyNumber ? fewest : fewest - 1;
                if ((most == TripleWirings.AnyNumber || search.KeepsBeaten) && TripleWirings.Choose(search.Spaces, places, most) is { } network)
                {
                    kept.Add((sums, network));
                }
            }
        }

        return Array.AsReadOnly([.. kept.Select(k => k.Network)]);
    }
}
