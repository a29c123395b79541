using ScNet.Search;
using ScNet.Search.LoopSpaces;

namespace ScNet.Synthesis.Candidates;

/// <summary>Pairs of loop spaces up to renaming and turning capacitors and exchanging phases.</summary>
internal static class Orbits
{
    /// <summary>The first pair of each orbit.</summary>
    /// <remarks>Cost: pairs · 2^n n! of n capacitors.</remarks>
    public static IReadOnlyList<(int First, int Second)> Representatives(IReadOnlyList<StateGroup> groups, IReadOnlyList<(int First, int Second)> pairs)
    {
        int capacitors = groups.Count == 0 ? 0 : groups[0].Space.Space.BranchCount - LoopSpace.FirstCapacitorColumn;
        var maps = CapacitorMap.All(capacitors)
            .Select(m => (Positions: Enumerable.Range(0, capacitors).Select(m.Position).ToArray(), Turns: Enumerable.Range(0, capacitors).Sum(c => m.IsTurned(c) ? 1 << c : 0)))
            .ToArray();
        HashSet<(ulong, ulong)> seen = [];
        List<(int, int)> representatives = [];
        foreach ((int first, int second) in pairs)
        {
            LoopSpace a = groups[first].Space.Space, b = groups[second].Space.Space;
            if (!seen.Contains((a.Key, b.Key)))
            {
                representatives.Add((first, second));
                foreach ((int[] positions, int turns) in maps)
                {
                    ulong movedFirst = a.Moved(positions, turns).Key, movedSecond = b.Moved(positions, turns).Key;
                    seen.Add((movedFirst, movedSecond));
                    seen.Add((movedSecond, movedFirst));
                }
            }
        }

        return representatives.AsReadOnly();
    }
}
