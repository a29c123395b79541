namespace ScNet.Search.Shards;

/// <summary>What was counted when a part was made.</summary>
/// <param name="Pairs">The pairs, or in more phases the tuples, of loop spaces that were decided, each orbit once.</param>
/// <param name="Networks">How many of them are networks.</param>
/// <param name="Entries">How many networks no other of the part beats.</param>
public sealed record ShardCounts(long Pairs, long Networks, long Entries);
