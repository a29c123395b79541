using System.Numerics;

namespace ScNet.Numerics;

/// <summary>Rotations of pairs of rows until all are orthogonal in a range of columns.</summary>
/// <remarks>
/// One-sided Jacobi (J. Demmel and K. Veselić, SIAM J. Matrix Anal. Appl. 13, 1992; from memory) works on
/// the rows as they are, so small singular values keep their relative accuracy. Rows that no chain of
/// common columns joins are orthogonal already and are never compared. Cost: some ten times rows² · columns
/// for each set of rows that hang together.
/// </remarks>
internal static class RowRotations
{
    private const int LargestSweepCount = 60;
    private const int FewRows = 16;
    private const double RotationTolerance = 1e-16;

    // Rows shorter than this fraction of the longest are the rounding of a zero row.
    private const double ZeroRow = 1e-15;

    /// <summary>
    /// Rotates the rows from <paramref name="firstRow"/> on until they are orthogonal in the given columns:
    /// their lengths there are the singular values.
    /// </summary>
    public static void Orthogonalise(this DenseRows rows, int firstRow, int firstColumn, int columnCount)
    {
        double[] squares = new double[rows.RowCount];
        double longest = 0;
        for (int r = firstRow; r < squares.Length; r++)
        {
            longest = Math.Max(longest, Square(rows, r, firstColumn, columnCount));
        }

        foreach (int[] set in Sets(rows, firstRow, firstColumn, columnCount))
        {
            for (int sweep = 0; sweep < LargestSweepCount; sweep++)
            {
                foreach (int row in set)
                {
                    squares[row] = Square(rows, row, firstColumn, columnCount);
                    if (squares[row] <= ZeroRow * ZeroRow * longest)
                    {
                        squares[row] = 0;
                        rows.Row(row).Slice(firstColumn, columnCount).Clear();
                    }
                }

                if (!SweepOnce(rows, set, squares, firstColumn, columnCount))
                {
                    break;
                }
            }
        }
    }

    private static double Square(DenseRows rows, int row, int firstColumn, int columnCount)
    {
        ReadOnlySpan<double> part = rows.Row(row).Slice(firstColumn, columnCount);
        return DenseRows.Dot(part, part);
    }

    // The rows that a chain of common columns joins, in ascending order; a few rows are not worth the search.
    private static List<int[]> Sets(DenseRows rows, int firstRow, int firstColumn, int columnCount)
    {
        int count = rows.RowCount - firstRow;
        if (count <= FewRows)
        {
            return [[.. Enumerable.Range(firstRow, count)]];
        }

        int[] parent = [.. Enumerable.Range(0, count)], owner = new int[columnCount];
        owner.AsSpan().Fill(-1);
        for (int r = 0; r < count; r++)
        {
            ReadOnlySpan<double> part = rows.Row(firstRow + r).Slice(firstColumn, columnCount);
            for (int c = 0; c < part.Length; c++)
            {
                if (part[c] != 0)
                {
                    if (owner[c] >= 0)
                    {
                        int a = Find(owner[c]), b = Find(r);
                        parent[Math.Max(a, b)] = Math.Min(a, b);
                    }

                    owner[c] = r;
                }
            }
        }

        return [.. Enumerable.Range(0, count).GroupBy(Find, r => firstRow + r, (_, set) => set.ToArray())];

        int Find(int r)
        {
            while (parent[r] != r)
            {
                r = parent[r] = parent[parent[r]];
            }

            return r;
        }
    }

    private static bool SweepOnce(DenseRows rows, int[] set, double[] squares, int firstColumn, int columnCount)
    {
        bool hasRotated = false;
        for (int i = 0; i < set.Length - 1; i++)
        {
            int p = set[i];
            for (int k = i + 1; k < set.Length; k++)
            {
                int q = set[k];
                if (squares[p] == 0 || squares[q] == 0)
                {
                    continue;
                }

                Span<double> first = rows.Row(p), second = rows.Row(q);
                double product = DenseRows.Dot(first.Slice(firstColumn, columnCount), second.Slice(firstColumn, columnCount));
                if (Math.Abs(product) <= RotationTolerance * columnCount * Math.Sqrt(squares[p] * squares[q]))
                {
                    continue;
                }

                hasRotated = true;
                double zeta = (squares[q] - squares[p]) / (2 * product);
                double tangent = (zeta < 0 ? -1 : 1) / (Math.Abs(zeta) + Math.Sqrt(1 + (zeta * zeta)));
                double cosine = 1 / Math.Sqrt(1 + (tangent * tangent));
                Rotate(first, second, cosine, cosine * tangent);
                squares[p] = Math.Max(0, squares[p] - (tangent * product));
                squares[q] += tangent * product;
            }
        }

        return hasRotated;
    }

    /// <summary>Rotates two rows: the first becomes c · first - s · second, the second s · first + c · second.</summary>
    public static void Rotate(Span<double> first, Span<double> second, double cosine, double sine)
    {
        int width = Vector<double>.Count, k = 0;
        Vector<double> c = new(cosine), s = new(sine);
        for (; k <= first.Length - width; k += width)
        {
            Vector<double> a = new(first[k..]), b = new(second[k..]);
            ((c * a) - (s * b)).CopyTo(first[k..]);
            ((s * a) + (c * b)).CopyTo(second[k..]);
        }

        for (; k < first.Length; k++)
        {
            double a = first[k], b = second[k];
            first[k] = (cosine * a) - (sine * b);
            second[k] = (sine * a) + (cosine * b);
        }
    }
}
