namespace ScNet;

/// <summary>Marks a type whose text says all there is: it shows as that, and not as a page.</summary>
/// <param name="reason">Why a page would say no more.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Struct)]
internal sealed class ShownAsTextAttribute(string reason) : Attribute
{
    /// <summary>Why a page would say no more.</summary>
    public string Reason { get; } = reason;
}
