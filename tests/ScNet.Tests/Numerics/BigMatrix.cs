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

    public static BigMatrix Diagonal(BigReal[] entries)
    {
        BigMatrix diagonal = new(entries.Length, entries.Length);
        for (int i = 0; i < entries.Length; i++)
        {
            diagonal[i, i] = entries[i];
        }

        return diagonal;
    }

    public static BigMatrix operator +(BigMatrix a, BigMatrix b) => a.With(b, (x, y) => x + y);

    public static BigMatrix operator *(BigMatrix a, BigMatrix b)
    {
        BigMatrix product = new(a.Rows, b.Columns), across = b.Transposed();
        for (int i = 0; i < a.Rows; i++)
        {
            for (int j = 0; j < b.Columns; j++)
            {
                product[i, j] = BigReal.Dot(a.Row(i), across.Row(j));
            }
        }

        return product;
    }

    public static BigMatrix operator -(BigMatrix a, BigMatrix b) => a.With(b, (x, y) => x - y);

    public static BigMatrix operator -(BigMatrix a) => a.With(a, (x, _) => -x);

    private ReadOnlySpan<BigReal> Row(int row) => _entries.AsSpan(row * Columns, Columns);

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

    /// <summary>The rectangle of so many rows and columns from a corner on.</summary>
    public BigMatrix Part(int row, int column, int rows, int columns)
    {
        BigMatrix part = new(rows, columns);
        for (int i = 0; i < rows; i++)
        {
            for (int j = 0; j < columns; j++)
            {
                part[i, j] = this[row + i, column + j];
            }
        }

        return part;
    }

    /// <summary>The columns of another one after its own.</summary>
    public BigMatrix Beside(BigMatrix other)
    {
        BigMatrix both = new(Rows, Columns + other.Columns);
        for (int i = 0; i < Rows; i++)
        {
            for (int j = 0; j < both.Columns; j++)
            {
                both[i, j] = j < Columns ? this[i, j] : other[i, j - Columns];
            }
        }

        return both;
    }

    /// <summary>The rows of another one below its own.</summary>
    public BigMatrix Above(BigMatrix other) => Transposed().Beside(other.Transposed()).Transposed();

    /// <summary>Every entry times a factor.</summary>
    public BigMatrix Times(BigReal factor) => With(this, (x, _) => x * factor);

    /// <summary>Whether nothing but rounding is left.</summary>
    public bool IsDust => Array.TrueForAll(_entries, x => x.IsDust);

    /// <summary>Whether no entry is larger.</summary>
    public bool IsWithin(BigReal bound) => Array.TrueForAll(_entries, x => !(BigReal.Abs(x) > bound));

    public BigMatrix Inverse() => Solve(Identity(Rows), default);

    /// <summary>A basis of the x with this · x = 0, one per column.</summary>
    /// <param name="zero">Entries no larger than this are zeros.</param>
    public BigMatrix NullSpace(BigReal zero)
    {
        BigMatrix left = With(this, (x, _) => x);
        int[] unknownOf = left.Eliminate(null, zero), free = [.. Enumerable.Range(0, Columns).Except(unknownOf)];
        BigMatrix basis = new(Columns, free.Length);
        for (int f = 0; f < free.Length; f++)
        {
            basis[free[f], f] = BigReal.One;
            for (int row = 0; row < Rows; row++)
            {
                if (unknownOf[row] >= 0)
                {
                    basis[unknownOf[row], f] = -(left[row, free[f]] / left[row, unknownOf[row]]);
                }
            }
        }

        return basis;
    }

    /// <summary>A solution X of this · X = right by elimination with full pivoting; unknowns without a pivot are zero.</summary>
    /// <param name="right">The right sides, consistent with the rows that elimination empties.</param>
    /// <param name="zero">Entries no larger than this are zeros.</param>
    public BigMatrix Solve(BigMatrix right, BigReal zero)
    {
        BigMatrix left = With(this, (x, _) => x), demand = right.With(right, (x, _) => x), solution = new(Columns, right.Columns);
        int[] unknownOf = left.Eliminate(demand, zero);
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
        int squarings = Squarings();
        BigMatrix power = Times(BigReal.Scale(BigReal.One, -squarings)).Series();
        for (int k = 0; k < squarings; k++)
        {
            power *= power;
        }

        return power;
    }

    /// <summary>How often this has to be halved until few terms of the series suffice.</summary>
    public int Squarings()
    {
        int squarings = 0;
        BigReal limit = BigReal.Scale(BigReal.One, -SeriesBits);
        for (BigReal norm = Norm(); norm > limit; norm = BigReal.Scale(norm, -1))
        {
            squarings++;
        }

        return squarings;
    }

    /// <summary>The exponential by its series.</summary>
    public BigMatrix Series()
    {
        BigMatrix term = Identity(Rows), sum = Identity(Rows);
        for (int n = 1; n < LargestTerm && !term.Norm().IsZero; n++)
        {
            term = (term * this).Times(BigReal.One / n);
            sum += term;
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

    // Full pivoting; every pivot stands alone in its column then. The unknown of each row, or -1 for rows without a pivot.
    private int[] Eliminate(BigMatrix? demand, BigReal zero)
    {
        var unknownOf = new int[Rows];
        unknownOf.AsSpan().Fill(-1);
        for (int step = 0; step < Math.Min(Rows, Columns); step++)
        {
            (int row, int column) = Largest(unknownOf);
            if (row < 0 || !(BigReal.Abs(this[row, column]) > zero))
            {
                break;
            }

            unknownOf[row] = column;
            for (int i = 0; i < Rows; i++)
            {
                if (i != row && !this[i, column].IsZero)
                {
                    BigReal factor = this[i, column] / this[row, column];
                    Subtract(i, row, factor);
                    demand?.Subtract(i, row, factor);
                    this[i, column] = default;
                }
            }
        }

        return unknownOf;
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
