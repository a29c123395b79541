namespace ScNet.Fuzzing;

/// <summary>One reader of texts with the properties that it must keep for every text.</summary>
/// <param name="Name">The word that chooses it, and the name of its folder of examples and of its dictionary.</param>
/// <param name="MaximumLength">The most bytes that are tried: beyond them a text is like a shorter one.</param>
/// <param name="Weight">Its part of the executions of a campaign, beside the others.</param>
/// <param name="Try">Reads the bytes and throws where a property is broken.</param>
internal sealed record FuzzTarget(string Name, int MaximumLength, int Weight, Action<byte[]> Try);
