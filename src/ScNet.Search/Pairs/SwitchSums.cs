namespace ScNet.Search.Pairs;

/// <summary>What the switches of one phase ask for, for both layouts, without making them.</summary>
/// <remarks>
/// The terminals of a node stand in a row by their potential in the other phase; those that share a node there too are
/// one. Between neighbours in the row passes what all terminals on one side take together, so that the charge–voltage
/// product and the highest step follow in one pass. Paths straight from givers to takers have the same product and
/// pass half of all magnitudes (docs/theory/atlas.md); only their longest step must be looked for.
/// </remarks>
internal struct SwitchSums
{
    /// <summary>Σ |charge · blocked voltage|.</summary>
    public long ChargeVoltage;

    /// <summary>The number of switches.</summary>
    public int Count;

    /// <summary>Σ |charge| of switches in a row.</summary>
    public long RowCharge;

    /// <summary>The highest voltage blocked by switches in a row.</summary>
    public int RowVoltage;

    /// <summary>Σ |charge| of straight paths.</summary>
    public long StraightCharge;

    /// <summary>The highest voltage blocked by straight paths and what joins the rest.</summary>
    public int StraightVoltage;

    /// <summary>Adds the switches of a phase.</summary>
    /// <param name="nodes">The node of each terminal in it.</param>
    /// <param name="otherNodes">The node of each terminal in the other phase.</param>
    /// <param name="otherPotentials">The potential of each terminal in the other phase.</param>
    /// <param name="charges">The charge that each terminal's branch takes in the phase.</param>
    public void Add(ReadOnlySpan<byte> nodes, ReadOnlySpan<byte> otherNodes, ReadOnlySpan<int> otherPotentials, ReadOnlySpan<int> charges)
    {
        Span<long> order = stackalloc long[nodes.Length];
        for (int t = 0; t < nodes.Length; t++)
        {
            // node, potential, other node, terminal: sorted at once
            order[t] = ((long)nodes[t] << 40) | ((long)(otherPotentials[t] + (1 << 20)) << 16) | ((long)otherNodes[t] << 8) | (uint)t;
        }

        Sort(order);
        Span<int> potentials = stackalloc int[nodes.Length], amounts = stackalloc int[nodes.Length];
        int members = 0;
        for (int t = 0; t < order.Length; t++)
        {
            int terminal = (int)(order[t] & 0xFF);
            if (t > 0 && order[t] >> 8 == order[t - 1] >> 8)
            {
                amounts[members - 1] += charges[terminal];
                continue;
            }

            if (t > 0 && order[t] >> 40 != order[t - 1] >> 40)
            {
                AddNode(potentials[..members], amounts[..members]);
                members = 0;
            }

            potentials[members] = otherPotentials[terminal];
            amounts[members++] = charges[terminal];
        }

        AddNode(potentials[..members], amounts[..members]);
    }

    private void AddNode(ReadOnlySpan<int> potentials, ReadOnlySpan<int> amounts)
    {
        int passed = 0, straight = 0, row = 0;
        for (int m = 0; m + 1 < potentials.Length; m++)
        {
            int step = potentials[m + 1] - potentials[m];
            passed += amounts[m];
            int magnitude = Math.Abs(passed);
            ChargeVoltage += (long)magnitude * step;
            row += magnitude;
            RowVoltage = Math.Max(RowVoltage, step);
            straight += Math.Max(0, amounts[m]);
        }

        if (potentials.Length < 2)
        {
            return;
        }

        straight += Math.Max(0, amounts[^1]);
        Count += potentials.Length - 1;
        RowCharge += row;
        StraightCharge += straight;
        StraightVoltage = Math.Max(StraightVoltage, row == straight
            ? LongestStep(potentials)
            : LongestPath(potentials, amounts));
    }

    private static int LongestStep(ReadOnlySpan<int> potentials)
    {
        int longest = 0;
        for (int m = 0; m + 1 < potentials.Length; m++)
        {
            longest = Math.Max(longest, potentials[m + 1] - potentials[m]);
        }

        return longest;
    }

    // givers and takers paired in their order, then the pieces joined by the shortest steps that do it
    private static int LongestPath(ReadOnlySpan<int> potentials, ReadOnlySpan<int> amounts)
    {
        Span<int> piece = stackalloc int[potentials.Length];
        for (int m = 0; m < piece.Length; m++)
        {
            piece[m] = m;
        }

        int longest = 0, giver = -1, taker = -1, toGive = 0, toTake = 0;
        while (true)
        {
            for (; toGive == 0 && ++giver < amounts.Length; toGive = Math.Max(0, -amounts[giver]))
            {
            }

            for (; toTake == 0 && ++taker < amounts.Length; toTake = Math.Max(0, amounts[taker]))
            {
            }

            if (giver >= amounts.Length || taker >= amounts.Length)
            {
                break;
            }

            int passed = Math.Min(toGive, toTake);
            toGive -= passed;
            toTake -= passed;
            longest = Math.Max(longest, Math.Abs(potentials[giver] - potentials[taker]));
            Unite(piece, giver, taker);
        }

        while (NextJoin(potentials, piece, out int first))
        {
            longest = Math.Max(longest, potentials[first + 1] - potentials[first]);
            Unite(piece, first, first + 1);
        }

        return longest;
    }

    private static bool NextJoin(ReadOnlySpan<int> potentials, ReadOnlySpan<int> piece, out int first)
    {
        first = -1;
        for (int m = 0; m + 1 < piece.Length; m++)
        {
            if (piece[m] != piece[m + 1] && (first < 0 || potentials[m + 1] - potentials[m] < potentials[first + 1] - potentials[first]))
            {
                first = m;
            }
        }

        return first >= 0;
    }

    private static void Unite(Span<int> piece, int first, int second)
    {
        int kept = piece[first], joined = piece[second];
        for (int m = 0; m < piece.Length; m++)
        {
            piece[m] = piece[m] == joined ? kept : piece[m];
        }
    }

    private static void Sort(Span<long> order)
    {
        for (int end = 1; end < order.Length; end++)
        {
            long moved = order[end];
            int place = end;
            for (; place > 0 && order[place - 1] > moved; place--)
            {
                order[place] = order[place - 1];
            }

            order[place] = moved;
        }
    }
}
