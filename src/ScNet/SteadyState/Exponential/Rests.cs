using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>What inductors without a path do to a phase: their part of the state is zero from its start and stays so.</summary>
/// <remarks>With Q the orthonormal rows of that part, everything is taken between projections 1 - QᵀQ: docs/theory/discontinuous-conduction.md.</remarks>
internal static class Rests
{
    /// <summary>[A b] of such a phase, in place.</summary>
    public static void HoldGenerator<T>(ReadOnlySpan<T> directions, int n, int width, Span<T> generator)
        where T : struct, IReal<T>
    {
        for (int at = 0; at < directions.Length; at += n)
        {
            ReadOnlySpan<T> direction = directions.Slice(at, n);
            TakeRows(direction, width, generator);
            TakeColumns(direction, width, generator);
        }
    }

    /// <summary>The change of the state over such a phase, in place: what is not zero at its start goes.</summary>
    public static void HoldChange<T>(ReadOnlySpan<T> directions, int n, int width, Span<T> change)
        where T : struct, IReal<T>
    {
        for (int at = 0; at < directions.Length; at += n)
        {
            ReadOnlySpan<T> direction = directions.Slice(at, n);
            for (int r = 0; r < n; r++)
            {
                SmallMatrices.AddMultiple(direction, -direction[r], change.Slice(r * width, n));
            }
        }
    }

    /// <summary>The integral of the state over such a phase, in place.</summary>
    public static void HoldIntegral<T>(ReadOnlySpan<T> directions, int n, int width, Span<T> integral)
        where T : struct, IReal<T>
    {
        for (int at = 0; at < directions.Length; at += n)
        {
            TakeColumns(directions.Slice(at, n), width, integral);
        }
    }

    // M becomes M - q (qᵀ M)
    private static void TakeRows<T>(ReadOnlySpan<T> direction, int width, Span<T> matrix)
        where T : struct, IReal<T>
    {
        var sums = new T[width];
        for (int r = 0; r < direction.Length; r++)
        {
            SmallMatrices.AddMultiple<T>(matrix.Slice(r * width, width), direction[r], sums);
        }

        for (int r = 0; r < direction.Length; r++)
        {
            SmallMatrices.AddMultiple<T>(sums, -direction[r], matrix.Slice(r * width, width));
        }
    }

    // M becomes M - (M q) qᵀ, over the columns of states
    private static void TakeColumns<T>(ReadOnlySpan<T> direction, int width, Span<T> matrix)
        where T : struct, IReal<T>
    {
        int n = direction.Length;
        for (int r = 0; r < n; r++)
        {
            Span<T> row = matrix.Slice(r * width, n);
            SmallMatrices.AddMultiple(direction, -SmallMatrices.Dot(row, direction), row);
        }
    }
}
