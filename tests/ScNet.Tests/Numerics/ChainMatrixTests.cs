using System.Globalization;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Bidiagonal matrices and updates by one column against decompositions of MathNet.</summary>
[Trait("Kind", "Law")]
public sealed class ChainMatrixTests
{
    private static readonly Gen<double> s_entry = Gen.Int[-16, 16].Select(n => 0.125 * n);

    private static readonly Gen<(double[] Diagonal, double[] Above)> s_bidiagonal =
        from n in Gen.Int[1, 24]
        from diagonal in s_entry.Array[n]
        from above in s_entry.Array[n - 1]
        select (diagonal.Select(d => d == 0 ? 1 : d).ToArray(), above);

    [Fact]
    public void A_bidiagonal_matrix_turns_into_its_singular_values() => s_bidiagonal.Holds(matrix =>
    {
        int n = matrix.Diagonal.Length;
        Matrix<double> dense = Matrix<double>.Build.Dense(n, n, (r, c) => r == c ? matrix.Diagonal[r] : c == r + 1 ? matrix.Above[r] : 0);
        (DenseRows riders, int[] rows) = Identity(n);
        double[] values = [.. matrix.Diagonal];
        Assert.True(BidiagonalRotations.Diagonalise(values, [.. matrix.Above], riders, rows));
        double[] expected = [.. dense.Svd(computeVectors: false).S], actual = [.. values.Select(Math.Abs).OrderDescending()];
        for (int k = 0; k < n; k++)
        {
            Assert.Equal(expected[k], actual[k], 1e-13 * expected[0]);
        }

        // the rotations make the rows orthogonal, and are orthogonal themselves
        Matrix<double> turn = Dense(riders), turned = turn * dense;
        AssertDiagonal(turn * turn.Transpose(), [.. Enumerable.Repeat(1.0, n)], 1e-13);
        AssertDiagonal(turned * turned.Transpose(), [.. values.Select(v => v * v)], 1e-12 * expected[0] * expected[0]);
    });

    // The product of the singular values is the determinant, that of the diagonal.
    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-9)]
    public void A_singular_value_far_below_the_others_keeps_its_digits(double small)
    {
        double[] values = [1, small, 1], above = [1, 1];
        (DenseRows riders, int[] rows) = Identity(3);
        Assert.True(BidiagonalRotations.Diagonalise(values, above, riders, rows));
        Assert.Equal(small, Math.Abs(values[0] * values[1] * values[2]), 1e-14 * small);
        Matrix<double> dense = Matrix<double>.Build.DenseOfArray(new double[,] { { 1, 1, 0 }, { 0, small, 1 }, { 0, 0, 1 } });
        double[] large = [.. dense.Svd(computeVectors: false).S];
        Assert.Equal(small / (large[0] * large[1]), values.Select(Math.Abs).Min(), 1e-13 * small);
    }

    [Fact]
    public void A_column_added_to_a_diagonal_matrix_moves_its_eigenvalues() => (
        from n in Gen.Int[1, 24]
        from values in s_entry.Select(Math.Abs).Array[n]
        from column in s_entry.Array[n]
        select (values, column)).Holds(x =>
    {
        int n = x.values.Length;
        Vector<double> z = Vector<double>.Build.DenseOfArray([.. x.column]);
        Matrix<double> dense = Matrix<double>.Build.DenseOfDiagonalArray([.. x.values]) + z.OuterProduct(z);
        (DenseRows riders, int[] rows) = Identity(n);
        double[] values = [.. x.values];
        RankOneUpdate.Apply(values, [.. x.column], riders, rows);
        double scale = 1 + x.values.Max() + (z * z);
        Matrix<double> turn = Dense(riders);
        AssertDiagonal(turn * turn.Transpose(), [.. Enumerable.Repeat(1.0, n)], 1e-13);
        AssertDiagonal(turn * dense * turn.Transpose(), values, 1e-13 * scale);
    });

    private static (DenseRows Riders, int[] Rows) Identity(int n)
    {
        DenseRows riders = new(n, n);
        for (int r = 0; r < n; r++)
        {
            riders[r, r] = 1;
        }

        return (riders, [.. Enumerable.Range(0, n)]);
    }

    private static Matrix<double> Dense(DenseRows rows) => Matrix<double>.Build.Dense(rows.RowCount, rows.ColumnCount, (r, c) => rows[r, c]);

    private static void AssertDiagonal(Matrix<double> actual, double[] expected, double tolerance) =>
        Assert.True((actual - Matrix<double>.Build.DenseOfDiagonalArray(expected)).Enumerate().Max(Math.Abs) <= tolerance, actual.ToString("G17", CultureInfo.InvariantCulture));
}
