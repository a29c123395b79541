using Fractions;
using ScNet.Search.Atlases;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search;

/// <summary>
/// Every two-phase network of up to so many flying capacitors, gone through without exception: for each ratio that any
/// of them makes, all those that no other beats.
/// </summary>
/// <remarks>
/// A network here fixes all voltages, charges and potentials by topology and uses every capacitor; why the others are
/// left out, and in which measures they are never better, stands in docs/theory/atlas.md. Made afresh rather than read from a file:
/// times in docs/performance.md.
/// </remarks>
public sealed class Atlas
{
    private readonly Dictionary<Fraction, Lazy<IReadOnlyList<SearchedNetwork>>> _fronts;

    private Atlas(PairShard found, int capacitorCount)
    {
        CapacitorCount = capacitorCount;
        PairCount = found.PairCount;
        NetworkCount = found.NetworkCount;
        _fronts = found.Fronts.ToDictionary(
            f => new Fraction(f.Key.Output, f.Key.Input),
            f => new Lazy<IReadOnlyList<SearchedNetwork>>(() => Array.AsReadOnly([.. f.Value.Entries.Select(AtlasNetworks.Of)])));
        Ratios = Array.AsReadOnly([.. _fronts.Keys.Order()]);
    }

    /// <summary>The most flying capacitors that can be searched.</summary>
    public const int MaximumCapacitorCount = LoopSpace.MostCapacitors;

    /// <summary>The largest number of flying capacitors.</summary>
    public int CapacitorCount { get; }

    /// <summary>The pairs of loop spaces that were decided, up to renaming and turning capacitors and exchanging phases, all numbers of capacitors together.</summary>
    public long PairCount { get; }

    /// <summary>Those in which the loops fix everything and every capacitor works.</summary>
    public long NetworkCount { get; }

    /// <summary>Every ratio that some network makes, ascending; negative ones invert.</summary>
    public IReadOnlyList<Fraction> Ratios { get; }

    /// <summary>Searches all networks of up to a number of flying capacitors.</summary>
    /// <param name="capacitorCount">From 1 to <see cref="MaximumCapacitorCount"/>; a second for 4, minutes for 6.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static Atlas Of(int capacitorCount, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitorCount, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitorCount, MaximumCapacitorCount);
        PairShard all = PairShard.Run(capacitorCount, 1, 1, Environment.ProcessorCount, progress, cancellationToken);
        for (int fewer = capacitorCount - 1; fewer > 0; fewer--)
        {
            all.Take(PairShard.Run(fewer, 1, 1, Environment.ProcessorCount, null, cancellationToken));
        }

        return new Atlas(all, capacitorCount);
    }

    /// <summary>The networks of a ratio that no other beats.</summary>
    /// <param name="ratio">Output over input voltage.</param>
    /// <returns>None where no network makes the ratio.</returns>
    public IReadOnlyList<SearchedNetwork> Front(Fraction ratio) =>
        _fronts.TryGetValue(ratio, out Lazy<IReadOnlyList<SearchedNetwork>>? front) ? front.Value : [];

    /// <summary>The counts.</summary>
    public override string ToString() =>
        $"{UnitText.Count(Ratios.Count, "ratio", "ratios")} by up to {UnitText.Count(CapacitorCount, "capacitor", "capacitors")}: {UnitText.Count(NetworkCount, "network", "networks")} among {UnitText.Count(PairCount, "pair", "pairs")}";
}
