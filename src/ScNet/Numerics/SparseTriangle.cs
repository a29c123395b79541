namespace ScNet.Numerics;

/// <summary>
/// The triangle R of the orthogonal decomposition A = QR of a sparse matrix, built row by row with plane
/// rotations; Q is never formed. Columns after the last of the triangle ride along as right-hand sides.
/// </summary>
/// <remarks>
/// Own code: MathNet decomposes dense matrices only, and CSparse.NET does not hand its triangle out. Source:
/// J. A. George and M. T. Heath, "Solution of sparse linear least squares problems using Givens rotations",
/// Linear Algebra and its Applications 34, 1980 (from memory). Cost: by the fill of R, which the order of
/// the columns decides (<see cref="FillOrder"/>); linear for bands and for independent parts.
/// </remarks>
internal sealed class SparseTriangle
{
    private readonly SparseVector[] _rows;
    private readonly bool[] _isDependent;

    private SparseTriangle(int columns)
    {
        _rows = new SparseVector[columns];
        _isDependent = new bool[columns];
    }

    /// <summary>Decomposes rows whose indices are columns.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The number of columns of the triangle.</param>
    /// <param name="tolerance">A column that adds less than this to the ones before it is one that depends on them.</param>
    public static SparseTriangle Of(IEnumerable<SparseVector> rows, int columns, double tolerance)
    {
        SparseTriangle triangle = new(columns);
        foreach (SparseVector row in rows)
        {
            triangle.Add(row);
        }

        triangle.TakeOutDependent(tolerance);
        return triangle;
    }

    /// <summary>Whether a column is a combination of the ones before it.</summary>
    public bool IsDependent(int column) => _isDependent[column];

    /// <summary>Solves Rᵀ g = right in place; zero for dependent columns.</summary>
    public void SolveTransposed(Span<double> right)
    {
        for (int p = 0; p < _rows.Length; p++)
        {
            if (_isDependent[p])
            {
                right[p] = 0;
                continue;
            }

            SparseVector row = _rows[p];
            double value = right[p] / row.Values[0];
            right[p] = value;
            for (int e = 1; e < row.Count && value != 0; e++)
            {
                if (row.Indices[e] < _rows.Length)
                {
                    right[row.Indices[e]] -= value * row.Values[e];
                }
            }
        }
    }

    /// <summary>Solves R x = right in place; zero for dependent columns.</summary>
    public void Solve(Span<double> right)
    {
        for (int p = _rows.Length - 1; p >= 0; p--)
        {
            SparseVector row = _rows[p];
            double value = right[p];
            for (int e = 1; e < row.Count; e++)
            {
                if (row.Indices[e] < _rows.Length)
                {
                    value -= row.Values[e] * right[row.Indices[e]];
                }
            }

            right[p] = _isDependent[p] ? 0 : value / row.Values[0];
        }
    }

    /// <summary>A column that rode along, or one of the triangle.</summary>
    public double[] Column(int column) => Array.ConvertAll(_rows, row => row[column]);

    private void Add(SparseVector row)
    {
        while (!row.IsZero && row.Indices[0] is var pivot && pivot < _rows.Length)
        {
            SparseVector top = _rows[pivot];
            if (top.IsZero)
            {
                _rows[pivot] = row;
                return;
            }

            double length = double.Hypot(top.Values[0], row.Values[0]);
            double cosine = top.Values[0] / length, sine = row.Values[0] / length;
            _rows[pivot] = SparseVector.Combination(cosine, top, sine, row);
            row = SparseVector.Combination(-sine, top, cosine, row, pivot + 1);
        }
    }

    private void TakeOutDependent(double tolerance)
    {
        for (int p = 0; p < _rows.Length; p++)
        {
            SparseVector row = _rows[p];
            if (row.IsZero || Math.Abs(row.Values[0]) <= tolerance)
            {
                _isDependent[p] = true;
                _rows[p] = default;
                Add(SparseVector.Combination(1, row, 0, default, p + 1));
            }
        }
    }
}
