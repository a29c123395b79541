using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Tests.Completeness;

/// <summary>
/// Every loop space of a number of capacitors, by going through all wirings: no canonical form, nothing built up. What a
/// signed permutation does to a space is seen on a wiring of it.
/// </summary>
internal sealed class SpaceList
{
    private static readonly Lazy<SpaceList>[] s_lists = [.. Enumerable.Range(0, 6).Select(k => new Lazy<SpaceList>(() => new SpaceList(k)))];

    private readonly Dictionary<ulong, int> _numbers = [];

    private SpaceList(int capacitors)
    {
        Capacitors = capacitors;
        List<LoopSpace> spaces = [];
        List<Wiring> wirings = [];
        foreach (Wiring wiring in AllWirings.Of(capacitors))
        {
            LoopSpace space = LoopSpace.Of(wiring);
            if (_numbers.TryAdd(space.Key, spaces.Count))
            {
                spaces.Add(space);
                wirings.Add(wiring);
            }
        }

        Spaces = spaces;
        Maps = [.. CapacitorMap.All(capacitors)];
        Images = [.. Maps.Select(map => wirings.Select(w => _numbers[LoopSpace.Of(w.Moved(map)).Key]).ToArray())];
    }

    public int Capacitors { get; }

    public IReadOnlyList<LoopSpace> Spaces { get; }

    /// <summary>The signed permutations.</summary>
    public IReadOnlyList<CapacitorMap> Maps { get; }

    /// <summary>For each signed permutation the number of the space that each space becomes.</summary>
    public IReadOnlyList<int[]> Images { get; }

    /// <summary>For each space the least number among its images: equal within an orbit.</summary>
    public int[] OrbitLeaders() => [.. Enumerable.Range(0, Spaces.Count).Select(s => Images.Min(image => image[s]))];

    /// <summary>The list of a number of capacitors, made once.</summary>
    public static SpaceList Of(int capacitors) => s_lists[capacitors].Value;
}
