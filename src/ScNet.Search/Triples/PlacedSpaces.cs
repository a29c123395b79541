using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Triples;

/// <summary>Every loop space of a number of capacitors, with the orbit it belongs to and how it comes of that orbit's representative.</summary>
internal sealed class PlacedSpaces
{
    private readonly Dictionary<ulong, int> _numbers = [];
    private readonly List<LoopSpace> _spaces = [];
    private readonly List<(LoopSpaceOrbit Orbit, int Element)> _origins = [];
    private readonly SignedPermutations _group;

    private PlacedSpaces(int capacitors) => _group = new SignedPermutations(capacitors);

    /// <summary>The number of spaces.</summary>
    public int Count => _spaces.Count;

    /// <summary>The spaces of a number of capacitors. Cost: orbits times the group's order.</summary>
    public static PlacedSpaces Of(IReadOnlyList<LoopSpaceOrbit> orbits, int capacitors)
    {
        PlacedSpaces placed = new(capacitors);
        Span<int> positions = stackalloc int[capacitors];
        foreach (LoopSpaceOrbit orbit in orbits)
        {
            for (int element = 0; element < placed._group.Count; element++)
            {
                int turns = placed._group.Read(element, positions);
                LoopSpace space = orbit.Space.Moved(positions, turns);
                if (placed._numbers.TryAdd(space.Key, placed._spaces.Count))
                {
                    placed._spaces.Add(space);
                    placed._origins.Add((orbit, element));
                }
            }
        }

        return placed;
    }

    /// <summary>A space by its number, from 0.</summary>
    public LoopSpace this[int number] => _spaces[number];

    /// <summary>The number of a space.</summary>
    public int NumberOf(LoopSpace space) => _numbers[space.Key];

    /// <summary>The numbers of the spaces of so many loops.</summary>
    public int[] OfDimension(int loops) => [.. Enumerable.Range(0, Count).Where(s => _spaces[s].Dimension == loops)];

    /// <summary>The wirings in one piece of a space.</summary>
    public Wiring[] WiringsOf(int number)
    {
        (LoopSpaceOrbit orbit, int element) = _origins[number];
        Span<int> positions = stackalloc int[_group.Capacitors];
        Wiring[] wirings = new Wiring[orbit.Wirings.Count];
        for (int w = 0; w < wirings.Length; w++)
        {
            int turns = _group.Read(element, positions);
            wirings[w] = orbit.Wirings[w].Moved(positions, turns);
        }

        return wirings;
    }

    /// <summary>One of each set of spaces that some elements of the group make from one another, with the size of the set.</summary>
    /// <param name="spaces">The spaces' numbers; closed under the elements.</param>
    /// <param name="generators">Numbers of elements that generate the others.</param>
    public List<(int Space, int Size)> Classes(int[] spaces, ReadOnlySpan<int> generators)
    {
        bool[] isSeen = new bool[Count];
        Span<int> positions = stackalloc int[_group.Capacitors];
        Stack<int> waiting = new();
        List<(int, int)> classes = [];
        foreach (int first in spaces)
        {
            int size = 0;
            Push(first);
            while (waiting.TryPop(out int space))
            {
                size++;
                foreach (int generator in generators)
                {
                    int turns = _group.Read(generator, positions);
                    Push(_numbers[_spaces[space].Moved(positions, turns).Key]);
                }
            }

            if (size > 0)
            {
                classes.Add((first, size));
            }
        }

        return classes;

        void Push(int space)
        {
            if (!isSeen[space])
            {
                isSeen[space] = true;
                waiting.Push(space);
            }
        }
    }
}
