namespace ScNet.Search.LoopSpaces;

/// <summary>All loop spaces that become one another by renaming and turning capacitors, by one of them.</summary>
internal sealed class LoopSpaceOrbit
{
    private readonly int[] _stabiliser;
    private readonly int[] _generators;

    private LoopSpaceOrbit(LoopSpace space, Wiring[] wirings, int[] stabiliser, int[] generators)
    {
        Space = space;
        Wirings = Array.AsReadOnly(wirings);
        _stabiliser = stabiliser;
        _generators = generators;
    }

    /// <summary>The one that stands for all: the canonical form.</summary>
    public LoopSpace Space { get; }

    /// <summary>Its wirings in one piece, in the order of their codes: every one, or so many that the rest are their images under the stabiliser.</summary>
    public IReadOnlyList<Wiring> Wirings { get; }

    /// <summary>The numbers of the elements that leave the space as it is, see <see cref="SignedPermutations"/>.</summary>
    public ReadOnlySpan<int> Stabiliser => _stabiliser;

    /// <summary>Some of <see cref="Stabiliser"/> from which all others can be composed; none where it is the identity alone.</summary>
    public ReadOnlySpan<int> Generators => _generators;

    /// <summary>The number of spaces of the orbit.</summary>
    public int Size => new SignedPermutations(Space.BranchCount - LoopSpace.FirstCapacitorColumn).Count / _stabiliser.Length;

    /// <summary>The orbit of a canonical form.</summary>
    /// <param name="space">The form.</param>
    /// <param name="wirings">Wirings of it, of which every other is the image of one under the stabiliser.</param>
    /// <param name="withImages">Whether the others are added.</param>
    public static LoopSpaceOrbit Of(LoopSpace space, IReadOnlyCollection<Wiring> wirings, bool withImages)
    {
        int[] stabiliser = StabiliserOf(space);
        SignedPermutations group = new(space.BranchCount - LoopSpace.FirstCapacitorColumn);
        int[] generators = group.Generators(stabiliser);
        HashSet<Wiring> all = [.. wirings];
        Queue<Wiring> waiting = new(withImages ? all : []);
        Span<int> positions = stackalloc int[group.Capacitors];
        while (waiting.TryDequeue(out Wiring? wiring))
        {
            foreach (int generator in generators)
            {
                int turns = group.Read(generator, positions);
                Wiring image = wiring.Moved(positions, turns);
                if (all.Add(image))
                {
                    waiting.Enqueue(image);
                }
            }
        }

        return new LoopSpaceOrbit(space, [.. all.OrderBy(w => w.ToCode(), StringComparer.Ordinal)], stabiliser, generators);
    }

    /// <summary>The numbers of the elements that leave a space as it is.</summary>
    internal static int[] StabiliserOf(LoopSpace space)
    {
        int capacitors = space.BranchCount - LoopSpace.FirstCapacitorColumn;
        SignedPermutations group = new(capacitors);
        Span<ulong> colours = stackalloc ulong[capacitors];
        Span<int> positions = stackalloc int[capacitors];
        Span<sbyte> moved = stackalloc sbyte[space.Dimension * space.BranchCount];
        CanonicalForm.Paint(space, colours);
        List<int> found = [];
        for (int first = 0; first < group.Count; first += 1 << capacitors)
        {
            group.Read(first, positions);
            bool keepsColours = true;
            for (int c = 0; c < capacitors; c++)
            {
                keepsColours &= colours[c] == colours[positions[c]];
            }

            for (int turns = 0; turns < 1 << capacitors && keepsColours; turns++)
            {
                space.WriteMoved(positions, turns, moved);
                LoopSpace.Reduce(moved, space.BranchCount);
                if (LoopSpace.KeyOf(moved, space.Dimension, space.BranchCount) == space.Key)
                {
                    found.Add(first | turns);
                }
            }
        }

        return [.. found];
    }
}
