namespace ScNet.Kernel;

/// <summary>The nodes between which something lies.</summary>
internal readonly record struct NodePair(int First, int Second);
