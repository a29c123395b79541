namespace ScNet.Search.LoopSpaces;

/// <summary>Every loop space of a number of capacitors, up to renaming and turning them, each with all its wirings.</summary>
/// <remarks>
/// Built up capacitor by capacitor. Taking a capacitor away from a wiring in one piece, one that lies on a loop or else
/// one at the end of a branch, leaves a wiring in one piece of one capacitor fewer; so adding a capacitor to every
/// wiring of every smaller orbit, between two of its nodes or from a node to a new one, misses none. Two wirings have
/// the same loops when they are 2-isomorphic (Whitney 1933), and all wirings of a space are found together. On the way
/// up one of the wirings that a space's stabiliser makes from one another is enough.
/// Cost: some thousand canonical forms for four capacitors, half a million for six.
/// </remarks>
internal sealed class LoopSpaceOrbits
{
    private readonly Dictionary<ulong, int> _orbitOfForm = [];
    private readonly Dictionary<ulong, (int Orbit, int[] Positions, int Turns)> _seen = [];
    private readonly List<LoopSpace> _spaces = [];
    private readonly List<HashSet<Wiring>> _wirings = [];

    private readonly bool _usingAll;

    private LoopSpaceOrbits(int capacitors, bool usingAll)
    {
        Capacitors = capacitors;
        _usingAll = usingAll;
    }

    /// <summary>The number of capacitors.</summary>
    public int Capacitors { get; }

    /// <summary>The orbits, by number of loops and then by key.</summary>
    public IReadOnlyList<LoopSpaceOrbit> Orbits { get; private set; } = [];

    /// <summary>The orbits of a number of capacitors.</summary>
    /// <param name="capacitors">The number of capacitors, up to <see cref="LoopSpace.MostCapacitors"/>.</param>
    /// <param name="usingAll">Only the spaces in which every capacitor lies on a loop.</param>
    /// <param name="cancellationToken">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static LoopSpaceOrbits Of(int capacitors, bool usingAll = false, CancellationToken cancellationToken = default) =>
        Of(capacitors, usingAll, withImages: true, cancellationToken);

    private static LoopSpaceOrbits Of(int capacitors, bool usingAll, bool withImages, CancellationToken cancellationToken)
    {
        LoopSpaceOrbits orbits = new(capacitors, usingAll);
        if (capacitors == 0)
        {
            orbits.Add(Wiring.Of([0, 1, 2]));
            orbits.Add(Wiring.Of([0, 1, 1]));
        }
        else
        {
            foreach (LoopSpaceOrbit smaller in Of(capacitors - 1, usingAll: false, withImages: false, cancellationToken).Orbits)
            {
                cancellationToken.ThrowIfCancellationRequested();
                foreach (Wiring wiring in smaller.Wirings)
                {
                    orbits.AddExtensions(wiring);
                }
            }
        }

        orbits.Orbits = [.. Enumerable.Range(0, orbits._spaces.Count)
            .Select(o => LoopSpaceOrbit.Of(orbits._spaces[o], orbits._wirings[o], withImages))
            .OrderBy(o => o.Space.Dimension)
            .ThenBy(o => o.Space.Key)];
        return orbits;
    }

    private void AddExtensions(Wiring wiring)
    {
        Span<int> nodes = stackalloc int[wiring.TerminalCount + 2];
        for (int t = 0; t < wiring.TerminalCount; t++)
        {
            nodes[t] = wiring.Nodes[t];
        }

        // a capacitor that leads to a new node lies on no loop
        for (int second = 1; second < wiring.NodeCount + (_usingAll ? 0 : 1); second++)
        {
            for (int first = 0; first < second; first++)
            {
                nodes[^2] = first;
                nodes[^1] = second;
                Add(Wiring.Of(nodes));
            }
        }
    }

    private void Add(Wiring wiring)
    {
        LoopSpace space = LoopSpace.Of(wiring);
        if (_usingAll && !space.UsesAllCapacitors)
        {
            return;
        }

        if (!_seen.TryGetValue(space.Key, out (int Orbit, int[] Positions, int Turns) known))
        {
            int[] positions = new int[Capacitors];
            ulong form = CanonicalForm.Of(space, positions, out int turns);
            if (!_orbitOfForm.TryGetValue(form, out int orbit))
            {
                _orbitOfForm.Add(form, orbit = _spaces.Count);
                _spaces.Add(space.Moved(positions, turns));
                _wirings.Add([]);
            }

            _seen.Add(space.Key, known = (orbit, positions, turns));
        }

        _wirings[known.Orbit].Add(wiring.Moved(known.Positions, known.Turns));
    }
}
