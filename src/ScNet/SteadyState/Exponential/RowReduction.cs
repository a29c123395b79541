using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>Reduces independent rows so that each has a one in a column of its own in which the others vanish.</summary>
internal static class RowReduction
{
    /// <summary>Reduces in place, each row by its largest entry.</summary>
    /// <returns>The columns of the ones.</returns>
    public static int[] Reduce<T>(Span<T> rows, int count, int width)
        where T : struct, IReal<T>
    {
        var pivots = new int[count];
        for (int k = 0; k < count; k++)
        {
            Span<T> own = rows.Slice(k * width, width);
            int pivot = 0;
            for (int c = 1; c < width; c++)
            {
                pivot = Math.Abs(own[c].Nearest) > Math.Abs(own[pivot].Nearest) ? c : pivot;
            }

            pivots[k] = pivot;
            T inverse = T.Of(1) / own[pivot];
            for (int c = 0; c < width; c++)
            {
                own[c] = c == pivot ? T.Of(1) : own[c] * inverse;
            }

            for (int other = 0; other < count; other++)
            {
                Span<T> row = rows.Slice(other * width, width);
                if (other != k && !row[pivot].IsZero)
                {
                    SmallMatrices.AddMultiple<T>(own, -row[pivot], row);
                }
            }
        }

        return pivots;
    }
}
