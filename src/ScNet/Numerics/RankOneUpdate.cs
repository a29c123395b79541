using System.Numerics;

namespace ScNet.Numerics;

/// <summary>Eigenvalues and eigenvectors of a diagonal matrix to which the square of one column is added.</summary>
/// <remarks>
/// The roots of the secular equation (G. H. Golub, SIAM Review 15, 1973), each from its nearer pole, and vectors of
/// the column for which these roots are exact (M. Gu and S. C. Eisenstat, SIAM J. Matrix Anal. Appl. 15, 1994; both
/// from memory), so that they are orthogonal to rounding. Cost: size² for the roots and for every column of the riders.
/// </remarks>
internal static class RankOneUpdate
{
    private const double Negligible = 8 * 2.2e-16;
    private const int StepLimit = 200;

    /// <summary>Finds the eigenvalues of diag(<paramref name="values"/>) + z zᵀ.</summary>
    /// <param name="values">The diagonal; afterwards the eigenvalues, each at the place of its row.</param>
    /// <param name="column">z.</param>
    /// <param name="riders">One row per row of the matrix; afterwards multiplied by the eigenvectors.</param>
    /// <param name="rows">The row of <paramref name="riders"/> that belongs to each row of the matrix.</param>
    public static void Apply(double[] values, double[] column, DenseRows riders, int[] rows)
    {
        int[] order = [.. Enumerable.Range(0, values.Length).OrderBy(i => values[i])];
        double square = DenseRows.Dot(column, column), tolerance = Negligible * Math.Max(values[order[^1]], square);
        List<int> active = [];
        foreach (int i in order)
        {
            if (Math.Abs(column[i]) * Math.Sqrt(square) <= tolerance)
            {
                continue;
            }

            if (active.Count > 0 && values[i] - values[active[^1]] <= tolerance)
            {
                // of two equal values one combination has no part in the column
                int before = active[^1];
                double length = double.Hypot(column[before], column[i]), cosine = column[i] / length, sine = column[before] / length;
                RowRotations.Rotate(riders.Row(rows[before]), riders.Row(rows[i]), cosine, sine);
                (column[before], column[i]) = (0, length);
                active[^1] = i;
                continue;
            }

            active.Add(i);
        }

        if (active.Count > 0)
        {
            Update(values, column, square, riders, rows, [.. active]);
        }
    }

    private static void Update(double[] values, double[] column, double square, DenseRows riders, int[] rows, int[] active)
    {
        int n = active.Length;
        double[] poles = [.. active.Select(i => values[i])], squares = [.. active.Select(i => column[i] * column[i])];
        int[] origin = new int[n];
        double[] offset = new double[n];
        for (int k = 0; k < n; k++)
        {
            double gap = k < n - 1 ? poles[k + 1] - poles[k] : square;
            bool isLeft = k == n - 1 || Secular(poles, squares, k, 0.5 * gap) >= 0;
            origin[k] = isLeft ? k : k + 1;
            offset[k] = Root(poles, squares, origin[k], (isLeft ? 1 : -1) * (k == n - 1 ? gap : 0.5 * gap));
        }

        // the column for which the roots found are exact
        var exact = new double[n];
        for (int i = 0; i < n; i++)
        {
            double product = Distance(n - 1, i);
            for (int k = 0; k < n - 1; k++)
            {
                product *= Distance(k, i) / (poles[k < i ? k : k + 1] - poles[i]);
            }

            exact[i] = Math.CopySign(Math.Sqrt(Math.Abs(product)), column[active[i]]);
        }

        DenseRows given = new(n, riders.ColumnCount);
        for (int i = 0; i < n; i++)
        {
            riders.Row(rows[active[i]]).CopyTo(given.Row(i));
        }

        var vector = new double[n];
        for (int k = 0; k < n; k++)
        {
            for (int i = 0; i < n; i++)
            {
                vector[i] = exact[i] / -Distance(k, i);
            }

            double length = Math.Sqrt(DenseRows.Dot(vector, vector));
            Span<double> row = riders.Row(rows[active[k]]);
            row.Clear();
            for (int i = 0; i < n; i++)
            {
                DenseRows.AddMultiple(given.Row(i), vector[i] / length, row);
            }

            values[active[k]] = poles[origin[k]] + offset[k];
        }

        // eigenvalue k less pole i, without the rounding of the eigenvalue
        double Distance(int k, int i) => poles[origin[k]] - poles[i] + offset[k];
    }

    // 1 + Σ z² / (pole - value) at an offset from a pole.
    private static double Secular(double[] poles, double[] squares, int origin, double offset)
    {
        int width = Vector<double>.Count, i = 0;
        Vector<double> sums = Vector<double>.Zero, start = new(poles[origin]), value = new(offset);
        for (; i <= poles.Length - width; i += width)
        {
            sums += new Vector<double>(squares, i) / (new Vector<double>(poles, i) - start - value);
        }

        double sum = 1 + Vector.Sum(sums);
        for (; i < poles.Length; i++)
        {
            sum += squares[i] / (poles[i] - poles[origin] - offset);
        }

        return sum;
    }

    // The secular function times the offset has no pole where it starts: regula falsi with the Illinois rule.
    private static double Root(double[] poles, double[] squares, int origin, double end)
    {
        double low = 0, atLow = -squares[origin], high = end, atHigh = end * Secular(poles, squares, origin, end);
        int stayed = 0;
        double time = end;
        for (int step = 0; step < StepLimit; step++)
        {
            double next = low + ((high - low) * (atLow / (atLow - atHigh)));
            if (!(Math.Abs(next) > Math.Abs(low) && Math.Abs(next) < Math.Abs(high)))
            {
                next = 0.5 * (low + high);
            }

            bool isDone = Math.Abs(next - time) <= 2.2e-16 * Math.Abs(next);
            time = next;
            double value = time * Secular(poles, squares, origin, time);
            if (isDone || value == 0)
            {
                break;
            }

            if (value < 0)
            {
                (low, atLow) = (time, value);
                atHigh *= stayed > 0 ? 0.5 : 1;
                stayed = 1;
            }
            else
            {
                (high, atHigh) = (time, value);
                atLow *= stayed < 0 ? 0.5 : 1;
                stayed = -1;
            }
        }

        return time;
    }
}
