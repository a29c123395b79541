using System.Numerics;

namespace ScNet.Numerics;

/// <summary>
/// A small dense matrix by rows on which rows are combined by orthogonal transformations: reflections
/// that eliminate leading columns (<see cref="RowReflections"/>), and rotations that make rows orthogonal
/// in a range of columns (<see cref="RowRotations"/>). All columns take part, so right-hand sides ride along.
/// </summary>
internal sealed class DenseRows
{
    private readonly double[] _values;

    public DenseRows(int rows, int columns)
    {
        RowCount = rows;
        ColumnCount = columns;
        _values = new double[rows * columns];
    }

    public int RowCount { get; }

    public int ColumnCount { get; }

    public ref double this[int row, int column] => ref _values[(row * ColumnCount) + column];

    public Span<double> Row(int row) => _values.AsSpan(row * ColumnCount, ColumnCount);

    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        int width = Vector<double>.Count, k = 0;
        Vector<double> sums = Vector<double>.Zero;
        for (; k <= left.Length - width; k += width)
        {
            sums += new Vector<double>(left[k..]) * new Vector<double>(right[k..]);
        }

        double sum = Vector.Sum(sums);
        for (; k < left.Length; k++)
        {
            sum += left[k] * right[k];
        }

        return sum;
    }

    /// <summary>Adds a multiple of one row of numbers to another.</summary>
    public static void AddMultiple(ReadOnlySpan<double> source, double factor, Span<double> target)
    {
        if (factor == 0)
        {
            return;
        }

        int width = Vector<double>.Count, k = 0;
        Vector<double> f = new(factor);
        for (; k <= source.Length - width; k += width)
        {
            (new Vector<double>(target[k..]) + (f * new Vector<double>(source[k..]))).CopyTo(target[k..]);
        }

        for (; k < source.Length; k++)
        {
            target[k] += factor * source[k];
        }
    }

    public void SwapRows(int a, int b)
    {
        if (a == b)
        {
            return;
        }

        Span<double> first = Row(a), second = Row(b);
        for (int k = 0; k < first.Length; k++)
        {
            (first[k], second[k]) = (second[k], first[k]);
        }
    }
}
