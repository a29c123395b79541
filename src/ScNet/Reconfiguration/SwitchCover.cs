using System.Numerics;

namespace ScNet.Reconfiguration;

/// <summary>
/// Few pairs of terminals with which every group can be joined within itself: all useful pairs, thinned
/// out one by one as long as every group stays connected.
/// </summary>
internal sealed class SwitchCover(int terminalCount)
{
    private readonly ulong[] _neighbours = new ulong[terminalCount];
    private readonly int[] _uses = new int[terminalCount * terminalCount];

    /// <summary>Thins out from the least useful pair to the most; pairs of equal use in the order of <paramref name="tieBreak"/>.</summary>
    /// <param name="groups">The groups, a bit per terminal.</param>
    /// <param name="tieBreak">A number for each pair, first · terminals + second.</param>
    /// <param name="limit">How many pairs are too many.</param>
    /// <returns>The pairs, or null as soon as there are too many.</returns>
    public List<(int First, int Second)>? Find(ulong[] groups, Func<int, double> tieBreak, int limit)
    {
        CountUses(groups);
        List<(int First, int Second)> pairs = [];
        _neighbours.AsSpan().Clear();
        for (int a = 0; a < terminalCount; a++)
        {
            for (int b = a + 1; b < terminalCount; b++)
            {
                if (_uses[(a * terminalCount) + b] > 0)
                {
                    pairs.Add((a, b));
                    _neighbours[a] |= 1UL << b;
                    _neighbours[b] |= 1UL << a;
                }
            }
        }

        List<(int First, int Second)> kept = [];
        foreach ((int a, int b) in pairs.OrderBy(p => _uses[(p.First * terminalCount) + p.Second]).ThenBy(p => tieBreak((p.First * terminalCount) + p.Second)))
        {
            _neighbours[a] &= ~(1UL << b);
            _neighbours[b] &= ~(1UL << a);
            ulong both = (1UL << a) | (1UL << b);
            if (!AreConnected(groups, both))
            {
                _neighbours[a] |= 1UL << b;
                _neighbours[b] |= 1UL << a;
                kept.Add((a, b));
                if (kept.Count == limit)
                {
                    return null;
                }
            }
        }

        return kept;
    }

    // Whether every group that holds certain terminals is connected.
    private bool AreConnected(ulong[] groups, ulong terminals)
    {
        foreach (ulong group in groups)
        {
            if ((group & terminals) == terminals && !IsConnected(group))
            {
                return false;
            }
        }

        return true;
    }

    private void CountUses(ulong[] groups)
    {
        _uses.AsSpan().Clear();
        foreach (ulong group in groups)
        {
            for (ulong rest = group; rest != 0; rest &= rest - 1)
            {
                int a = BitOperations.TrailingZeroCount(rest);
                for (ulong others = rest & (rest - 1); others != 0; others &= others - 1)
                {
                    _uses[(a * terminalCount) + BitOperations.TrailingZeroCount(others)]++;
                }
            }
        }
    }

    private bool IsConnected(ulong group)
    {
        ulong reached = group & (~group + 1), front = reached;
        while (front != 0)
        {
            ulong next = _neighbours[BitOperations.TrailingZeroCount(front)] & group & ~reached;
            front = (front & (front - 1)) | next;
            reached |= next;
        }

        return reached == group;
    }
}
