namespace ScNet.Numerics;

/// <summary>
/// An order of the columns of a sparse matrix that keeps the fill of its triangle low: always next the
/// column that meets the fewest others in the rows left, which then merge into one row.
/// </summary>
/// <remarks>
/// Source: the minimum degree order on cliques, J. A. George and J. W. H. Liu, "The evolution of the minimum
/// degree ordering algorithm", SIAM Review 31, 1989 (from memory); the degree is bounded by the sum over rows.
/// </remarks>
internal static class FillOrder
{
    /// <summary>
    /// The most steps, counted as the squares of the columns met, that a triangle may take: a fully dense one of
    /// some 670 columns, a few seconds.
    /// </summary>
    public const long MostSteps = 100_000_000;

    /// <summary>The position of each column in the order.</summary>
    /// <param name="columns">The number of columns.</param>
    /// <param name="rows">The columns with an entry in each row.</param>
    /// <exception cref="FillLimitException">The triangle would take more than <see cref="MostSteps"/>.</exception>
    public static int[] Of(int columns, IEnumerable<int[]> rows)
    {
        List<int[]?> cliques = [.. rows];
        var cliquesOf = new List<int>[columns];
        for (int c = 0; c < columns; c++)
        {
            cliquesOf[c] = [];
        }

        for (int k = 0; k < cliques.Count; k++)
        {
            Array.ForEach(cliques[k]!, c => cliquesOf[c].Add(k));
        }

        long Degree(int column)
        {
            long degree = 0;
            foreach (int k in cliquesOf[column])
            {
                degree += cliques[k]!.Length - 1;
            }

            return degree;
        }

        PriorityQueue<int, (long Degree, int Column)> queue = new();
        var degrees = new long[columns];
        void File(int column) => queue.Enqueue(column, (degrees[column] = Degree(column), column));
        for (int c = 0; c < columns; c++)
        {
            File(c);
        }

        var position = new int[columns];
        position.AsSpan().Fill(-1);
        var mark = new int[columns];
        int found = 0;
        long steps = 0;
        while (queue.TryDequeue(out int column, out (long Degree, int Column) key))
        {
            if (position[column] >= 0 || key.Degree != degrees[column])
            {
                continue;
            }

            position[column] = found++;
            List<int> merged = [];
            foreach (int k in cliquesOf[column])
            {
                foreach (int other in cliques[k]!)
                {
                    if (position[other] < 0 && mark[other] != found)
                    {
                        mark[other] = found;
                        merged.Add(other);
                    }
                }

                cliques[k] = null;
            }

            steps += (long)merged.Count * merged.Count;
            if (steps > MostSteps)
            {
                throw new FillLimitException(columns);
            }

            cliques.Add([.. merged]);
            foreach (int other in merged)
            {
                cliquesOf[other].RemoveAll(k => cliques[k] is null);
                cliquesOf[other].Add(cliques.Count - 1);
                File(other);
            }
        }

        return position;
    }
}
