namespace ScNet.Search.Pairs;

/// <summary>Where a network stands in the search: its two wirings and the layout of its switches.</summary>
/// <param name="First">The code of the first phase's wiring, see <see cref="Wiring.ToCode"/>.</param>
/// <param name="Second">The code of the second phase's.</param>
/// <param name="Layout">The layout.</param>
internal sealed record NetworkPlace(string First, string Second, SwitchLayout Layout) : IComparable<NetworkPlace>
{
    /// <summary>The order of a front's networks of equal measures, of which the first is kept.</summary>
    public int CompareTo(NetworkPlace? other)
    {
        int first = string.CompareOrdinal(First, other?.First);
        int second = first != 0 ? first : string.CompareOrdinal(Second, other?.Second);
        return second != 0 ? second : Layout.CompareTo(other?.Layout);
    }
}
