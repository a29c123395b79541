using Fractions;
using ScNet.Search.Triples;

namespace ScNet.Search;

/// <summary>
/// Every network of three phases and up to so many flying capacitors, gone through without exception: for each ratio
/// that any of them makes, those whose capacitors no other's beat, in number and in what they ask for, or whose switches are fewer or block less than those of all whose do.
/// </summary>
/// <remarks>
/// Every phase has a loop, the loops of all phases are independent and one more than capacitors, and every capacitor has
/// a voltage and moves charge, though it may rest in a phase (docs/theory/atlas.md). Complete is the search over the number of capacitors and
/// <see cref="CompleteMeasures"/>. The order of phases does not matter here.
/// </remarks>
public sealed class ThreePhaseAtlas
{
    private readonly Dictionary<Fraction, Lazy<IReadOnlyList<SearchedNetwork>>> _fronts;

    private ThreePhaseAtlas(int capacitorCount, TripleSearch[] searches)
    {
        CompleteMeasures = Array.AsReadOnly<NetworkMeasure>(
        [
            NetworkMeasure.CapacitorChargeVoltage, NetworkMeasure.HighestCapacitorVoltage, NetworkMeasure.CapacitorCharge,
            .. capacitorCount <= MostCapacitorsByAllSwitches ? [NetworkMeasure.SwitchCount, NetworkMeasure.HighestSwitchVoltage] : Array.Empty<NetworkMeasure>(),
        ]);
        CapacitorCount = capacitorCount;
        TripleCount = searches.Sum(s => s.TripleCount);
        NetworkCount = searches.Sum(s => s.NetworkCount);
        _fronts = searches.SelectMany(s => s.Fronts.Keys).Distinct().ToDictionary(
            key => new Fraction(key.Output, key.Input),
            key => new Lazy<IReadOnlyList<SearchedNetwork>>(() => TripleNetworks.Of(searches, key)));
        Ratios = Array.AsReadOnly([.. _fronts.Keys.Order()]);
    }

    /// <summary>The most capacitors that can be searched.</summary>
    public const int MaximumCapacitorCount = 4;

    /// <summary>The most capacitors whose networks are all compared by number and highest voltage of their switches, those too whose capacitors others' beat; of four there are millions.</summary>
    public const int MostCapacitorsByAllSwitches = 3;

    /// <summary>
    /// The measures that the search is complete over: for every network of three phases one is listed that is no worse in each of them and in the number of capacitors. Charge–voltage
    /// product, highest voltage and charge of the capacitors; and where there are up to <see cref="MostCapacitorsByAllSwitches"/> capacitors the number of switches and their highest voltage.
    /// </summary>
    public IReadOnlyList<NetworkMeasure> CompleteMeasures { get; }

    /// <summary>The largest number of flying capacitors.</summary>
    public int CapacitorCount { get; }

    /// <summary>The triples of loop spaces that were decided, all numbers of capacitors together.</summary>
    public long TripleCount { get; }

    /// <summary>Those in which the loops fix everything and every capacitor works; some networks are met more than once.</summary>
    public long NetworkCount { get; }

    /// <summary>Every ratio that some network of three phases makes, ascending; negative ones invert.</summary>
    public IReadOnlyList<Fraction> Ratios { get; }

    /// <summary>Searches all networks of up to a number of flying capacitors.</summary>
    /// <param name="capacitorCount">From 1 to <see cref="MaximumCapacitorCount"/>; a single one has no network of three phases. Seconds for 4.</param>
    /// <param name="progress">Receives the fraction done, from 0 to 1, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static ThreePhaseAtlas Of(int capacitorCount, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitorCount, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitorCount, MaximumCapacitorCount);
        return new ThreePhaseAtlas(capacitorCount, [.. Enumerable.Range(1, capacitorCount).Select(c =>
            TripleSearch.Run(c, c <= MostCapacitorsByAllSwitches, Environment.ProcessorCount, c == capacitorCount ? progress : null, cancellationToken))]);
    }

    /// <summary>The networks of a ratio that no other beats in <see cref="CompleteMeasures"/> and number of capacitors, by number of capacitors, then by charge–voltage product; wired when they are first asked for.</summary>
    /// <param name="ratio">Output over input voltage.</param>
    /// <returns>None where no network of three phases makes the ratio.</returns>
    public IReadOnlyList<SearchedNetwork> Front(Fraction ratio) =>
        _fronts.TryGetValue(ratio, out Lazy<IReadOnlyList<SearchedNetwork>>? front) ? front.Value : [];

    /// <summary>The counts.</summary>
    public override string ToString() =>
        $"{UnitText.Count(Ratios.Count, "ratio", "ratios")} of three phases by up to {UnitText.Count(CapacitorCount, "capacitor", "capacitors")}: {UnitText.Count(TripleCount, "triple", "triples")} decided";
}
