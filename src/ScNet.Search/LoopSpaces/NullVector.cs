namespace ScNet.Search.LoopSpaces;

/// <summary>The one direction at right angles to all rows of a small matrix of whole numbers.</summary>
internal static class NullVector
{
    /// <summary>Finds it, with entries without a common divisor; the first that is not zero is positive.</summary>
    /// <param name="matrix">The rows one after the other, one fewer than columns; they are reduced in place.</param>
    /// <param name="width">The number of columns.</param>
    /// <param name="vector">Receives an entry per column.</param>
    /// <returns>False where the rows are dependent, which leaves more than one direction.</returns>
    /// <remarks>
    /// Elimination without fractions, each row divided by its common divisor. The minors of a matrix of 0, 1 and −1
    /// with nine rows are at most 9^4.5, so that machine integers never overflow here. Cost: width³/2.
    /// </remarks>
    public static bool TryFind(Span<long> matrix, int width, Span<long> vector)
    {
        int rows = width - 1, free = -1, rank = 0;
        for (int column = 0; column < width && rank < rows; column++)
        {
            int pivot = rank;
            while (pivot < rows && matrix[(pivot * width) + column] == 0)
            {
                pivot++;
            }

            if (pivot == rows)
            {
                if (free >= 0)
                {
                    return false;
                }

                free = column;
                continue;
            }

            Exchange(matrix, width, pivot, rank);
            for (int row = 0; row < rows; row++)
            {
                if (row != rank && matrix[(row * width) + column] != 0)
                {
                    Eliminate(matrix.Slice(row * width, width), matrix.Slice(rank * width, width), column);
                }
            }

            rank++;
        }

        free = free < 0 ? width - 1 : free;
        return rank == rows && Fill(matrix, width, free, vector);
    }

    private static bool Fill(ReadOnlySpan<long> matrix, int width, int free, Span<long> vector)
    {
        long common = 1;
        for (int row = 0; row < width - 1; row++)
        {
            int pivot = row < free ? row : row + 1;
            long divisor = Kernel.Integers.Gcd(matrix[(row * width) + pivot], matrix[(row * width) + free]);
            long needed = Math.Abs(matrix[(row * width) + pivot] / divisor);
            common = common / Kernel.Integers.Gcd(common, needed) * needed;
        }

        for (int row = 0; row < width - 1; row++)
        {
            int pivot = row < free ? row : row + 1;
            vector[pivot] = -matrix[(row * width) + free] * common / matrix[(row * width) + pivot];
        }

        vector[free] = common;
        if (vector[vector[..width].IndexOfAnyExcept(0L)] < 0)
        {
            for (int c = 0; c < width; c++)
            {
                vector[c] = -vector[c];
            }
        }

        return true;
    }

    private static void Exchange(Span<long> matrix, int width, int first, int second)
    {
        for (int c = 0; c < width && first != second; c++)
        {
            (matrix[(first * width) + c], matrix[(second * width) + c]) = (matrix[(second * width) + c], matrix[(first * width) + c]);
        }
    }

    private static void Eliminate(Span<long> row, ReadOnlySpan<long> pivotRow, int column)
    {
        long own = row[column], other = pivotRow[column], divisor = 0;
        for (int c = 0; c < row.Length; c++)
        {
            row[c] = (row[c] * other) - (own * pivotRow[c]);
            divisor = divisor == 1 || row[c] == 0 ? divisor : Kernel.Integers.Gcd(divisor, row[c]);
        }

        for (int c = 0; c < row.Length && divisor > 1; c++)
        {
            row[c] /= divisor;
        }
    }
}
