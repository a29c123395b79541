namespace ScNet.Numerics;

/// <summary>Gaussian elimination with partial pivoting for the few unknowns of one frequency, without allocation.</summary>
internal static class SmallSolver
{
    private const int LargestOnStack = 64;

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
