using Fractions;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Triples;

/// <summary>
/// Every network of three phases and up to so many flying capacitors, gone through without exception: for each ratio
/// that any of them makes, those whose capacitors no other's beat, in number and in what they ask for.
/// </summary>
/// <remarks>
/// Every phase has a loop, the loops of all phases are independent and one more than capacitors, and every capacitor has
/// a voltage and moves charge, though it may rest in a phase (docs/theory/atlas.md). Complete is the search over
/// number, charge–voltage product, highest voltage and charge of the capacitors; for each choice of these that nothing beats, one
/// network is wired, with few switches in rows by potential. The order of phases does not matter here.
/// </remarks>
public sealed class ThreePhaseAtlas
{
    private readonly Dictionary<Fraction, IReadOnlyList<SearchedNetwork>> _fronts;

    private ThreePhaseAtlas(int capacitorCount, long tripleCount, Dictionary<Fraction, IReadOnlyList<SearchedNetwork>> fronts)
    {
        CapacitorCount = capacitorCount;
        TripleCount = tripleCount;
        _fronts = fronts;
        Ratios = Array.AsReadOnly([.. fronts.Keys.Order()]);
    }

    /// <summary>The fewest capacitors that three phases with a loop each can use.</summary>
    public const int MinimumCapacitorCount = 2;

    /// <summary>The most capacitors that can be searched.</summary>
    public const int MaximumCapacitorCount = 4;

    /// <summary>The largest number of flying capacitors.</summary>
    public int CapacitorCount { get; }

    /// <summary>The triples of loop spaces that were decided, all numbers of capacitors together.</summary>
    public long TripleCount { get; }

    /// <summary>Every ratio that some network of three phases makes, ascending; negative ones invert.</summary>
    public IReadOnlyList<Fraction> Ratios { get; }

    /// <summary>Searches all networks of up to a number of flying capacitors.</summary>
    /// <param name="capacitorCount">From <see cref="MinimumCapacitorCount"/> to <see cref="MaximumCapacitorCount"/>; under a second for 3, half a minute for 4.</param>
    /// <param name="cancellationToken">Stops the search.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The search was stopped.</exception>
    public static ThreePhaseAtlas Of(int capacitorCount, CancellationToken cancellationToken = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(capacitorCount, MinimumCapacitorCount);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(capacitorCount, MaximumCapacitorCount);
        Dictionary<Fraction, List<(TripleSums Sums, SearchedNetwork Network)>> found = [];
        long triples = 0;
        for (int capacitors = MinimumCapacitorCount; capacitors <= capacitorCount; capacitors++)
        {
            IReadOnlyList<LoopSpaceOrbit> orbits = LoopSpaceOrbits.Of(capacitors, cancellationToken: cancellationToken).Orbits;
            PlacedSpaces spaces = PlacedSpaces.Of(orbits, capacitors);
            TripleWalk walk = new(spaces, capacitors);
            walk.Run(orbits, cancellationToken);
            triples += walk.TripleCount;
            Add(found, walk, spaces, cancellationToken);
        }

        return new ThreePhaseAtlas(capacitorCount, triples, found.ToDictionary(
            f => f.Key, f => (IReadOnlyList<SearchedNetwork>)Array.AsReadOnly([.. f.Value.OrderBy(e => e.Sums.ChargeVoltage).ThenBy(e => e.Sums.HighestVoltage).Select(e => e.Network)])));
    }

    /// <summary>The networks of a ratio whose capacitors no other's beat, by charge–voltage product.</summary>
    /// <param name="ratio">Output over input voltage.</param>
    /// <returns>None where no network of three phases makes the ratio.</returns>
    public IReadOnlyList<SearchedNetwork> Front(Fraction ratio) => _fronts.GetValueOrDefault(ratio, []);

    // fewer capacitors came first, and what they have stays: more are shown where they better something
    private static void Add(
        Dictionary<Fraction, List<(TripleSums Sums, SearchedNetwork Network)>> found, TripleWalk walk, PlacedSpaces spaces, CancellationToken cancellationToken)
    {
        foreach (((int output, int input), TripleFront front) in walk.Fronts)
        {
            Fraction ratio = new(output, input);
            if (!found.TryGetValue(ratio, out List<(TripleSums Sums, SearchedNetwork Network)>? kept))
            {
                found.Add(ratio, kept = []);
            }

            foreach ((TripleSums sums, List<(int First, int Second, int Third)> triples) in front.Entries)
            {
                cancellationToken.ThrowIfCancellationRequested();
                if (kept.Exists(k => k.Sums.IsWithin(sums)))
                {
                    continue;
                }

                SearchedNetwork best = TripleWirings.Choose(triples.Select(
                    t => new[] { spaces.WiringsOf(t.First), spaces.WiringsOf(t.Second), spaces.WiringsOf(t.Third) }));
                kept.Add((sums, best));
            }
        }
    }
}
