using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Tests.Completeness;

/// <summary>Pairs of wirings: one of each set of wirings that renaming and turning capacitors makes of one another, with every wiring.</summary>
internal static class WiringPairs
{
    /// <summary>The pairs, of all wirings or of those in one piece.</summary>
    public static IEnumerable<(Wiring First, Wiring Second)> Of(int capacitors, bool inOnePiece)
    {
        Wiring[] wirings = [.. AllWirings.Of(capacitors).Where(w => !inOnePiece || BranchForest.Of(w).PieceCount == 1)];
        CapacitorMap[] maps = [.. CapacitorMap.All(capacitors)];
        HashSet<Wiring> seen = [];
        foreach (Wiring first in wirings)
        {
            if (seen.Add(first))
            {
                seen.UnionWith(maps.Select(first.Moved));
                foreach (Wiring second in wirings)
                {
                    yield return (first, second);
                }
            }
        }
    }
}
