namespace ScNet.Numerics;

/// <summary>Singular values of an upper bidiagonal matrix by rotations from both sides, in time that grows with the square of its size.</summary>
/// <remarks>
/// The implicit QR iteration of G. H. Golub and C. Reinsch (1970) with the zero shift and the stopping rules of
/// J. Demmel and W. Kahan, SIAM J. Sci. Stat. Comput. 11, 1990 (both from memory): every singular value, however
/// small, comes out with nearly all its digits.
/// </remarks>
internal static class BidiagonalRotations
{
    private const double Epsilon = 1.1e-16;
    private const double Tolerance = 98 * Epsilon;
    private const int SweepsPerValue = 60;

    /// <summary>
    /// Turns the matrix into a diagonal one. Rotations from the left are done to the riders too.
    /// </summary>
    /// <param name="diagonal">The diagonal; afterwards the singular values up to sign, in no order.</param>
    /// <param name="above">The entries above the diagonal, one fewer; afterwards zeros.</param>
    /// <param name="riders">One row per row of the matrix.</param>
    /// <param name="rows">The row of <paramref name="riders"/> that belongs to each row of the matrix.</param>
    /// <returns>Whether it converged, as it always has.</returns>
    public static bool Diagonalise(Span<double> diagonal, Span<double> above, DenseRows riders, ReadOnlySpan<int> rows)
    {
        double threshold = Threshold(diagonal, above);
        int last = diagonal.Length - 1, oldFirst = -1, oldLast = -1;
        bool isDownward = true;
        for (long steps = (long)SweepsPerValue * diagonal.Length * diagonal.Length; last > 0;)
        {
            int first = FirstOfBlock(diagonal, above, last, threshold, out double largest);
            if (first == last)
            {
                last--;
                continue;
            }

            if (first > oldLast || last < oldFirst)
            {
                isDownward = Math.Abs(diagonal[first]) >= Math.Abs(diagonal[last]);
            }

            if (Splits(diagonal, above, first, last, isDownward, out double smallest))
            {
                continue;
            }

            (oldFirst, oldLast) = (first, last);
            steps -= last - first;
            if (steps < 0)
            {
                return false;
            }

            double shift = diagonal.Length * Tolerance * (smallest / largest) <= Epsilon ? 0
                : Shift(diagonal, above, isDownward ? last - 1 : first, Math.Abs(diagonal[isDownward ? first : last]));
            if (isDownward)
            {
                Down(diagonal, above, first, last, shift, riders, rows);
                above[last - 1] = Math.Abs(above[last - 1]) <= threshold ? 0 : above[last - 1];
            }
            else
            {
                Up(diagonal, above, first, last, shift, riders, rows);
                above[first] = Math.Abs(above[first]) <= threshold ? 0 : above[first];
            }
        }

        return true;
    }

    // Below this an entry above the diagonal changes no singular value.
    private static double Threshold(ReadOnlySpan<double> diagonal, ReadOnlySpan<double> above)
    {
        double bound = Math.Abs(diagonal[0]), least = bound;
        for (int i = 1; i < diagonal.Length && bound > 0; i++)
        {
            bound = Math.Abs(diagonal[i]) * (bound / (bound + Math.Abs(above[i - 1])));
            least = Math.Min(least, bound);
        }

        return Tolerance * least / Math.Sqrt(diagonal.Length);
    }

    private static int FirstOfBlock(ReadOnlySpan<double> diagonal, Span<double> above, int last, double threshold, out double largest)
    {
        largest = Math.Abs(diagonal[last]);
        for (int i = last - 1; i >= 0; i--)
        {
            if (Math.Abs(above[i]) <= threshold)
            {
                above[i] = 0;
                return i + 1;
            }

            largest = Math.Max(largest, Math.Max(Math.Abs(diagonal[i]), Math.Abs(above[i])));
        }

        return 0;
    }

    // Clears an entry that is negligible against the singular values beside it; a lower bound for the least of the block.
    private static bool Splits(ReadOnlySpan<double> diagonal, Span<double> above, int first, int last, bool isDownward, out double smallest)
    {
        int end = isDownward ? last : first, edge = isDownward ? last - 1 : first;
        smallest = 0;
        if (Math.Abs(above[edge]) <= Tolerance * Math.Abs(diagonal[end]))
        {
            above[edge] = 0;
            return true;
        }

        double bound = Math.Abs(diagonal[isDownward ? first : last]);
        smallest = bound;
        for (int k = 0; k < last - first; k++)
        {
            int i = isDownward ? first + k : last - 1 - k, next = isDownward ? i + 1 : i;
            if (Math.Abs(above[i]) <= Tolerance * bound)
            {
                above[i] = 0;
                return true;
            }

            bound = Math.Abs(diagonal[next]) * (bound / (bound + Math.Abs(above[i])));
            smallest = Math.Min(smallest, bound);
        }

        return false;
    }

    // The smaller singular value of the two by two block at the end; zero where it would lose the small ones.
    private static double Shift(ReadOnlySpan<double> diagonal, ReadOnlySpan<double> above, int at, double start)
    {
        double f = Math.Abs(diagonal[at]), g = Math.Abs(above[at]), h = Math.Abs(diagonal[at + 1]);
        double small = Math.Min(f, h), large = Math.Max(f, h), shift = 0;
        if (small > 0)
        {
            double sum = 1 + (small / large), difference = (large - small) / large, scale = Math.Max(large, g);
            double a = large / scale, b = g / scale;
            shift = 2 * small * a / (double.Hypot(sum * a, b) + double.Hypot(difference * a, b));
        }

        double ratio = shift / start;
        return ratio * ratio < Epsilon ? 0 : shift;
    }

    private static void Down(Span<double> d, Span<double> e, int first, int last, double shift, DenseRows riders, ReadOnlySpan<int> rows)
    {
        if (shift == 0)
        {
            double cosine = 1, oldCosine = 1, oldSine = 0;
            for (int i = first; i < last; i++)
            {
                double sine, r;
                (cosine, sine, r) = Rotation(d[i] * cosine, e[i]);
                if (i > first)
                {
                    e[i - 1] = oldSine * r;
                }

                (oldCosine, oldSine, d[i]) = Rotation(oldCosine * r, d[i + 1] * sine);
                Rotate(riders, rows[i], rows[i + 1], oldCosine, oldSine);
            }

            double rest = d[last] * cosine;
            d[last] = rest * oldCosine;
            e[last - 1] = rest * oldSine;
            return;
        }

        double f = (Math.Abs(d[first]) - shift) * (Math.CopySign(1, d[first]) + (shift / d[first])), g = e[first];
        for (int i = first; i < last; i++)
        {
            (double cosine, double sine, double r) = Rotation(f, g);
            if (i > first)
            {
                e[i - 1] = r;
            }

            f = (cosine * d[i]) + (sine * e[i]);
            e[i] = (cosine * e[i]) - (sine * d[i]);
            g = sine * d[i + 1];
            d[i + 1] *= cosine;
            (cosine, sine, d[i]) = Rotation(f, g);
            f = (cosine * e[i]) + (sine * d[i + 1]);
            d[i + 1] = (cosine * d[i + 1]) - (sine * e[i]);
            if (i < last - 1)
            {
                g = sine * e[i + 1];
                e[i + 1] *= cosine;
            }

            Rotate(riders, rows[i], rows[i + 1], cosine, sine);
        }

        e[last - 1] = f;
    }

    private static void Up(Span<double> d, Span<double> e, int first, int last, double shift, DenseRows riders, ReadOnlySpan<int> rows)
    {
        if (shift == 0)
        {
            double cosine = 1, oldCosine = 1, oldSine = 0;
            for (int i = last; i > first; i--)
            {
                double sine, r;
                (cosine, sine, r) = Rotation(d[i] * cosine, e[i - 1]);
                if (i < last)
                {
                    e[i] = oldSine * r;
                }

                (oldCosine, oldSine, d[i]) = Rotation(oldCosine * r, d[i - 1] * sine);
                Rotate(riders, rows[i - 1], rows[i], cosine, -sine);
            }

            double rest = d[first] * cosine;
            d[first] = rest * oldCosine;
            e[first] = rest * oldSine;
            return;
        }

        double f = (Math.Abs(d[last]) - shift) * (Math.CopySign(1, d[last]) + (shift / d[last])), g = e[last - 1];
        for (int i = last; i > first; i--)
        {
            (double cosine, double sine, double r) = Rotation(f, g);
            if (i < last)
            {
                e[i] = r;
            }

            f = (cosine * d[i]) + (sine * e[i - 1]);
            e[i - 1] = (cosine * e[i - 1]) - (sine * d[i]);
            g = sine * d[i - 1];
            d[i - 1] *= cosine;
            Rotate(riders, rows[i - 1], rows[i], cosine, -sine);
            (cosine, sine, d[i]) = Rotation(f, g);
            f = (cosine * e[i - 1]) + (sine * d[i - 1]);
            d[i - 1] = (cosine * d[i - 1]) - (sine * e[i - 1]);
            if (i > first + 1)
            {
                g = sine * e[i - 2];
                e[i - 2] *= cosine;
            }
        }

        e[first] = f;
    }

    private static (double Cosine, double Sine, double Length) Rotation(double f, double g)
    {
        if (g == 0)
        {
            return (1, 0, f);
        }

        if (f == 0)
        {
            return (0, 1, g);
        }

        double length = Math.Sqrt((f * f) + (g * g));
        return (f / length, g / length, length);
    }

    private static void Rotate(DenseRows riders, int first, int second, double cosine, double sine) =>
        RowRotations.Rotate(riders.Row(first), riders.Row(second), cosine, -sine);
}
