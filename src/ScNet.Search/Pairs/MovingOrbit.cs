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
    private readonly Dictionary<int, int[]> _images = [];

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

    /// <summary>For each space, by its place among <see cref="Ways"/>, the place of the space that an element makes of it. For one thread.</summary>
    /// <param name="element">The element's number.</param>
    public int[] ImagesBy(int element)
    {
        if (!_images.TryGetValue(element, out int[]? images))
        {
            _images.Add(element, images = new int[Ways.Length]);
            Span<int> positions = stackalloc int[_group.Capacitors], then = stackalloc int[_group.Capacitors], composed = stackalloc int[_group.Capacitors];
            int thenTurns = _group.Read(element, then);
            for (int place = 0; place < images.Length; place++)
            {
                int turns = Unpack(Ways[place], positions);
                turns = SignedPermutations.Compose(positions, turns, then, thenTurns, composed);
                images[place] = _placeOfElement[_group.NumberOf(composed, turns)];
            }
        }

        return images;
    }

    /// <summary>For each space the place of the one that the opposite move makes of the representative.</summary>
    public int[] Inverses()
    {
        Span<int> positions = stackalloc int[_group.Capacitors], inverse = stackalloc int[_group.Capacitors];
        int[] inverses = new int[Ways.Length];
        for (int place = 0; place < inverses.Length; place++)
        {
            int turns = Unpack(Ways[place], positions);
            turns = SignedPermutations.Invert(positions, turns, inverse);
            inverses[place] = _placeOfElement[_group.NumberOf(inverse, turns)];
        }

        return inverses;
    }

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
