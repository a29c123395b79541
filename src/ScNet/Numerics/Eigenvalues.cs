using System.Numerics;

namespace ScNet.Numerics;

/// <summary>The eigenvalues of a small real matrix without symmetry.</summary>
/// <remarks>
/// Reduced to Hessenberg form by elimination with pivoting, then the double-shift iteration of J. G. F. Francis (The
/// Computer Journal 4, 1961 and 1962), with the exceptional shifts and deflation tests of J. H. Wilkinson and C. Reinsch,
/// Linear Algebra, 1971 (all from memory). Cost: some ten times the cube of the size.
/// </remarks>
internal static class Eigenvalues
{
    private const int MostIterations = 60;
    private const int ExceptionalShift = 10;

    /// <summary>Finds all eigenvalues; the matrix is destroyed.</summary>
    /// <param name="matrix">n² numbers by rows.</param>
    /// <param name="n">The size.</param>
    /// <param name="values">Receives n eigenvalues.</param>
    /// <returns>False where the iteration does not converge.</returns>
    public static bool TryFind(Span<double> matrix, int n, Span<Complex> values)
    {
        Reduce(matrix, n);
        double norm = 0;
        for (int r = 0; r < n; r++)
        {
            for (int c = Math.Max(0, r - 1); c < n; c++)
            {
                norm += Math.Abs(matrix[(r * n) + c]);
            }
        }

        double shifted = 0;
        for (int last = n - 1, iterations = 0; last >= 0;)
        {
            int low = SmallSubdiagonal(matrix, n, last, norm);
            double x = matrix[(last * n) + last];
            if (low == last)
            {
                values[last--] = x + shifted;
                iterations = 0;
                continue;
            }

            double y = matrix[((last - 1) * n) + last - 1], w = matrix[(last * n) + last - 1] * matrix[((last - 1) * n) + last];
            if (low == last - 1)
            {
                (values[last - 1], values[last]) = Pair(x, y, w, shifted);
                last -= 2;
                iterations = 0;
                continue;
            }

            if (++iterations > MostIterations)
            {
                return false;
            }

            if (iterations % ExceptionalShift == 0)
            {
                shifted += x;
                for (int k = 0; k <= last; k++)
                {
                    matrix[(k * n) + k] -= x;
                }

                double s = Math.Abs(matrix[(last * n) + last - 1]) + Math.Abs(matrix[((last - 1) * n) + last - 2]);
                (x, y, w) = (0.75 * s, 0.75 * s, -0.4375 * s * s);
            }

            Sweep(matrix, n, low, last, x, y, w);
        }

        return true;
    }

    private static int SmallSubdiagonal(ReadOnlySpan<double> matrix, int n, int last, double norm)
    {
        int low = last;
        for (; low > 0; low--)
        {
            double scale = Math.Abs(matrix[((low - 1) * n) + low - 1]) + Math.Abs(matrix[(low * n) + low]);
            scale = scale == 0 ? norm : scale;
            if (Math.Abs(matrix[(low * n) + low - 1]) + scale == scale)
            {
                break;
            }
        }

        return low;
    }

    // of the last two rows: x and y on the diagonal, w the product beside it
    private static (Complex First, Complex Second) Pair(double x, double y, double w, double shifted)
    {
        double p = 0.5 * (y - x), q = (p * p) + w, root = Math.Sqrt(Math.Abs(q));
        if (q < 0)
        {
            return (new Complex(x + p + shifted, root), new Complex(x + p + shifted, -root));
        }

        double z = p + (p < 0 ? -root : root);
        return (x + z + shifted, (z == 0 ? x : x - (w / z)) + shifted);
    }

    private static void Reduce(Span<double> a, int n)
    {
        for (int m = 1; m < n - 1; m++)
        {
            int pivot = m;
            for (int r = m + 1; r < n; r++)
            {
                pivot = Math.Abs(a[(r * n) + m - 1]) > Math.Abs(a[(pivot * n) + m - 1]) ? r : pivot;
            }

            for (int c = m - 1; pivot != m && c < n; c++)
            {
                (a[(pivot * n) + c], a[(m * n) + c]) = (a[(m * n) + c], a[(pivot * n) + c]);
            }

            for (int r = 0; pivot != m && r < n; r++)
            {
                (a[(r * n) + pivot], a[(r * n) + m]) = (a[(r * n) + m], a[(r * n) + pivot]);
            }

            for (int r = m + 1; r < n; r++)
            {
                if (a[(r * n) + m - 1] == 0)
                {
                    continue;
                }

                double factor = a[(r * n) + m - 1] / a[(m * n) + m - 1];
                a[(r * n) + m - 1] = 0;
                for (int c = m; c < n; c++)
                {
                    a[(r * n) + c] -= factor * a[(m * n) + c];
                }

                for (int k = 0; k < n; k++)
                {
                    a[(k * n) + m] += factor * a[(k * n) + r];
                }
            }
        }
    }

    // One double step on rows low to last with the shifts whose sum is x + y and whose product is x y - w.
    private static void Sweep(Span<double> a, int n, int low, int last, double x, double y, double w)
    {
        double p = 0, q = 0, r = 0;
        int start = last - 2;
        for (; ; start--)
        {
            double z = a[(start * n) + start], fromX = x - z, fromY = y - z;
            p = (((fromX * fromY) - w) / a[((start + 1) * n) + start]) + a[(start * n) + start + 1];
            q = a[((start + 1) * n) + start + 1] - z - fromX - fromY;
            r = a[((start + 2) * n) + start + 1];
            double size = Math.Abs(p) + Math.Abs(q) + Math.Abs(r);
            (p, q, r) = (p / size, q / size, r / size);
            if (start == low)
            {
                break;
            }

            double u = Math.Abs(a[(start * n) + start - 1]) * (Math.Abs(q) + Math.Abs(r));
            double v = Math.Abs(p) * (Math.Abs(a[((start - 1) * n) + start - 1]) + Math.Abs(z) + Math.Abs(a[((start + 1) * n) + start + 1]));
            if (u + v == v)
            {
                break;
            }
        }

        for (int i = start + 2; i <= last; i++)
        {
            a[(i * n) + i - 2] = 0;
            if (i > start + 2)
            {
                a[(i * n) + i - 3] = 0;
            }
        }

        for (int k = start; k < last; k++)
        {
            bool hasThird = k != last - 1;
            double size = 0;
            if (k != start)
            {
                (p, q, r) = (a[(k * n) + k - 1], a[((k + 1) * n) + k - 1], hasThird ? a[((k + 2) * n) + k - 1] : 0);
                size = Math.Abs(p) + Math.Abs(q) + Math.Abs(r);
                if (size == 0)
                {
                    continue;
                }

                (p, q, r) = (p / size, q / size, r / size);
            }

            double s = Math.Sqrt((p * p) + (q * q) + (r * r));
            s = p < 0 ? -s : s;
            if (k != start)
            {
                a[(k * n) + k - 1] = -s * size;
            }
            else if (low != start)
            {
                a[(k * n) + k - 1] = -a[(k * n) + k - 1];
            }

            p += s;
            (double first, double second, double third) = (p / s, q / s, r / s);
            (q, r) = (q / p, r / p);
            for (int c = k; c <= last; c++)
            {
                double sum = a[(k * n) + c] + (q * a[((k + 1) * n) + c]);
                if (hasThird)
                {
                    sum += r * a[((k + 2) * n) + c];
                    a[((k + 2) * n) + c] -= sum * third;
                }

                a[((k + 1) * n) + c] -= sum * second;
                a[(k * n) + c] -= sum * first;
            }

            for (int i = low; i <= Math.Min(last, k + 3); i++)
            {
                double sum = (first * a[(i * n) + k]) + (second * a[(i * n) + k + 1]);
                if (hasThird)
                {
                    sum += third * a[(i * n) + k + 2];
                    a[(i * n) + k + 2] -= sum * r;
                }

                a[(i * n) + k + 1] -= sum * q;
                a[(i * n) + k] -= sum;
            }
        }
    }
}
