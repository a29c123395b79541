using System.Numerics;

namespace ScNet.Numerics;

/// <summary>
/// A small dense matrix by rows on which rows are combined by orthogonal transformations: reflections
/// that eliminate leading columns, and rotations that make rows orthogonal in a range of columns. All
/// columns take part, so right-hand sides ride along.
/// </summary>
/// <remarks>
/// Rows may differ in scale by many orders: reflections take the largest entry as pivot row and the
/// longest column as pivot column (M. J. D. Powell and J. K. Reid, 1969; A. J. Cox and N. J. Higham,
/// 1998), rotations work on rows as they are (one-sided Jacobi, J. Demmel and K. Veselić, SIAM J.
/// Matrix Anal. Appl. 13, 1992; all from memory), so small singular values keep their relative accuracy.
/// </remarks>
internal sealed class DenseRows
{
    private const int LargestSweepCount = 60;
    private const double RotationTolerance = 1e-16;

    // Rows shorter than this fraction of the longest are the rounding of a zero row.
    private const double ZeroRow = 1e-15;

    private readonly double[] _values;

    public DenseRows(int rows, int columns)
    {
        RowCount = rows;
        ColumnCount = columns;
        _values = new double[rows * columns];
    }

    public int RowCount { get; }

    public int ColumnCount { get; }

    public ref double this[int row, int column] => ref _values[(row * ColumnCount) + column];

    public Span<double> Row(int row) => _values.AsSpan(row * ColumnCount, ColumnCount);

    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        int width = Vector<double>.Count, k = 0;
        Vector<double> sums = Vector<double>.Zero;
        for (; k <= left.Length - width; k += width)
        {
            sums += new Vector<double>(left[k..]) * new Vector<double>(right[k..]);
        }

        double sum = Vector.Sum(sums);
        for (; k < left.Length; k++)
        {
            sum += left[k] * right[k];
        }

        return sum;
    }

    /// <summary>
    /// Eliminates the first <paramref name="count"/> columns by reflections: afterwards the first rows hold
    /// a triangle in the order of columns returned, the others zeros there. Columns that depend on
    /// earlier ones (below the tolerance, relative to the longest) are left out of the order.
    /// </summary>
    public int[] Triangularise(int count, double tolerance)
    {
        Span<int> order = count <= 256 ? stackalloc int[count] : new int[count];
        for (int c = 0; c < count; c++)
        {
            order[c] = c;
        }

        double first = 0;
        int rank = 0;
        for (; rank < Math.Min(count, RowCount); rank++)
        {
            int best = rank;
            double longest = -1;
            for (int c = rank; c < count; c++)
            {
                double length = ColumnLength(order[c], rank);
                if (length > longest)
                {
                    (longest, best) = (length, c);
                }
            }

            first = Math.Max(first, longest);
            if (longest <= tolerance * first || longest == 0)
            {
                break;
            }

            (order[rank], order[best]) = (order[best], order[rank]);
            Reflect(order[rank], rank, longest);
        }

        return order[..rank].ToArray();
    }

    /// <summary>
    /// Rotates the rows from <paramref name="firstRow"/> on until they are orthogonal in the given columns:
    /// their lengths there are the singular values.
    /// </summary>
    public void Orthogonalise(int firstRow, int firstColumn, int columnCount)
    {
        int rows = RowCount - firstRow;
        Span<double> squares = rows <= 256 ? stackalloc double[rows] : new double[rows];
        for (int sweep = 0; sweep < LargestSweepCount; sweep++)
        {
            double longest = 0;
            for (int r = 0; r < rows; r++)
            {
                ReadOnlySpan<double> part = Row(firstRow + r).Slice(firstColumn, columnCount);
                squares[r] = Dot(part, part);
                longest = Math.Max(longest, squares[r]);
            }

            ClearZeroRows(squares, longest, firstRow, firstColumn, columnCount);
            if (!SweepOnce(squares, firstRow, firstColumn, columnCount))
            {
                return;
            }
        }
    }

    private void ClearZeroRows(Span<double> squares, double longest, int firstRow, int firstColumn, int columnCount)
    {
        for (int r = 0; r < squares.Length; r++)
        {
            if (squares[r] <= ZeroRow * ZeroRow * longest)
            {
                squares[r] = 0;
                Row(firstRow + r).Slice(firstColumn, columnCount).Clear();
            }
        }
    }

    private bool SweepOnce(Span<double> squares, int firstRow, int firstColumn, int columnCount)
    {
        bool hasRotated = false;
        for (int p = 0; p < squares.Length - 1; p++)
        {
            for (int q = p + 1; q < squares.Length; q++)
            {
                if (squares[p] == 0 || squares[q] == 0)
                {
                    continue;
                }

                Span<double> first = Row(firstRow + p), second = Row(firstRow + q);
                double product = Dot(first.Slice(firstColumn, columnCount), second.Slice(firstColumn, columnCount));
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

    private static void Rotate(Span<double> first, Span<double> second, double cosine, double sine)
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

    private double ColumnLength(int column, int firstRow)
    {
        double scale = 0;
        for (int r = firstRow; r < RowCount; r++)
        {
            scale = Math.Max(scale, Math.Abs(this[r, column]));
        }

        if (scale == 0)
        {
            return 0;
        }

        double sum = 0;
        for (int r = firstRow; r < RowCount; r++)
        {
            double part = this[r, column] / scale;
            sum += part * part;
        }

        return scale * Math.Sqrt(sum);
    }

    private void Reflect(int column, int pivotRow, double length)
    {
        int largest = pivotRow;
        for (int r = pivotRow + 1; r < RowCount; r++)
        {
            if (Math.Abs(this[r, column]) > Math.Abs(this[largest, column]))
            {
                largest = r;
            }
        }

        SwapRows(pivotRow, largest);
        double head = this[pivotRow, column];
        double signed = head < 0 ? -length : length;
        double beta = 1 / (signed * (signed + head));
        int tail = RowCount - pivotRow;
        Span<double> direction = tail <= 256 ? stackalloc double[tail] : new double[tail];
        direction[0] = head + signed;
        for (int r = 1; r < tail; r++)
        {
            direction[r] = this[pivotRow + r, column];
        }

        Span<double> combination = ColumnCount <= 512 ? stackalloc double[ColumnCount] : new double[ColumnCount];
        combination.Clear();
        for (int r = 0; r < tail; r++)
        {
            AddMultiple(Row(pivotRow + r), beta * direction[r], combination);
        }

        for (int r = 0; r < tail; r++)
        {
            AddMultiple(combination, -direction[r], Row(pivotRow + r));
            this[pivotRow + r, column] = 0;
        }

        this[pivotRow, column] = -signed;
    }

    private static void AddMultiple(ReadOnlySpan<double> source, double factor, Span<double> target)
    {
        if (factor == 0)
        {
            return;
        }

        int width = Vector<double>.Count, k = 0;
        Vector<double> f = new(factor);
        for (; k <= source.Length - width; k += width)
        {
            (new Vector<double>(target[k..]) + (f * new Vector<double>(source[k..]))).CopyTo(target[k..]);
        }

        for (; k < source.Length; k++)
        {
            target[k] += factor * source[k];
        }
    }

    private void SwapRows(int a, int b)
    {
        if (a == b)
        {
            return;
        }

        Span<double> first = Row(a), second = Row(b);
        for (int k = 0; k < first.Length; k++)
        {
            (first[k], second[k]) = (second[k], first[k]);
        }
    }
}
