using ScNet.Search.Pairs;

namespace ScNet.Search.Atlases;

/// <summary>The networks of a front, made again from their places.</summary>
internal static class AtlasNetworks
{
    /// <summary>The network at a place.</summary>
    public static SearchedNetwork Of(FrontEntry entry)
    {
        NetworkPlace place = entry.Place;
        return SearchedNetwork.TryCreate([Wiring.Parse(place.First), Wiring.Parse(place.Second)], place.Layout, out SearchedNetwork? network)
            ? network
            : throw new InvalidOperationException($"The wirings {place.First} and {place.Second} of the search make no network.");
    }
}
