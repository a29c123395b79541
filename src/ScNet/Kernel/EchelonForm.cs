namespace ScNet.Kernel;

/// <summary>
/// The reduced echelon form of a small dense integer matrix, the same for every matrix with the same row space:
/// leading entries positive, rows primitive, zeros above and below each leading entry.
/// </summary>
/// <remarks>
/// For the few branches of a search's candidate, where the lists of <see cref="Elimination{T}"/> cost four times
/// as much as the arithmetic. Cost: rank · rows · columns, without allocation.
/// </remarks>
internal static class EchelonForm
{
    /// <summary>Reduces in place.</summary>
    /// <param name="rows">The matrix by rows.</param>
    /// <param name="columnCount">The number of columns.</param>
    /// <param name="pivotColumns">How many columns, from 0, may hold leading entries; the others are carried along.</param>
    /// <param name="rank">The number of rows with a leading entry; they come first.</param>
    /// <returns>False where an entry does not fit; the matrix means nothing then.</returns>
    public static bool TryReduce(Span<int> rows, int columnCount, int pivotColumns, out int rank)
    {
        rank = 0;
        int rowCount = columnCount == 0 ? 0 : rows.Length / columnCount;
        for (int column = 0; column < pivotColumns && rank < rowCount; column++)
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

            Span<int> lead = rows.Slice(rank * columnCount, columnCount);
            if (pivot != rank)
            {
                Swap(lead, rows.Slice(pivot * columnCount, columnCount));
            }

            MakePrimitive(lead, lead[column] < 0);
            for (int row = 0; row < rowCount; row++)
            {
                Span<int> target = rows.Slice(row * columnCount, columnCount);
                if (row != rank && target[column] != 0 && !TryClear(target, lead, column))
                {
                    return false;
                }
            }

            rank++;
        }

        for (int row = 0; row < rowCount; row++)
        {
            MakePrimitive(rows.Slice(row * columnCount, columnCount), isNegated: false);
        }

        return true;
    }

    /// <summary>The column of the first entry of a row that is not zero, or -1.</summary>
    public static int Leading(ReadOnlySpan<int> row) => row.IndexOfAnyExcept(0);

    private static void Swap(Span<int> a, Span<int> b)
    {
        for (int c = 0; c < a.Length; c++)
        {
            (a[c], b[c]) = (b[c], a[c]);
        }
    }

    // 32-bit entries make products that 64 bits hold with their difference.
    private static bool TryClear(Span<int> target, ReadOnlySpan<int> lead, int column)
    {
        long entry = target[column], pivot = lead[column];
        if (pivot != 1)
        {
            long common = Integers.Gcd(entry, pivot);
            (entry, pivot) = (entry / common, pivot / common);
        }

        bool fits = true;
        for (int c = 0; c < target.Length && c < lead.Length; c++)
        {
            long value = (target[c] * pivot) - (lead[c] * entry);
            target[c] = (int)value;
            fits &= value == (int)value && value != int.MinValue;
        }

        if (fits && pivot != 1)
        {
            MakePrimitive(target, isNegated: false);
        }

        return fits;
    }

    private static void MakePrimitive(Span<int> row, bool isNegated)
    {
        int content = 0;
        foreach (int value in row)
        {
            content = value == 0 ? content : Integers.Gcd(content, value);
            if (content == 1)
            {
                break;
            }
        }

        int divisor = isNegated ? -content : content;
        if (divisor is 0 or 1)
        {
            return;
        }

        foreach (ref int value in row)
        {
            value /= divisor;
        }
    }
}
