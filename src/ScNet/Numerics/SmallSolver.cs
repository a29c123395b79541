namespace ScNet.Numerics;

/// <summary>Gaussian elimination with partial pivoting for the few unknowns of one frequency, without allocation.</summary>
internal static class SmallSolver
{
    private const int LargestOnStack = 64;

    // what is left of a diagonal of ones; less is rounding of a matrix that is singular as far as numbers tell
    private const double LeastPivot = 1e-15;

    /// <summary>
    /// Solves in place: <paramref name="matrix"/> (by rows) is destroyed, <paramref name="right"/> becomes the
    /// solution. The symmetric part must be positive definite; unknowns are scaled by the diagonal beforehand, so
    /// that they may differ by many orders.
    /// </summary>
    public static void SolveScaled(Span<double> matrix, Span<double> right) => SolveScaled(matrix, right, []);

    /// <summary>The same for two right-hand sides.</summary>
    public static void SolveScaled(Span<double> matrix, Span<double> right, Span<double> other)
    {
        int n = right.Length;
        Span<double> scale = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        for (int r = 0; r < n; r++)
        {
            scale[r] = 1 / Math.Sqrt(matrix[(r * n) + r]);
        }

        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c < n; c++)
            {
                matrix[(r * n) + c] = matrix[(r * n) + c] * scale[r] * scale[c];
            }
        }

        Scale(right, scale);
        Scale(other, scale);
        Solve(matrix, right, other);
        Scale(right, scale);
        Scale(other, scale);
    }

    /// <summary>
    /// The same for a symmetric matrix, of which only the lower half is read: by Cholesky's triangle (from memory). The
    /// second right-hand side may be empty.
    /// </summary>
    public static void SolvePositive(Span<double> matrix, Span<double> right, Span<double> other)
    {
        int n = matrix.Length == 0 ? 0 : right.IsEmpty ? other.Length : right.Length;
        Span<double> scale = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        FactorPositive(matrix, scale);
        SolveTriangle(matrix, right, scale);
        SolveTriangle(matrix, other, scale);
    }

    /// <summary>Makes Cholesky's triangle of a symmetric matrix in its lower half, for any number of right-hand sides.</summary>
    /// <param name="matrix">The matrix by rows, of which only the lower half is read.</param>
    /// <param name="scale">Receives what the unknowns were scaled by.</param>
    public static void FactorPositive(Span<double> matrix, Span<double> scale)
    {
        int n = scale.Length;
        for (int r = 0; r < n; r++)
        {
            scale[r] = 1 / Math.Sqrt(matrix[(r * n) + r]);
        }

        for (int r = 0; r < n; r++)
        {
            Span<double> row = matrix.Slice(r * n, r + 1);
            for (int c = 0; c < r; c++)
            {
                row[c] *= scale[r] * scale[c];
            }

            row[r] = 1;
            for (int c = 0; c <= r; c++)
            {
                double rest = row[c] - DenseRows.Dot(row[..c], matrix.Slice(c * n, c));
                row[c] = c < r ? rest / matrix[(c * n) + c] : Math.Sqrt(Math.Max(rest, LeastPivot));
            }
        }
    }

    /// <summary>Solves in place with what <see cref="FactorPositive"/> made: down with the triangle and up with its transpose.</summary>
    public static void SolveTriangle(ReadOnlySpan<double> triangle, Span<double> right, ReadOnlySpan<double> scale)
    {
        int n = right.Length;
        for (int r = 0; r < n; r++)
        {
            right[r] = ((right[r] * scale[r]) - DenseRows.Dot(triangle.Slice(r * n, r), right[..r])) / triangle[(r * n) + r];
        }

        for (int r = n - 1; r >= 0; r--)
        {
            right[r] /= triangle[(r * n) + r];
            DenseRows.AddMultiple(triangle.Slice(r * n, r), -right[r], right);
            right[r] *= scale[r];
        }
    }

    /// <summary>Solves in place: <paramref name="matrix"/> (by rows) is destroyed, <paramref name="right"/> becomes the solution.</summary>
    public static void Solve(Span<double> matrix, Span<double> right) => Solve(matrix, right, []);

    private static void Scale(Span<double> values, ReadOnlySpan<double> scale)
    {
        for (int r = 0; r < values.Length; r++)
        {
            values[r] *= scale[r];
        }
    }

    // the second right-hand side may be empty
    private static void Solve(Span<double> matrix, Span<double> right, Span<double> other)
    {
        int n = right.Length;
        for (int k = 0; k < n; k++)
        {
            int pivot = k;
            for (int r = k + 1; r < n; r++)
            {
                if (Math.Abs(matrix[(r * n) + k]) > Math.Abs(matrix[(pivot * n) + k]))
                {
                    pivot = r;
                }
            }

            for (int c = 0; pivot != k && c < n; c++)
            {
                (matrix[(k * n) + c], matrix[(pivot * n) + c]) = (matrix[(pivot * n) + c], matrix[(k * n) + c]);
            }

            Swap(right, k, pivot);
            Swap(other, k, pivot);
            ReadOnlySpan<double> own = matrix[((k * n) + k + 1)..((k + 1) * n)];
            for (int r = k + 1; r < n; r++)
            {
                double factor = matrix[(r * n) + k] / matrix[(k * n) + k];
                if (factor != 0)
                {
                    DenseRows.AddMultiple(own, -factor, matrix[((r * n) + k + 1)..((r + 1) * n)]);
                    right[r] -= factor * right[k];
                    if (!other.IsEmpty)
                    {
                        other[r] -= factor * other[k];
                    }
                }
            }
        }

        SubstituteBack(matrix, right);
        SubstituteBack(matrix, other);
    }

    private static void Swap(Span<double> values, int a, int b)
    {
        if (!values.IsEmpty)
        {
            (values[a], values[b]) = (values[b], values[a]);
        }
    }

    private static void SubstituteBack(ReadOnlySpan<double> matrix, Span<double> right)
    {
        int n = right.Length;
        for (int k = n - 1; k >= 0; k--)
        {
            for (int c = k + 1; c < n; c++)
            {
                right[k] -= matrix[(k * n) + c] * right[c];
            }

            right[k] /= matrix[(k * n) + k];
        }
    }
}
