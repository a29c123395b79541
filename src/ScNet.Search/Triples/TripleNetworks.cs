namespace ScNet.Search.Triples;

/// <summary>The networks of a ratio, wired.</summary>
internal static class TripleNetworks
{
    /// <summary>A network per choice of capacitors that nothing beats, fewer capacitors counting as better.</summary>
    /// <param name="searches">A search per number of capacitors, ascending.</param>
    /// <param name="ratio">Output and input voltage in lowest terms.</param>
    /// <param name="threads">The threads that share the work.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<SearchedNetwork> Of(
        IReadOnlyList<TripleSearch> searches, (int Output, int Input) ratio, int threads, CancellationToken cancellationToken = default)
    {
        List<(TripleSums Sums, PlacedSpaces Spaces, TriplePlace[] Places)> kept = [];
        foreach (TripleSearch search in searches)
        {
            if (search.Fronts.TryGetValue(ratio, out TripleFront? front))
            {
                kept.AddRange([.. front.Entries.Where(e => !kept.Exists(k => k.Sums.IsWithin(e.Sums))).Select(e => (e.Sums, search.Spaces, e.Places))]);
            }
        }

        return Array.AsReadOnly([.. kept.AsParallel().AsOrdered().WithDegreeOfParallelism(threads).WithCancellation(cancellationToken)
            .Select(k => TripleWirings.Choose(k.Spaces, k.Places))]);
    }
}
