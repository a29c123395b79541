namespace ScNet.Search.Pairs;

/// <summary>The highest voltage that switches block which lead charge straight from givers to takers.</summary>
internal static class StraightPaths
{
    /// <summary>The highest over all nodes of a phase; a node keeps its row where straight paths pass no less charge.</summary>
    /// <param name="nodes">The node of each terminal in it.</param>
    /// <param name="charges">The charge that each terminal's branch takes in the phase.</param>
    /// <param name="otherRow">The terminals by potential, then by node, in the other phase.</param>
    /// <param name="otherNodes">The node of each terminal in the other phase.</param>
    /// <param name="otherPotentials">The potential of each terminal in the other phase.</param>
    public static int HighestVoltage(
        ReadOnlySpan<byte> nodes, ReadOnlySpan<int> charges, ReadOnlySpan<byte> otherRow, ReadOnlySpan<byte> otherNodes, ReadOnlySpan<int> otherPotentials)
    {
        Span<int> potentials = stackalloc int[nodes.Length], amounts = stackalloc int[nodes.Length];
        int highest = 0;
        for (int node = 0; node < nodes.Length; node++)
        {
            int members = 0, last = -1;
            foreach (byte terminal in otherRow)
            {
                if (nodes[terminal] != node)
                {
                    continue;
                }

                if (last >= 0 && otherNodes[last] == otherNodes[terminal])
                {
                    amounts[members - 1] += charges[terminal];
                }
                else
                {
                    potentials[members] = otherPotentials[terminal];
                    amounts[members++] = charges[terminal];
                }

                last = terminal;
            }

            highest = Math.Max(highest, OfNode(potentials[..members], amounts[..members]));
        }

        return highest;
    }

    private static int OfNode(ReadOnlySpan<int> potentials, ReadOnlySpan<int> amounts)
    {
        int passed = 0, row = 0, straight = 0, longestStep = 0;
        for (int m = 0; m < potentials.Length; m++)
        {
            passed += amounts[m];
            row += Math.Abs(passed);
            straight += Math.Max(0, amounts[m]);
            longestStep = m == 0 ? 0 : Math.Max(longestStep, potentials[m] - potentials[m - 1]);
        }

        return row == straight ? longestStep : LongestPath(potentials, amounts);
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

}
