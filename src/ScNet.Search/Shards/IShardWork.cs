namespace ScNet.Search.Shards;

/// <summary>What finds the networks of a part.</summary>
internal interface IShardWork
{
    /// <summary>How many pairs there are in all parts together, counted without making them.</summary>
    long PairCount(int capacitors, int phases);

    /// <summary>Makes a part; the same whenever and wherever it is made.</summary>
    ShardFinding Find(AtlasShard shard, IProgress<double>? progress, CancellationToken cancellationToken);

    /// <summary>Those of networks of one ratio that no other beats; of equals always the same one.</summary>
    IEnumerable<SearchedNetwork> Front(IReadOnlyList<SearchedNetwork> networks);
}

/// <summary>What came of a part.</summary>
/// <param name="Pairs">The pairs decided.</param>
/// <param name="Networks">How many are networks.</param>
/// <param name="Front">Per ratio those that no other of the part beats.</param>
internal sealed record ShardFinding(long Pairs, long Networks, IReadOnlyList<SearchedNetwork> Front);
