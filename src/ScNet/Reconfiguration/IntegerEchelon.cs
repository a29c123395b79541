using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>The reduced echelon form of a small dense integer matrix, the same for every matrix with the same row space.</summary>
internal static class IntegerEchelon
{
    /// <summary>Reduces in place: leading entries positive, rows primitive, zeros above and below each leading entry. Returns the rank.</summary>
    /// <exception cref="OverflowException">An entry does not fit.</exception>
    public static int Reduce(Span<long> rows, int rowCount, int columnCount)
    {
        int rank = 0;
        for (int column = 0; column < columnCount && rank < rowCount; column++)
        {
            int pivot = rank;
            while (pivot < rowCount && rows[(pivot * columnCount) + column] == 0)
            {
                pivot++;
            }

            if (pivot == rowCount)
            {
                continue;
            }

            Span<long> lead = rows.Slice(rank * columnCount, columnCount);
            if (pivot != rank)
            {
                Span<long> found = rows.Slice(pivot * columnCount, columnCount);
                for (int c = 0; c < columnCount; c++)
                {
                    (lead[c], found[c]) = (found[c], lead[c]);
                }
            }

            MakePrimitive(lead, column);
            for (int row = 0; row < rowCount; row++)
            {
                if (row != rank)
                {
                    Clear(rows.Slice(row * columnCount, columnCount), lead, column);
                }
            }

            rank++;
        }

        return rank;
    }

    private static void Clear(Span<long> target, ReadOnlySpan<long> lead, int column)
    {
        long entry = target[column];
        if (entry == 0)
        {
            return;
        }

        long common = Integers.Gcd(entry, lead[column]);
        long scale = lead[column] / common, factor = entry / common;
        int first = -1;
        for (int c = 0; c < target.Length; c++)
        {
            target[c] = checked((target[c] * scale) - (lead[c] * factor));
            first = first < 0 && target[c] != 0 ? c : first;
        }

        if (first >= 0)
        {
            MakePrimitive(target, first);
        }
    }

    private static void MakePrimitive(Span<long> row, int leading)
    {
        long content = 0;
        foreach (long value in row)
        {
            content = value == 0 ? content : content == 0 ? Math.Abs(value) : Integers.Gcd(content, value);
        }

        long divisor = row[leading] < 0 ? -content : content;
        if (divisor != 1)
        {
            foreach (ref long value in row)
            {
                value /= divisor;
            }
        }
    }
}
