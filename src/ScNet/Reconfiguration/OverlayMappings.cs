namespace ScNet.Reconfiguration;

/// <summary>
/// The ways to lay the capacitors of several networks onto shared ones, each network's onto distinct ones in either
/// direction: gone through one after the other, or drawn at random, without a list of them.
/// </summary>
/// <remarks>
/// Shared capacitors that no network before has used are all alike, and so are their directions. So the next network
/// takes those in ascending order and never turned: of mappings that differ in names only, one is tried. The first
/// network is therefore laid onto the first capacitors as it is. There are still up to n! · 2ⁿ for n capacitors of
/// each further network; <see cref="Count"/> says how many before any is made.
/// </remarks>
internal sealed class OverlayMappings
{
    private const int PortCount = OverlayGroups.PortCount;

    private readonly int[] _own;
    private readonly int _shared;
    private readonly int[][] _mapping;

    /// <summary>Prepares the mappings.</summary>
    /// <param name="capacitorCounts">The number of capacitors of each network.</param>
    public OverlayMappings(int[] capacitorCounts)
    {
        _own = capacitorCounts;
        _shared = capacitorCounts.Max();
        _mapping = Array.ConvertAll(capacitorCounts, own => new int[PortCount + (2 * own)]);
        foreach (int[] terminals in _mapping)
        {
            for (int port = 0; port < PortCount; port++)
            {
                terminals[port] = port;
            }
        }
    }

    /// <summary>How many mappings <see cref="Visit"/> goes through.</summary>
    public double Count => CountAll();

    /// <summary>Goes through all mappings.</summary>
    /// <param name="visitor">Receives per network the shared terminal of each own one; the arrays are used again for the next mapping.</param>
    public void Visit(Action<int[][]> visitor) => Extend(0, 0, 0, 0, 0, visitor);

    /// <summary>A mapping drawn at random, every one as likely as any other; the arrays are used again for the next mapping.</summary>
    public int[][] Draw(Random random)
    {
        Span<int> order = stackalloc int[_shared];
        for (int network = 0; network < _own.Length; network++)
        {
            for (int c = 0; c < _shared; c++)
            {
                order[c] = c;
            }

            for (int own = 0; own < _own[network]; own++)
            {
                int pick = network == 0 ? own : random.Next(own, _shared);
                (order[own], order[pick]) = (order[pick], order[own]);
                Set(network, own, order[own], isTurned: network > 0 && random.Next(2) == 1);
            }
        }

        return _mapping;
    }

    // From the last network to the first: how many ways there are from it on, by how many shared capacitors are used before.
    private double CountAll()
    {
        var ways = new double[_shared + 1];
        ways.AsSpan().Fill(1);
        for (int network = _own.Length - 1; network >= 0; network--)
        {
            var before = new double[_shared + 1];
            for (int used = 0; used <= _shared; used++)
            {
                for (int added = Math.Max(0, _own[network] - used); added <= Math.Min(_own[network], _shared - used); added++)
                {
                    before[used] += Placings(_own[network], added, used) * ways[used + added];
                }
            }

            ways = before;
        }

        return ways[0];
    }

    // Which of its own capacitors go onto unused ones, and how the others lie on used ones.
    private static double Placings(int own, int added, int used)
    {
        double placings = 1;
        for (int k = 0; k < added; k++)
        {
            placings *= (double)(own - k) / (k + 1);
        }

        for (int k = 0; k < own - added; k++)
        {
            placings *= 2.0 * (used - k);
        }

        return placings;
    }

    private void Extend(int network, int own, ulong taken, int used, int added, Action<int[][]> visitor)
    {
        if (network == _own.Length)
        {
            visitor(_mapping);
            return;
        }

        if (own == _own[network])
        {
            Extend(network + 1, 0, 0, used + added, 0, visitor);
            return;
        }

        for (int c = 0; c < used; c++)
        {
            if (((taken >> c) & 1) == 0)
            {
                Set(network, own, c, isTurned: false);
                Extend(network, own + 1, taken | (1UL << c), used, added, visitor);
                Set(network, own, c, isTurned: true);
                Extend(network, own + 1, taken | (1UL << c), used, added, visitor);
            }
        }

        if (used + added < _shared)
        {
            Set(network, own, used + added, isTurned: false);
            Extend(network, own + 1, taken, used, added + 1, visitor);
        }
    }

    private void Set(int network, int own, int shared, bool isTurned)
    {
        int at = PortCount + (2 * own), plate = PortCount + (2 * shared);
        _mapping[network][at] = isTurned ? plate + 1 : plate;
        _mapping[network][at + 1] = isTurned ? plate : plate + 1;
    }
}
