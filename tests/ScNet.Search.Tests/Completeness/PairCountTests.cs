namespace ScNet.Search.Tests.Completeness;

/// <summary>
/// Networks of two phases up to renaming and turning capacitors and exchanging the phases, counted by Burnside's lemma
/// and by gathering orbits.
/// </summary>
public class PairCountTests
{
    public static IEnumerable<object[]> Sizes => AtlasCampaign.UpTo(3, 3, [[1], [2], [3]]);

    [Theory]
    [MemberData(nameof(Sizes))]
    public void Orbits_of_networks_are_the_average_number_of_fixed_ones(int capacitors)
    {
        SpaceList list = SpaceList.Of(capacitors);
        HashSet<(int First, int Second)> networks = Networks(list);
        Assert.Equal(2L * list.Maps.Count * Gathered(list, networks), Fixed(list, networks));
    }

    /// <summary>The number of orbits of networks by Burnside's lemma.</summary>
    internal static long Count(int capacitors)
    {
        SpaceList list = SpaceList.Of(capacitors);
        return Fixed(list, Networks(list)) / (2 * list.Maps.Count);
    }

    // summed over all elements, with and without an exchange of phases
    private static long Fixed(SpaceList list, HashSet<(int First, int Second)> networks) =>
        list.Images.Sum(image => networks.LongCount(n => image[n.First] == n.First && image[n.Second] == n.Second)
            + networks.LongCount(n => image[n.First] == n.Second && image[n.Second] == n.First));

    private static long Gathered(SpaceList list, HashSet<(int First, int Second)> networks)
    {
        HashSet<(int First, int Second)> left = [.. networks];
        long orbits = 0;
        while (left.Count > 0)
        {
            (int first, int second) = left.First();
            orbits++;
            foreach (int[] image in list.Images)
            {
                left.Remove((image[first], image[second]));
                left.Remove((image[second], image[first]));
            }
        }

        return orbits;
    }

    // an orbit's first space with every other is tried; the rest follow by moving both
    private static HashSet<(int First, int Second)> Networks(SpaceList list)
    {
        HashSet<(int, int)> networks = [];
        foreach ((int first, int second, _) in SpacePairs.Of(list.Capacitors))
        {
            networks.UnionWith(list.Images.Select(image => (image[first], image[second])));
        }

        Assert.All(networks, n => Assert.Contains((n.Item2, n.Item1), networks));
        return networks;
    }
}
