using ScNet.Search.LoopSpaces;
using ScNet.Search.Pairs;

namespace ScNet.Search.Atlases;

/// <summary>A share of the search over all pairs of loop spaces of two phases, a function of its number alone.</summary>
/// <remarks>
/// The pairs of orbits are dealt out in turn: pair u belongs to shard u modulo the number of shards. Whatever the number
/// of shards and threads, the fronts of all shards together give the same networks.
/// </remarks>
internal sealed class PairShard
{
    private PairShard(int capacitors) => Capacitors = capacitors;

    /// <summary>The number of flying capacitors, each of which works.</summary>
    public int Capacitors { get; }

    /// <summary>The pairs of loop spaces that were decided, up to renaming, turning and exchanging phases.</summary>
    public long PairCount { get; private set; }

    /// <summary>Those in which the loops fix everything and every capacitor works.</summary>
    public long NetworkCount { get; private set; }

    /// <summary>Their wirings.</summary>
    public long WiringCount { get; private set; }

    /// <summary>The fronts by ratio: output and input voltage in lowest terms, the input's positive.</summary>
    public SortedDictionary<(int Output, int Input), FrontOfRatio> Fronts { get; } = [];

    /// <summary>Runs a shard.</summary>
    /// <param name="capacitors">The number of flying capacitors, at least 1.</param>
    /// <param name="shard">The shard's number, from 1.</param>
    /// <param name="shards">The number of shards.</param>
    /// <param name="threads">The threads that share the work.</param>
    /// <param name="progress">Receives the fraction done, from any thread; may be null.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static PairShard Run(int capacitors, int shard, int shards, int threads, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        IReadOnlyList<LoopSpaceOrbit> orbits = LoopSpaceOrbits.Of(capacitors, usingAll: true, cancellationToken).Orbits;
        List<(LoopSpaceOrbit Moving, LoopSpaceOrbit[] Fixed, long Work)> work = Deal(orbits, capacitors, shard, shards);
        SignedPermutations group = new(capacitors);
        PairShard outcome = new(capacitors);
        long total = work.Sum(w => w.Work), done = 0;
        ParallelLoop.Run(() => Parallel.ForEach(
            System.Collections.Concurrent.Partitioner.Create(work.OrderByDescending(w => w.Work), System.Collections.Concurrent.EnumerablePartitionerOptions.NoBuffering),
            new ParallelOptions { CancellationToken = cancellationToken, MaxDegreeOfParallelism = threads },
            () => (Walk: new PairWalk(capacitors), Collector: new FrontCollector(capacitors)),
            (item, _, worker) =>
            {
                MovingOrbit moving = MovingOrbit.Of(item.Moving, group);
                foreach (LoopSpaceOrbit fixedOrbit in item.Fixed)
                {
                    cancellationToken.ThrowIfCancellationRequested();
                    worker.Walk.Run(fixedOrbit, moving, worker.Collector);
                }

                progress?.Report((double)Interlocked.Add(ref done, item.Work) / total);
                return worker;
            },
            worker => outcome.Take(worker.Walk, worker.Collector)));
        return outcome;
    }

    // orbits of equal numbers of loops meet once, the others with the larger number fixed
    private static List<(LoopSpaceOrbit Moving, LoopSpaceOrbit[] Fixed, long Work)> Deal(
        IReadOnlyList<LoopSpaceOrbit> orbits, int capacitors, int shard, int shards)
    {
        List<(LoopSpaceOrbit, LoopSpaceOrbit[], long)> work = [];
        long pair = 0;
        for (int smaller = 0; smaller < orbits.Count; smaller++)
        {
            List<LoopSpaceOrbit> mine = [];
            for (int larger = smaller; larger < orbits.Count; larger++)
            {
                if (orbits[smaller].Space.Dimension + orbits[larger].Space.Dimension == capacitors + 1 && pair++ % shards == shard - 1)
                {
                    mine.Add(orbits[larger]);
                }
            }

            if (mine.Count > 0)
            {
                work.Add((orbits[smaller], [.. mine], (long)mine.Count * orbits[smaller].Size));
            }
        }

        return work;
    }

    private void Take(PairWalk walk, FrontCollector collector)
    {
        lock (Fronts)
        {
            PairCount += walk.PairCount;
            NetworkCount += collector.NetworkCount;
            WiringCount += collector.WiringCount;
            Add(collector.Fronts);
        }
    }

    /// <summary>Takes over what another shard found, of this or another number of capacitors.</summary>
    public void Take(PairShard other)
    {
        PairCount += other.PairCount;
        NetworkCount += other.NetworkCount;
        WiringCount += other.WiringCount;
        Add(other.Fronts);
    }

    private void Add(IEnumerable<KeyValuePair<(int Output, int Input), FrontOfRatio>> fronts)
    {
        foreach (((int Output, int Input) ratio, FrontOfRatio front) in fronts)
        {
            if (!Fronts.TryGetValue(ratio, out FrontOfRatio? kept))
            {
                Fronts.Add(ratio, kept = new FrontOfRatio());
            }

            kept.Add(front);
        }
    }
}
