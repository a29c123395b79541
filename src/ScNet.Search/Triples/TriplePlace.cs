namespace ScNet.Search.Triples;

/// <summary>A triple by the numbers of its spaces, see <see cref="PlacedSpaces"/>.</summary>
/// <param name="First">That of the first phase.</param>
/// <param name="Second">That of the second.</param>
/// <param name="Third">That of the third.</param>
internal readonly record struct TriplePlace(int First, int Second, int Third) : IComparable<TriplePlace>
{
    /// <summary>By the first number, then by the others.</summary>
    public int CompareTo(TriplePlace other) => (First, Second, Third).CompareTo((other.First, other.Second, other.Third));
}
