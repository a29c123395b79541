using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Triples;

/// <summary>
/// All triples of loop spaces of three phases, up to renaming and turning capacitors, whose loops fix all voltages and
/// charges; for each ratio all of them, or what no other beats.
/// </summary>
/// <remarks>
/// Loops of the three phases are k + 1 together. The phase of the fewest loops, which has one, is the representative of its orbit;
/// the next goes through one space of each set that the representative's stabiliser makes; the last through all. Which
/// phase comes first does not matter to voltages and charges. The outcome does not depend on the number of threads.
/// </remarks>
internal sealed class TripleSearch
{
    private readonly SortedDictionary<(int Output, int Input), TripleFront> _fronts = [];

    private TripleSearch(PlacedSpaces spaces, bool keepsBeaten)
    {
        Spaces = spaces;
        KeepsBeaten = keepsBeaten;
    }

    /// <summary>Whether networks are kept whose capacitors others' beat.</summary>
    public bool KeepsBeaten { get; }

    /// <summary>The spaces, by the numbers that the fronts hold.</summary>
    public PlacedSpaces Spaces { get; }

    /// <summary>The triples that were decided.</summary>
    public long TripleCount { get; private set; }

    /// <summary>Those that are networks.</summary>
    public long NetworkCount { get; private set; }

    /// <summary>Networks, each counted with all its renamings and turns and all orders of its phases.</summary>
    public long LabelledNetworkCount { get; private set; }

    /// <summary>The fronts by ratio: output and input voltage in lowest terms, the input's positive.</summary>
    public IReadOnlyDictionary<(int Output, int Input), TripleFront> Fronts => _fronts;

    /// <summary>Searches.</summary>
    /// <param name="capacitors">The number of flying capacitors, up to <see cref="ThreePhaseAtlas.MaximumCapacitorCount"/>; below two there is nothing to find.</param>
    /// <param name="keepsBeaten">Whether networks are kept whose capacitors others' beat; memory grows with their number.</param>
    /// <param name="threads">The threads that share the work.</param>
    /// <param name="progress">Receives the fraction done, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static TripleSearch Run(int capacitors, bool keepsBeaten, int threads, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        IReadOnlyList<LoopSpaceOrbit> orbits = LoopSpaceOrbits.Of(capacitors, cancellationToken: cancellationToken).Orbits;
        TripleSearch search = new(PlacedSpaces.Of(orbits, capacitors), keepsBeaten);
        Work[] work = [.. search.Deal(orbits, capacitors, cancellationToken)];
        long total = work.Sum(w => (long)w.Thirds.Spaces.Length), done = 0;
        ParallelLoop.Run(() => Parallel.ForEach(
            System.Collections.Concurrent.Partitioner.Create(work, loadBalance: true),
            new ParallelOptions { CancellationToken = cancellationToken, MaxDegreeOfParallelism = threads },
            () => new TripleWalk(capacitors, keepsBeaten),
            (item, _, walk) =>
            {
                LoopSpace second = search.Spaces[item.Second];
                walk.Run(search.Spaces.NumberOf(item.First), item.Second, TwoPhases.Of(item.First, second), item.Thirds, item.Labelled);
                progress?.Report((double)Interlocked.Add(ref done, item.Thirds.Spaces.Length) / total);
                return walk;
            },
            search.Take));
        return search;
    }

    private IEnumerable<Work> Deal(IReadOnlyList<LoopSpaceOrbit> orbits, int capacitors, CancellationToken cancellationToken)
    {
        for (int second = 1; second < capacitors - second + 1; second++)
        {
            int third = capacitors - second;
            int orders = third == 1 ? 1 : second == 1 || second == third ? 3 : 6;
            int[] seconds = Spaces.OfDimension(second);
            ThirdPhases thirds = ThirdPhases.Of(Spaces, third);
            foreach (LoopSpaceOrbit orbit in orbits.Where(o => o.Space.Dimension == 1))
            {
                cancellationToken.ThrowIfCancellationRequested();
                foreach ((int space, int size) in Spaces.Classes(seconds, orbit.Generators))
                {
                    yield return new Work(orbit.Space, space, thirds, (long)orders * orbit.Size * size);
                }
            }
        }
    }

    private void Take(TripleWalk walk)
    {
        lock (_fronts)
        {
            TripleCount += walk.TripleCount;
            NetworkCount += walk.NetworkCount;
            LabelledNetworkCount += walk.LabelledNetworkCount;
            foreach (((int Output, int Input) ratio, TripleFront front) in walk.Fronts)
            {
                if (!_fronts.TryGetValue(ratio, out TripleFront? kept))
                {
                    _fronts.Add(ratio, kept = new TripleFront(KeepsBeaten));
                }

                kept.Add(front);
            }
        }
    }

    private sealed record Work(LoopSpace First, int Second, ThirdPhases Thirds, long Labelled);
}
