namespace ScNet.Search.Atlases;

/// <summary>A network of a front: its measures and where it is found.</summary>
/// <param name="Key">Its measures.</param>
/// <param name="Place">Its place.</param>
internal readonly record struct FrontEntry(Pairs.MeasureKey Key, Pairs.NetworkPlace Place);
