using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>The vectors that all rows of a reduced echelon form take to zero.</summary>
internal static class NullPatterns
{
    /// <summary>One vector of whole numbers per column without a leading entry.</summary>
    /// <param name="echelon">The reduced rows.</param>
    /// <param name="columns">The number of columns.</param>
    /// <param name="rank">The number of rows with a leading entry.</param>
    public static List<int[]> Of(ReadOnlySpan<int> echelon, int columns, int rank)
    {
        List<int[]> patterns = [];
        var leading = new int[rank];
        for (int r = 0; r < rank; r++)
        {
            leading[r] = EchelonForm.Leading(echelon.Slice(r * columns, columns));
        }

        for (int free = 0; free < columns; free++)
        {
            if (leading.AsSpan().Contains(free))
            {
                continue;
            }

            // leading entries other than one make the vector's own entry their common multiple
            int common = 1;
            for (int r = 0; r < rank; r++)
            {
                int lead = echelon[(r * columns) + leading[r]];
                common = echelon[(r * columns) + free] == 0 ? common : common / Integers.Gcd(common, lead) * lead;
            }

            var pattern = new int[columns];
            pattern[free] = common;
            for (int r = 0; r < rank; r++)
            {
                pattern[leading[r]] = -echelon[(r * columns) + free] * (common / echelon[(r * columns) + leading[r]]);
            }

            patterns.Add(pattern);
        }

        return patterns;
    }
}
