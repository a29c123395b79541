using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Triples;

/// <summary>Two phases of a triple, and what they leave to the third.</summary>
/// <param name="First">The first phase: a single loop.</param>
/// <param name="Second">The second phase.</param>
/// <param name="Allowed">The vectors of voltages at right angles to the loops of both, which span all such.</param>
/// <param name="Share">A vector at right angles to the second phase's loops, from which the first's part of a flow of both follows.</param>
/// <param name="ShareOfLoop">What its product with the first's loop is; not zero.</param>
internal sealed record TwoPhases(LoopSpace First, LoopSpace Second, long[][] Allowed, sbyte[] Share, int ShareOfLoop)
{
    /// <summary>Two phases; null where their loops depend on one another.</summary>
    public static TwoPhases? Of(LoopSpace first, LoopSpace second)
    {
        // those of the first combined to be at right angles to the second's
        List<long[]> left = [.. first.Complement().Select(vector => vector.Select(v => (long)v).ToArray())];
        for (int loop = 0; loop < second.Dimension; loop++)
        {
            int pivot = left.FindIndex(vector => Product(vector, second.Row(loop)) != 0);
            if (pivot < 0)
            {
                return null;
            }

            long[] taken = left[pivot];
            long own = Product(taken, second.Row(loop));
            left.RemoveAt(pivot);
            for (int v = 0; v < left.Count; v++)
            {
                long other = Product(left[v], second.Row(loop));
                left[v] = Primitive([.. left[v].Zip(taken, (a, b) => (a * own) - (b * other))]);
            }
        }

        foreach (sbyte[] vector in second.Complement())
        {
            int share = Product(vector, first.Row(0));
            if (share != 0)
            {
                return new TwoPhases(first, second, [.. left], vector, share);
            }
        }

        return null;
    }

    private static long Product(ReadOnlySpan<long> vector, ReadOnlySpan<sbyte> signs)
    {
        long product = 0;
        for (int c = 0; c < vector.Length; c++)
        {
            product += vector[c] * signs[c];
        }

        return product;
    }

    private static int Product(ReadOnlySpan<sbyte> vector, ReadOnlySpan<sbyte> signs)
    {
        int product = 0;
        for (int c = 0; c < vector.Length; c++)
        {
            product += vector[c] * signs[c];
        }

        return product;
    }

    private static long[] Primitive(long[] vector)
    {
        long divisor = vector.Aggregate(0L, Kernel.Integers.Gcd);
        return divisor > 1 ? [.. vector.Select(v => v / divisor)] : vector;
    }
}
