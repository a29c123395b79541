using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ScNet.Numerics;

/// <summary>Products, triangles and solves of small dense matrices by rows, over any number type, without allocation.</summary>
internal static class SmallMatrices
{
    // below this many columns the loop over scalars is faster
    private const int VectorColumns = 8;

    /// <summary>Adds the product of two matrices to a third.</summary>
    /// <param name="left">The left factor, read to <paramref name="inner"/> columns of <paramref name="leftWidth"/>.</param>
    /// <param name="leftWidth">The length of a row of the left factor.</param>
    /// <param name="inner">The columns of the left factor, rows of the right one.</param>
    /// <param name="right">The right factor.</param>
    /// <param name="columns">The columns of the right factor and of the target.</param>
    /// <param name="target">What is added to.</param>
    public static void AddProduct<T>(ReadOnlySpan<T> left, int leftWidth, int inner, ReadOnlySpan<T> right, int columns, Span<T> target)
        where T : struct, IReal<T>
    {
        int rows = columns == 0 ? 0 : target.Length / columns;
        if (typeof(T) == typeof(PlainReal))
        {
            AddPlainProduct(
                MemoryMarshal.Cast<T, double>(left), leftWidth, inner, MemoryMarshal.Cast<T, double>(right[..(inner * columns)]), columns, MemoryMarshal.Cast<T, double>(target));
            return;
        }

        for (int i = 0; i < rows; i++)
        {
            Span<T> sums = target.Slice(i * columns, columns);
            ReadOnlySpan<T> factors = left.Slice(i * leftWidth, inner);
            for (int k = 0; k < factors.Length; k++)
            {
                T factor = factors[k];
                if (factor.IsZero)
                {
                    continue;
                }

                // both have one length, so that the loop needs no checks
                ReadOnlySpan<T> row = right.Slice(k * columns, columns);
                for (int j = 0; j < row.Length && j < sums.Length; j++)
                {
                    sums[j] += factor * row[j];
                }
            }
        }
    }

    // Four columns at a time, their sums kept in a register; the rest one by one.
    private static void AddPlainProduct(
        ReadOnlySpan<double> left, int leftWidth, int inner, ReadOnlySpan<double> right, int columns, Span<double> target)
    {
        int rows = columns == 0 ? 0 : target.Length / columns;
        for (int i = 0; i < rows; i++)
        {
            ReadOnlySpan<double> factors = left.Slice(i * leftWidth, inner);
            Span<double> sums = target.Slice(i * columns, columns);
            int j = 0;
            for (; j <= columns - Vector256<double>.Count; j += Vector256<double>.Count)
            {
                Vector256<double> sum = Vector256.LoadUnsafe(ref sums[j]);
                ref double column = ref Unsafe.AsRef(in MemoryMarshal.GetReference(right));
                column = ref Unsafe.Add(ref column, j);
                foreach (double factor in factors)
                {
                    sum += Vector256.Create(factor) * Vector256.LoadUnsafe(ref column);
                    column = ref Unsafe.Add(ref column, columns);
                }

                sum.StoreUnsafe(ref sums[j]);
            }

            for (; j < columns; j++)
            {
                double sum = sums[j];
                int at = j;
                foreach (double factor in factors)
                {
                    sum += factor * right[at];
                    at += columns;
                }

                sums[j] = sum;
            }
        }
    }

    /// <summary>Adds a multiple of one row of numbers to another of the same length.</summary>
    public static void AddMultiple<T>(ReadOnlySpan<T> source, T factor, Span<T> target)
        where T : struct, IReal<T>
    {
        if (typeof(T) == typeof(PlainReal) && source.Length >= VectorColumns)
        {
            DenseRows.AddMultiple(MemoryMarshal.Cast<T, double>(source), factor.Nearest, MemoryMarshal.Cast<T, double>(target));
            return;
        }

        target = target[..source.Length];
        for (int j = 0; j < source.Length; j++)
        {
            target[j] += factor * source[j];
        }
    }

    public static T Dot<T>(ReadOnlySpan<T> left, ReadOnlySpan<T> right)
        where T : struct, IReal<T>
    {
        T sum = default;
        right = right[..left.Length];
        for (int k = 0; k < left.Length; k++)
        {
            sum += left[k] * right[k];
        }

        return sum;
    }

    /// <summary>The triangle L of a symmetric positive definite matrix L Lᵀ, in place; what is above the diagonal is left as it was.</summary>
    public static void Triangle<T>(Span<T> matrix, int n)
        where T : struct, IReal<T>
    {
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c <= r; c++)
            {
                T value = matrix[(r * n) + c] - Dot<T>(matrix.Slice(r * n, c), matrix.Slice(c * n, c));
                matrix[(r * n) + c] = c == r ? T.Sqrt(value) : value / matrix[(c * n) + c];
            }
        }
    }

    /// <summary>y with L y = x, in place.</summary>
    public static void SolveTriangle<T>(ReadOnlySpan<T> triangle, Span<T> x)
        where T : struct, IReal<T>
    {
        int n = x.Length;
        for (int k = 0; k < n; k++)
        {
            x[k] = (x[k] - Dot<T>(triangle.Slice(k * n, k), x[..k])) / triangle[(k * n) + k];
        }
    }

    /// <summary>
    /// Solves for several right-hand sides in place by elimination with partial pivoting, every row measured by its
    /// own largest entry.
    /// </summary>
    /// <param name="rows">n rows of the matrix with the right-hand sides behind it; these become the solutions.</param>
    /// <param name="n">The number of unknowns.</param>
    /// <param name="width">The length of a row.</param>
    /// <param name="scales">Room for n numbers.</param>
    /// <returns>False where a pivot vanishes; the rows mean nothing then.</returns>
    public static bool TrySolve<T>(Span<T> rows, int n, int width, Span<double> scales)
        where T : struct, IReal<T>
    {
        for (int r = 0; r < n; r++)
        {
            double largest = 0;
            for (int c = 0; c < n; c++)
            {
                largest = Math.Max(largest, Math.Abs(rows[(r * width) + c].Nearest));
            }

            scales[r] = largest;
        }

        for (int k = 0; k < n; k++)
        {
            int pivot = -1;
            double best = 0;
            for (int r = k; r < n; r++)
            {
                double size = Math.Abs(rows[(r * width) + k].Nearest) / scales[r];
                if (size > best)
                {
                    (pivot, best) = (r, size);
                }
            }

            if (pivot < 0)
            {
                return false;
            }

            Swap(rows, k, pivot, width);
            (scales[k], scales[pivot]) = (scales[pivot], scales[k]);
            Span<T> own = rows.Slice(k * width, width);
            T inverse = T.Of(1) / own[k];
            for (int r = k + 1; r < n; r++)
            {
                Span<T> other = rows.Slice(r * width, width);
                if (!other[k].IsZero)
                {
                    AddMultiple<T>(own[(k + 1)..], -(other[k] * inverse), other[(k + 1)..]);
                }
            }
        }

        for (int k = n - 1; k >= 0; k--)
        {
            Span<T> own = rows.Slice(k * width, width);
            T inverse = T.Of(1) / own[k];
            for (int c = k + 1; c < n; c++)
            {
                AddMultiple<T>(rows.Slice((c * width) + n, width - n), -own[c], own[n..]);
            }

            for (int c = n; c < width; c++)
            {
                own[c] *= inverse;
            }
        }

        return true;
    }

    private static void Swap<T>(Span<T> rows, int a, int b, int width)
    {
        for (int c = 0; a != b && c < width; c++)
        {
            (rows[(a * width) + c], rows[(b * width) + c]) = (rows[(b * width) + c], rows[(a * width) + c]);
        }
    }
}
