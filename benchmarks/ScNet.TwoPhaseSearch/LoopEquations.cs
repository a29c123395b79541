using System.Numerics;
using Fractions;

namespace ScNet.TwoPhaseSearch;

/// <summary>The ratio that the loops of two phases leave: what remains once the capacitors' voltages are eliminated.</summary>
internal static class LoopEquations
{
    /// <summary>The ratio, or null where the loops contradict each other or leave the output open.</summary>
    /// <param name="loops">Rows of <see cref="Wiring.Loops"/>.</param>
    /// <param name="capacitors">The number of capacitors, the leading columns.</param>
    /// <param name="isTight">
    /// Whether every capacitor has its voltage and no loop is left over, so that topology decides the flow too.
    /// </param>
    public static Fraction? Ratio(IEnumerable<int[]> loops, int capacitors, out bool isTight)
    {
        int[][] rows = [.. loops.Select(r => (int[])r.Clone())];
        int rank = 0;
        for (int column = 0; column < capacitors; column++)
        {
            int pivot = Array.FindIndex(rows, rank, r => r[column] != 0);
            if (pivot >= 0)
            {
                (rows[rank], rows[pivot]) = (rows[pivot], rows[rank]);
                Eliminate(rows, rank, column);
                rank++;
            }
        }

        isTight = rank == capacitors && rows.Length == capacitors + 1;
        Fraction? ratio = null;
        foreach (int[] row in rows.Skip(rank))
        {
            (int output, int input) = (row[capacitors], row[capacitors + 1]);
            if (output == 0 && input == 0)
            {
                continue;
            }

            if (output == 0 || (ratio is { } known && known != new Fraction(-input, output)))
            {
                return null;
            }

            ratio = new Fraction(-input, output);
        }

        return ratio;
    }

    private static void Eliminate(int[][] rows, int pivot, int column)
    {
        for (int i = pivot + 1; i < rows.Length; i++)
        {
            int factor = rows[i][column];
            if (factor == 0)
            {
                continue;
            }

            int divisor = 0;
            for (int c = 0; c < rows[i].Length; c++)
            {
                rows[i][c] = checked((rows[i][c] * rows[pivot][column]) - (factor * rows[pivot][c]));
                divisor = (int)BigInteger.GreatestCommonDivisor(divisor, rows[i][c]);
            }

            rows[i] = divisor > 1 ? [.. rows[i].Select(v => v / divisor)] : rows[i];
        }
    }
}
