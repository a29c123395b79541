namespace ScNet.Search.Triples;

/// <summary>The networks of a ratio, wired.</summary>
internal static class TripleNetworks
{
    /// <summary>
    /// Where a search kept all triples, the networks that nothing beats in capacitor figures, number of switches and highest voltage of a switch, fewer capacitors counting as better; else a network in
    /// the fewest switches per choice of capacitors that nothing beats.
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
                SearchedNetwork[] better = [.. kept.Where(k => k.Sums.IsWithin(sums)).Select(k => k.Network)];
                IReadOnlyList<SearchedNetwork> found = search.KeepsBeaten
                    ? WiringFront.Of(search.Spaces, places, better.Select(b => (b.Switches.Count, b.Measures.HighestSwitchVoltage)), cancellationToken)
                    : better.Length == 0 ? [TripleWirings.Choose(search.Spaces, places)] : [];
                kept.AddRange(found.Select(n => (sums, n)));
            }
        }

        return Array.AsReadOnly([.. kept.Select(k => k.Network)]);
    }
}
