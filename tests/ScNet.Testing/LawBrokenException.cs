namespace ScNet.Testing;

/// <summary>A law does not hold: the case, how to draw it again, and what was thrown.</summary>
internal sealed class LawBrokenException(string message, string @case, Exception cause) : Exception(message, cause)
{
    /// <summary>The case as SCNET_LAWS_CASE takes it.</summary>
    public string Case => @case;
}
