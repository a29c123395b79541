namespace ScNet.Numerics;

/// <summary>Elimination of the leading columns of rows by reflections (Householder).</summary>
/// <remarks>
/// Rows may differ in scale by many orders: a reflection takes the largest entry as pivot row and the
/// longest column as pivot column (M. J. D. Powell and J. K. Reid, 1969; A. J. Cox and N. J. Higham,
/// 1998; from memory). Cost: per eliminated column, the rows that have an entry in it times the columns.
/// </remarks>
internal static class RowReflections
{
    // A square that has fallen to this share of what it was when counted is counted again.
    private const double RecountShare = 1e-8;

    /// <summary>
    /// Eliminates the first <paramref name="count"/> columns by reflections: afterwards the first rows hold
    /// a triangle in the order of columns returned, the others zeros there. Columns that depend on
    /// earlier ones (below the tolerance, relative to the longest) are left out of the order.
    /// </summary>
    public static int[] Triangularise(this DenseRows rows, int count, double tolerance)
    {
        if (count == 0)
        {
            return [];
        }

        int[] order = [.. Enumerable.Range(0, count)];
        double[] square = new double[count], counted = new double[count];
        for (int c = 0; c < count; c++)
        {
            Count(rows, c, 0, square, counted);
        }

        double first = 0;
        int rank = 0;
        for (; rank < Math.Min(count, rows.RowCount); rank++)
        {
            int best = rank;
            for (int c = rank + 1; c < count; c++)
            {
                if (square[order[c]] > square[order[best]])
                {
                    best = c;
                }
            }

            int column = order[best];
            double longest = Length(rows, column, rank);
            first = Math.Max(first, longest);
            if (longest <= tolerance * first || longest == 0)
            {
                break;
            }

            (order[rank], order[best]) = (order[best], order[rank]);
            Reflect(rows, column, rank, longest);
            for (int c = rank + 1; c < count; c++)
            {
                double gone = rows[rank, order[c]];
                square[order[c]] -= gone * gone;
                if (square[order[c]] <= RecountShare * counted[order[c]] && counted[order[c]] > 0)
                {
                    Count(rows, order[c], rank + 1, square, counted);
                }
            }
        }

        return order[..rank];
    }

    private static void Count(DenseRows rows, int column, int firstRow, double[] square, double[] counted)
    {
        double length = Length(rows, column, firstRow);
        square[column] = counted[column] = length * length;
    }

    private static double Length(DenseRows rows, int column, int firstRow)
    {
        double scale = 0;
        for (int r = firstRow; r < rows.RowCount; r++)
        {
            scale = Math.Max(scale, Math.Abs(rows[r, column]));
        }

        if (scale == 0)
        {
            return 0;
        }

        double sum = 0;
        for (int r = firstRow; r < rows.RowCount; r++)
        {
            double part = rows[r, column] / scale;
            sum += part * part;
        }

        return scale * Math.Sqrt(sum);
    }

    private static void Reflect(DenseRows rows, int column, int pivotRow, double length)
    {
        int largest = pivotRow;
        for (int r = pivotRow + 1; r < rows.RowCount; r++)
        {
            if (Math.Abs(rows[r, column]) > Math.Abs(rows[largest, column]))
            {
                largest = r;
            }
        }

        rows.SwapRows(pivotRow, largest);
        double head = rows[pivotRow, column];
        double signed = head < 0 ? -length : length;
        double beta = 1 / (signed * (signed + head));
        int tail = rows.RowCount - pivotRow;
        Span<double> direction = tail <= 256 ? stackalloc double[tail] : new double[tail];
        direction[0] = head + signed;
        for (int r = 1; r < tail; r++)
        {
            direction[r] = rows[pivotRow + r, column];
        }

        Span<double> combination = rows.ColumnCount <= 512 ? stackalloc double[rows.ColumnCount] : new double[rows.ColumnCount];
        combination.Clear();
        for (int r = 0; r < tail; r++)
        {
            DenseRows.AddMultiple(rows.Row(pivotRow + r), beta * direction[r], combination);
        }

        for (int r = 0; r < tail; r++)
        {
            DenseRows.AddMultiple(combination, -direction[r], rows.Row(pivotRow + r));
            rows[pivotRow + r, column] = 0;
        }

        rows[pivotRow, column] = -signed;
    }
}
