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
    /// <param name="progress">Takes the fraction done; may be null.</param>
    /// <param name="cancellationToken">Stops the work; no file is written then.</param>
    /// <exception cref="IOException">The folder or the file cannot be written; found before the work begins.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder must not be written to; found before the work begins.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ShardRun Of(AtlasShard shard, string folder, IProgress<double>? progress = null, CancellationToken cancellationToken = default) =>
        Of(shard, folder, new WiringPairs(), progress, cancellationToken);

    internal static ShardRun Of(AtlasShard shard, string folder, IShardWork work, IProgress<double>? progress, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(shard);
        ArgumentException.ThrowIfNullOrEmpty(folder);
        Directory.CreateDirectory(folder);
        string path = System.IO.Path.Combine(folder, shard.FileName);
        AtomicFile.Try(path);
        ShardFinding finding = work.Find(shard, progress, cancellationToken);
        ShardEntry[] entries = [.. finding.Front.Select(ShardEntry.Of).Order()];
        ShardCounts counts = new(finding.Pairs, finding.Networks, entries.Length);
        AtomicFile.Write(path, stream => ShardText.Write(stream, shard, counts, entries));
        return new ShardRun(shard, path, counts);
    }

    /// <summary>The file and the counts.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Path}: {Counts.Pairs} pairs decided, {Counts.Networks} networks, {Counts.Entries} of them unbeaten");
}
