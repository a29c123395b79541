using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>The spaces of an orbit, each by one way to move the representative to it.</summary>
/// <remarks>
/// A way is packed into four bits per capacitor, the first capacitor on top: three for its position, the lowest for its
/// turn. In ascending order neighbours mostly differ in the last capacitors only.
/// </remarks>
internal sealed class MovingOrbit
{
    private readonly SignedPermutations _group;
    private readonly int[] _placeOfElement;

    private MovingOrbit(LoopSpaceOrbit orbit, SignedPermutations group, uint[] ways, int[] placeOfElement)
    {
        Orbit = orbit;
        _group = group;
        Ways = ways;
        _placeOfElement = placeOfElement;
    }

    /// <summary>The orbit.</summary>
    public LoopSpaceOrbit Orbit { get; }

    /// <summary>A way per space, ascending.</summary>
    public uint[] Ways { get; }

    /// <summary>The spaces of an orbit. Cost: the group's order.</summary>
    public static MovingOrbit Of(LoopSpaceOrbit orbit, SignedPermutations group)
    {
        Span<int> positions = stackalloc int[group.Capacitors], before = stackalloc int[group.Capacitors], composed = stackalloc int[group.Capacitors];
        int[] place = new int[group.Count];
        List<(uint Way, int Element)> found = new(orbit.Size);
        place.AsSpan().Fill(-1);
        for (int element = 0; element < place.Length; element++)
        {
            if (place[element] >= 0)
            {
                continue;
            }

            int turns = group.Read(element, positions);
            uint least = uint.MaxValue;
            foreach (int kept in orbit.Stabiliser)
            {
                int turnsBefore = group.Read(kept, before);
                int composedTurns = SignedPermutations.Compose(before, turnsBefore, positions, turns, composed);
                place[group.NumberOf(composed, composedTurns)] = found.Count;
                least = Math.Min(least, Pack(composed, composedTurns));
            }

            found.Add((least, found.Count));
        }

        found.Sort();
        int[] rank = new int[found.Count];
        for (int r = 0; r < rank.Length; r++)
        {
            rank[found[r].Element] = r;
        }

        for (int element = 0; element < place.Length; element++)
        {
            place[element] = rank[place[element]];
        }

        return new MovingOrbit(orbit, group, [.. found.Select(f => f.Way)], place);
    }

    /// <summary>The place among <see cref="Ways"/> of the space that an element leads to.</summary>
    public int PlaceOf(ReadOnlySpan<int> positions, int turns) => _placeOfElement[_group.NumberOf(positions, turns)];

    /// <summary>Reads a way.</summary>
    /// <returns>A bit per capacitor that is turned.</returns>
    public static int Unpack(uint way, Span<int> positions)
    {
        int turns = 0;
        for (int c = 0; c < positions.Length; c++)
        {
            uint bits = way >> (4 * (positions.Length - 1 - c));
            positions[c] = (int)(bits >> 1 & 7);
            turns |= (int)(bits & 1) << c;
        }

        return turns;
    }

    private static uint Pack(ReadOnlySpan<int> positions, int turns)
    {
        uint way = 0;
        for (int c = 0; c < positions.Length; c++)
        {
            way = (way << 4) | ((uint)positions[c] << 1) | (uint)(turns >> c & 1);
        }

        return way;
    }
}
