namespace ScNet.Numerics;

/// <summary>Room for values that are needed for a moment: on the stack where they are few, on the heap where no stack may hold them.</summary>
internal static class Scratch
{
    /// <summary>Room for so many values: part of the small room, or where that does not do room of its own.</summary>
    /// <param name="count">The number of values.</param>
    /// <param name="small">The room on the stack; what stands there stays.</param>
    public static Span<T> Of<T>(int count, Span<T> small) => count <= small.Length ? small[..count] : new T[count];
}
