namespace ScNet.Testing;

/// <summary>A law does not hold: the case, how to draw it again, and what was thrown.</summary>
internal sealed class LawBrokenException(string message, Exception cause) : Exception(message, cause);
