using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// Other directions of the same span, each led by a resistor of a phase that dissipates more than all others in it and
/// that none of the directions before it touches.
/// </summary>
/// <remarks>
/// Directions as topology gives them share large resistors; made orthogonal, small resistors would have to hold the
/// charge that is left of nearly equal ones, and Kirchhoff's current law would be lost in rounding. Led like this nothing
/// cancels: docs/theory/output-impedance.md, "One period". Cost: directions² · resistors at most, where they overlap.
/// </remarks>
internal static class GradedDirections
{
    // whole numbers of few digits, or their quotients: what is left below this share of both terms is rounding
    private const double Cancelled = 1e-12;

    /// <summary>Reduces directions in place; those that are no combination of the others come first, the least dissipating foremost.</summary>
    /// <param name="charges">One row per direction: its charge through every resistor of every phase; further columns ride along.</param>
    /// <param name="weights">What one coulomb dissipates in each; as many columns lead.</param>
    /// <returns>The rows of the directions, in order; the others are zero in all resistors.</returns>
    public static int[] Of(DenseRows charges, double[] weights)
    {
        int[] columns = [.. Enumerable.Range(0, weights.Length).OrderByDescending(c => weights[c])];
        int rank = 0;
        foreach (int column in columns)
        {
            int pivot = rank;
            for (int r = rank + 1; r < charges.RowCount; r++)
            {
                pivot = Math.Abs(charges[r, column]) > Math.Abs(charges[pivot, column]) ? r : pivot;
            }

            if (rank == charges.RowCount || charges[pivot, column] == 0)
            {
                continue;
            }

            charges.SwapRows(rank, pivot);
            for (int r = rank + 1; r < charges.RowCount; r++)
            {
                if (charges[r, column] != 0)
                {
                    Subtract(charges.Row(rank), charges[r, column] / charges[rank, column], charges.Row(r));
                    charges[r, column] = 0;
                }
            }

            rank++;
        }

        return [.. Enumerable.Range(0, rank).Reverse()];
    }

    private static void Subtract(ReadOnlySpan<double> source, double factor, Span<double> target)
    {
        for (int c = 0; c < target.Length; c++)
        {
            double taken = factor * source[c], left = target[c] - taken;
            target[c] = Math.Abs(left) > Cancelled * Math.Abs(taken) ? left : 0;
        }
    }
}
