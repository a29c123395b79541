namespace ScNet.Numerics;

/// <summary>Gaussian elimination with partial pivoting for the few unknowns of one frequency, without allocation.</summary>
internal static class SmallSolver
{
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
            for (int r = k + 1; r < n; r++)
            {
                double factor = matrix[(r * n) + k] / matrix[(k * n) + k];
                for (int c = k + 1; c < n; c++)
                {
                    matrix[(r * n) + c] -= factor * matrix[(k * n) + c];
                }

                right[r] -= factor * right[k];
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
