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
    public static void SolveScaled(Span<double> matrix, Span<double> right)
    {
        int n = right.Length;
        Span<double> scale = n <= LargestOnStack ? stackalloc double[n] : new double[n];
        for (int r = 0; r < n; r++)
        {
            scale[r] = 1 / Math.Sqrt(matrix[(r * n) + r]);
        }

        for (int r = 0; r < n; r++)
        {
            right[r] *= scale[r];
            for (int c = 0; c < n; c++)
            {
                matrix[(r * n) + c] = matrix[(r * n) + c] * scale[r] * scale[c];
            }
        }

        Solve(matrix, right);
        for (int r = 0; r < n; r++)
        {
            right[r] *= scale[r];
        }
    }

    /// <summary>Solves in place: <paramref name="matrix"/> (by rows) is destroyed, <paramref name="right"/> becomes the solution.</summary>
    public static void Solve(Span<double> matrix, Span<double> right)
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

            (right[k], right[pivot]) = (right[pivot], right[k]);
            ReadOnlySpan<double> own = matrix[((k * n) + k + 1)..((k + 1) * n)];
            for (int r = k + 1; r < n; r++)
            {
                double factor = matrix[(r * n) + k] / matrix[(k * n) + k];
                if (factor != 0)
                {
                    DenseRows.AddMultiple(own, -factor, matrix[((r * n) + k + 1)..((r + 1) * n)]);
                    right[r] -= factor * right[k];
                }
            }
        }

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
