namespace ScNet.Numerics;

/// <summary>A vector of which only the entries that are not zero are kept, in ascending order of index. The default value is zero.</summary>
internal readonly struct SparseVector
{
    private readonly int[]? _indices;
    private readonly double[]? _values;

    private SparseVector(int[] indices, double[] values)
    {
        _indices = indices;
        _values = values;
    }

    public ReadOnlySpan<int> Indices => _indices;

    public ReadOnlySpan<double> Values => _values;

    public int Count => _indices?.Length ?? 0;

    public bool IsZero => Count == 0;

    /// <summary>The entry at an index, by bisection.</summary>
    public double this[int index] => Indices.BinarySearch(index) is var at and >= 0 ? Values[at] : 0;

    /// <summary>The vector of the given entries; the arrays become its own.</summary>
    /// <param name="indices">Indices in any order, each at most once.</param>
    /// <param name="values">Their values.</param>
    public static SparseVector Of(int[] indices, double[] values)
    {
        Array.Sort(indices, values);
        SparseVector vector = new(indices, values);
        return values.AsSpan().Contains(0) ? vector.Weighted(_ => 1) : vector;
    }

    /// <summary>The entries of an array that are not zero.</summary>
    public static SparseVector OfDense(double[] values)
    {
        int[] indices = [.. Enumerable.Range(0, values.Length).Where(i => values[i] != 0)];
        return new SparseVector(indices, Array.ConvertAll(indices, i => values[i]));
    }

    /// <summary>The vector of a single entry.</summary>
    public static SparseVector Unit(int index) => new([index], [1]);

    /// <summary>The entries that a factor by index leaves, each times its factor.</summary>
    public SparseVector Weighted(Func<int, double> factor)
    {
        List<int> indices = new(Count);
        List<double> values = new(Count);
        for (int e = 0; e < Count; e++)
        {
            if (Values[e] * factor(Indices[e]) is var value and not 0)
            {
                indices.Add(Indices[e]);
                values.Add(value);
            }
        }

        return new SparseVector([.. indices], [.. values]);
    }

    /// <summary>One vector after the other, the indices of the second counted from an offset beyond those of the first.</summary>
    public SparseVector Followed(SparseVector other, int offset)
    {
        var indices = new int[Count + other.Count];
        Indices.CopyTo(indices);
        for (int e = 0; e < other.Count; e++)
        {
            indices[Count + e] = offset + other.Indices[e];
        }

        return new SparseVector(indices, [.. Values, .. other.Values]);
    }

    public double[] ToArray(int length)
    {
        var dense = new double[length];
        for (int e = 0; e < Count; e++)
        {
            dense[Indices[e]] = Values[e];
        }

        return dense;
    }

    /// <summary>The root of the sum of squares.</summary>
    public double Length()
    {
        double largest = 0, sum = 0;
        foreach (double value in Values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        foreach (double value in Values)
        {
            sum += value / largest * (value / largest);
        }

        return largest * Math.Sqrt(sum);
    }

    /// <summary>
    /// a · left + b · right from the entry of an index on; what cancels, exactly or but for a share of rounding,
    /// is left out.
    /// </summary>
    public static SparseVector Combination(double a, SparseVector left, double b, SparseVector right, int fromIndex = 0, double rounding = 0)
    {
        List<int> indices = new(left.Count + right.Count);
        List<double> values = new(left.Count + right.Count);
        int l = 0, r = 0;
        while (l < left.Count || r < right.Count)
        {
            int li = l < left.Count ? left.Indices[l] : int.MaxValue, ri = r < right.Count ? right.Indices[r] : int.MaxValue;
            int index = Math.Min(li, ri);
            double first = li == index ? a * left.Values[l++] : 0, second = ri == index ? b * right.Values[r++] : 0;
            double value = first + second;
            if (index >= fromIndex && Math.Abs(value) > rounding * Math.Abs(first))
            {
                indices.Add(index);
                values.Add(value);
            }
        }

        return new SparseVector([.. indices], [.. values]);
    }
}
