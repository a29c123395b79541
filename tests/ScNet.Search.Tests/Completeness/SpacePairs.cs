using ScNet.Search.LoopSpaces;
using ScNet.Search.Networks;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Every pair of loop spaces that is a network, by trying all of them.</summary>
internal static class SpacePairs
{
    /// <summary>The pairs of one space of each orbit with every space, as numbers in the list, with their solution.</summary>
    public static IEnumerable<(int First, int Second, NetworkSolution Solution)> Of(int capacitors)
    {
        SpaceList list = SpaceList.Of(capacitors);
        int[] leaders = list.OrbitLeaders();
        for (int first = 0; first < leaders.Length; first++)
        {
            for (int second = 0; second < leaders.Length && leaders[first] == first; second++)
            {
                if (TrySolve(list, first, second) is { } solution)
                {
                    yield return (first, second, solution);
                }
            }
        }
    }

    /// <summary>What two spaces decide, or null where they are no network.</summary>
    public static NetworkSolution? TrySolve(SpaceList list, int first, int second)
    {
        LoopSpace a = list.Spaces[first], b = list.Spaces[second];
        return a.Dimension + b.Dimension == list.Capacitors + 1 && NetworkSolution.TrySolve([a, b], out NetworkSolution? solution) ? solution : null;
    }
}
