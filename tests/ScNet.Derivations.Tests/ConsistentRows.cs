using Fractions;

namespace ScNet.Derivations.Tests;

/// <summary>Whether linear equations can hold together, by textbook elimination over fractions.</summary>
internal static class ConsistentRows
{
    public static bool AreConsistent(IReadOnlyList<((int Unknown, Fraction Coefficient)[] Terms, Fraction Constant)> equations)
    {
        int[] columns = [.. equations.SelectMany(e => e.Terms).Select(t => t.Unknown).Distinct()];
        Fraction[][] rows = [.. equations.Select(e => columns
            .Select(c => e.Terms.Where(t => t.Unknown == c).Aggregate(Fraction.Zero, (sum, t) => sum + t.Coefficient))
            .Append(e.Constant).ToArray())];
        int rank = 0;
        for (int c = 0; c < columns.Length; c++)
        {
            int pivot = Array.FindIndex(rows, rank, r => !r[c].IsZero);
            if (pivot < 0)
            {
                continue;
            }

            (rows[rank], rows[pivot]) = (rows[pivot], rows[rank]);
            for (int r = rank + 1; r < rows.Length; r++)
            {
                Fraction factor = rows[r][c] / rows[rank][c];
                rows[r] = [.. rows[r].Select((value, k) => value - (factor * rows[rank][k]))];
            }

            rank++;
        }

        return rows.Skip(rank).All(r => r[^1].IsZero);
    }
}
