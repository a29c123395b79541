using Fractions;
using ScNet.Search.Atlases;
using ScNet.Search.Triples;

namespace ScNet.Search.Shards;

/// <summary>A part made and written to its file.</summary>
public sealed class ShardRun
{
    private ShardRun(AtlasShard shard, string path, ShardCounts counts)
    {
        Shard = shard;
        Path = path;
        Counts = counts;
    }

    /// <summary>The part.</summary>
    public AtlasShard Shard { get; }

    /// <summary>The path of its file.</summary>
    public string Path { get; }

    /// <summary>What was counted.</summary>
    public ShardCounts Counts { get; }

    /// <summary>Makes a part and writes its file, which appears whole or not at all and replaces one of an earlier run.</summary>
    /// <param name="shard">The part.</param>
    /// <param name="folder">The folder of all parts; made where it is not there.</param>
    /// <param name="threads">The most threads; 0 for as many as the machine has. The file is the same.</param>
    /// <param name="progress">Takes the fraction done; may be null.</param>
    /// <param name="cancellationToken">Stops the work; no file is written then.</param>
    /// <exception cref="IOException">The folder or the file cannot be written; found before the work begins.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ShardRun Of(AtlasShard shard, string folder, int threads = 0, IProgress<double>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(shard);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        Directory.CreateDirectory(folder);
        string path = System.IO.Path.Combine(folder, shard.FileName);
        AtomicFile.Try(path);
        threads = threads == 0 ? Environment.ProcessorCount : threads;
        (ShardCounts counts, ShardEntry[] entries) = shard.PhaseCount == 2
            ? OfPairs(shard, threads, progress, cancellationToken)
            : OfTriples(shard, threads, progress, cancellationToken);
        AtomicFile.Write(path, stream => ShardText.Write(stream, shard, counts, entries));
        return new ShardRun(shard, path, counts);
    }

    private static (ShardCounts Counts, ShardEntry[] Entries) OfPairs(AtlasShard shard, int threads, IProgress<double>? progress, CancellationToken cancellationToken)
    {
        PairShard found = PairShard.Run(shard.CapacitorCount, shard.Number, shard.Count, threads, progress, cancellationToken);
        ShardEntry[] entries = [.. found.Fronts.SelectMany(f => f.Value.Entries.Select(e => ShardEntry.Of(new Fraction(f.Key.Output, f.Key.Input), e.Place))).Order()];
        return (new ShardCounts(found.PairCount, found.NetworkCount, entries.Length), entries);
    }

    private static (ShardCounts Counts, ShardEntry[] Entries) OfTriples(AtlasShard shard, int threads, IProgress<double>? progress, CancellationToken cancellationToken)
    {
        TripleSearch found = TripleSearch.Run(
            shard.CapacitorCount, shard.CapacitorCount <= ThreePhaseAtlas.MostCapacitorsByAllSwitches, threads, progress, cancellationToken);
        ShardEntry[] entries =
        [
            .. found.Fronts.Keys.AsParallel().WithDegreeOfParallelism(threads).WithCancellation(cancellationToken)
                .SelectMany(ratio => TripleNetworks.Of([found], ratio, cancellationToken).Select(ShardEntry.Of)).ToArray().Order(),
        ];
        return (new ShardCounts(found.TripleCount, found.NetworkCount, entries.Length), entries);
    }

    /// <summary>The file and the counts.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Path}: {Counts.Pairs} {(Shard.PhaseCount == 2 ? "pairs" : "triples")} decided, {Counts.Networks} networks, {Counts.Entries} of them unbeaten");
}
