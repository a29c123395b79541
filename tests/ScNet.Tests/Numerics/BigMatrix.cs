namespace ScNet.Tests.Numerics;

/// <summary>A small dense matrix of numbers with hundreds of binary places.</summary>
internal sealed class BigMatrix(int rows, int columns)
{
    private const int SeriesBits = 20;
    private const int LargestTerm = 200;

    private readonly BigReal[] _entries = new BigReal[rows * columns];

    public int Rows { get; } = rows;

    public int Columns { get; } = columns;

    public BigReal this[int row, int column]
    {
        get => _entries[(row * Columns) + column];
        set => _entries[(row * Columns) + column] = value;
    }

    public static BigMatrix Identity(int size)
    {
        BigMatrix one = new(size, size);
        for (int i = 0; i < size; i++)
        {
            one[i, i] = BigReal.One;
        }

        return one;
    }

    public static BigMatrix operator *(BigMatrix a, BigMatrix b)
    {
        BigMatrix product = new(a.Rows, b.Columns);
        for (int i = 0; i < a.Rows; i++)
        {
            for (int k = 0; k < a.Columns; k++)
            {
                BigReal factor = a[i, k];
                for (int j = 0; j < b.Columns && !factor.IsZero; j++)
                {
                    if (!b[k, j].IsZero)
                    {
                        product[i, j] += factor * b[k, j];
                    }
                }
            }
        }

        return product;
    }

    public static BigMatrix operator -(BigMatrix a, BigMatrix b) => a.With(b, (x, y) => x - y);

    public static BigMatrix operator -(BigMatrix a) => a.With(a, (x, _) => -x);

    public BigMatrix Transposed()
    {
        BigMatrix turned = new(Columns, Rows);
        for (int i = 0; i < Rows; i++)
        {
            for (int j = 0; j < Columns; j++)
            {
                turned[j, i] = this[i, j];
            }
        }

        return turned;
    }

    /// <summary>A solution X of this · X = right by elimination with full pivoting; unknowns without a pivot are zero.</summary>
    /// <param name="right">The right sides, consistent with the rows that elimination empties.</param>
    /// <param name="zero">Entries no larger than this are zeros.</param>
    public BigMatrix Solve(BigMatrix right, BigReal zero)
    {
        BigMatrix left = With(this, (x, _) => x), demand = right.With(right, (x, _) => x), solution = new(Columns, right.Columns);
        var unknownOf = new int[Rows];
        unknownOf.AsSpan().Fill(-1);
        for (int step = 0; step < Math.Min(Rows, Columns); step++)
        {
            (int row, int column) = left.Largest(unknownOf);
            if (row < 0 || !(BigReal.Abs(left[row, column]) > zero))
            {
                break;
            }

            unknownOf[row] = column;
            for (int i = 0; i < Rows; i++)
            {
                if (i != row && !left[i, column].IsZero)
                {
                    BigReal factor = left[i, column] / left[row, column];
                    left.Subtract(i, row, factor);
                    demand.Subtract(i, row, factor);
                    left[i, column] = default;
                }
            }
        }

        for (int row = 0; row < Rows; row++)
        {
            for (int j = 0; j < right.Columns && unknownOf[row] >= 0; j++)
            {
                solution[unknownOf[row], j] = demand[row, j] / left[row, unknownOf[row]];
            }
        }

        return solution;
    }

    /// <summary>The exponential: halved until few terms of the series suffice, then squared.</summary>
    public BigMatrix Exponential()
    {
        int squarings = 0;
        BigReal limit = BigReal.Scale(BigReal.One, -SeriesBits);
        for (BigReal norm = Norm(); norm > limit; norm = BigReal.Scale(norm, -1))
        {
            squarings++;
        }

        BigMatrix small = With(this, (x, _) => BigReal.Scale(x, -squarings)), term = Identity(Rows), sum = Identity(Rows);
        for (int n = 1; n < LargestTerm && !term.Norm().IsZero; n++)
        {
            BigReal inverse = BigReal.One / n;
            term = (term * small).With(small, (x, _) => x * inverse);
            sum = sum.With(term, (x, y) => x + y);
        }

        for (int k = 0; k < squarings; k++)
        {
            sum *= sum;
        }

        return sum;
    }

    private BigReal Norm()
    {
        BigReal largest = default;
        for (int i = 0; i < Rows; i++)
        {
            BigReal sum = default;
            for (int j = 0; j < Columns; j++)
            {
                // what rounding down leaves of a negative number is as good as nothing
                sum += this[i, j].IsDust ? default : BigReal.Abs(this[i, j]);
            }

            largest = sum > largest ? sum : largest;
        }

        return largest;
    }

    private (int Row, int Column) Largest(int[] unknownOf)
    {
        (int Row, int Column) found = (-1, -1);
        for (int i = 0; i < Rows; i++)
        {
            for (int j = 0; j < Columns && unknownOf[i] < 0; j++)
            {
                if (Array.IndexOf(unknownOf, j) < 0 && (found.Row < 0 || BigReal.Abs(this[i, j]) > BigReal.Abs(this[found.Row, found.Column])))
                {
                    found = (i, j);
                }
            }
        }

        return found;
    }

    private void Subtract(int row, int other, BigReal factor)
    {
        for (int j = 0; j < Columns; j++)
        {
            this[row, j] -= factor * this[other, j];
        }
    }

    private BigMatrix With(BigMatrix other, Func<BigReal, BigReal, BigReal> entry)
    {
        BigMatrix result = new(Rows, Columns);
        for (int e = 0; e < _entries.Length; e++)
        {
            result._entries[e] = entry(_entries[e], other._entries[e]);
        }

        return result;
    }
}
