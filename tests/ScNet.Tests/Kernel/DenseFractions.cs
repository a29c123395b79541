using Fractions;

namespace ScNet.Tests.Kernel;

/// <summary>Plain dense elimination over fractions, the definition against which the sparse one is held.</summary>
internal static class DenseFractions
{
    /// <summary>The rank of a matrix.</summary>
    public static int Rank(Fraction[][] matrix)
    {
        Fraction[][] rows = [.. matrix.Select(r => (Fraction[])r.Clone())];
        int columns = rows.Length == 0 ? 0 : rows[0].Length;
        int rank = 0;
        for (int column = 0; column < columns && rank < rows.Length; column++)
        {
            int pivot = Array.FindIndex(rows, rank, r => !r[column].IsZero);
            if (pivot < 0)
            {
                continue;
            }

            (rows[rank], rows[pivot]) = (rows[pivot], rows[rank]);
            for (int r = rank + 1; r < rows.Length; r++)
            {
                Fraction factor = rows[r][column] / rows[rank][column];
                for (int c = column; c < columns && !factor.IsZero; c++)
                {
                    rows[r][c] -= factor * rows[rank][c];
                }
            }

            rank++;
        }

        return rank;
    }
}
