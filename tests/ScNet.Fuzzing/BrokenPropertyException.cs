namespace ScNet.Fuzzing;

/// <summary>A property that a target must keep for every text, and does not for this one.</summary>
internal sealed class BrokenPropertyException(string message) : Exception(message);
