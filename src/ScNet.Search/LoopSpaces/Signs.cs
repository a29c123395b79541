namespace ScNet.Search.LoopSpaces;

/// <summary>Turns capacitors so that a reduced basis has as many positive entries in front as it can.</summary>
internal static class Signs
{
    /// <summary>Settles the signs of a reduced basis in place.</summary>
    /// <param name="rows">A reduced basis; its pivots stay 1.</param>
    /// <param name="width">The number of branches.</param>
    /// <returns>A bit per capacitor that was turned.</returns>
    /// <remarks>
    /// Turning the capacitor of a pivot changes the signs of the rest of its row, turning another those of its column;
    /// input and output are never turned. Each entry ties the turn of its row's pivot to that of its column; where no
    /// earlier entry tied them, they are tied so that the entry becomes positive.
    /// </remarks>
    public static int Settle(Span<sbyte> rows, int width)
    {
        Span<int> piece = stackalloc int[width], turn = stackalloc int[width];
        for (int c = 0; c < width; c++)
        {
            piece[c] = c < LoopSpace.FirstCapacitorColumn ? 0 : c;
        }

        for (int row = 0; row < rows.Length; row += width)
        {
            Span<sbyte> entries = rows.Slice(row, width);
            int pivot = entries.IndexOfAnyExcept((sbyte)0);
            for (int c = pivot + 1; c < width; c++)
            {
                if (entries[c] == 0)
                {
                    continue;
                }

                int wanted = entries[c] < 0 ? 1 : 0;
                if (piece[c] != piece[pivot])
                {
                    Tie(piece, turn, c, pivot, wanted);
                }

                entries[c] = (wanted ^ turn[c] ^ turn[pivot]) == 0 ? (sbyte)1 : (sbyte)-1;
            }
        }

        int turned = 0;
        for (int c = LoopSpace.FirstCapacitorColumn; c < width; c++)
        {
            turned |= turn[c] << (c - LoopSpace.FirstCapacitorColumn);
        }

        return turned;
    }

    // joins two pieces so that the two ends' turns differ as wanted; the piece of input and output keeps its turns
    private static void Tie(Span<int> piece, Span<int> turn, int first, int second, int wanted)
    {
        (int kept, int joined) = piece[first] == 0 ? (piece[first], piece[second]) : (piece[second], piece[first]);
        int change = turn[first] ^ turn[second] ^ wanted;
        for (int c = 0; c < piece.Length; c++)
        {
            if (piece[c] == joined)
            {
                piece[c] = kept;
                turn[c] ^= change;
            }
        }
    }
}
