using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Orthogonal transformations of rows against singular values of MathNet and against exact small cases.</summary>
[Trait("Kind", "Law")]
public sealed class DenseRowsTests
{
    private static readonly Gen<double> s_entry = Gen.Int[-8, 8].Select(n => 0.125 * n);

    private static readonly Gen<double[,]> s_matrices =
        from rows in Gen.Int[1, 9]
        from columns in Gen.Int[1, 9]
        from rank in Gen.Int[1, Math.Min(rows, columns)]
        from left in s_entry.Array[rows * rank]
        from right in s_entry.Array[rank * columns]
        select Product(left, right, rows, rank, columns);

    [Fact]
    public void Orthogonal_rows_have_the_singular_values_as_lengths() => s_matrices.Holds(values =>
    {
        (DenseRows rows, int width) = WithIdentity(values);
        rows.Orthogonalise(0, 0, width);
        Matrix<double> result = Part(rows, 0, width);
        double[] expected = [.. Matrix<double>.Build.DenseOfArray(values).Svd(computeVectors: false).S];
        double[] actual = [.. result.EnumerateRows().Select(r => r.L2Norm()).OrderDescending()];
        for (int k = 0; k < Math.Max(expected.Length, actual.Length); k++)
        {
            Assert.Equal(k < expected.Length ? expected[k] : 0, k < actual.Length ? actual[k] : 0, 1e-13 * (1 + expected[0]));
        }

        Matrix<double> products = result * result.Transpose();
        for (int p = 0; p < rows.RowCount; p++)
        {
            for (int q = 0; q < p; q++)
            {
                Assert.True(Math.Abs(products[p, q]) <= 1e-14 * width * Math.Sqrt(products[p, p] * products[q, q]) + 1e-300, $"rows {p} and {q}");
            }
        }
    });

    [Fact]
    public void Columns_that_ride_along_are_turned_the_same_way() => Gen.Select(s_matrices, Gen.Int[0, 9]).Holds((values, count) =>
    {
        // an identity beside the matrix becomes the transformation itself
        (DenseRows rows, int width) = WithIdentity(values);
        int[] order = rows.Triangularise(Math.Min(count, width), 1e-12);
        rows.Orthogonalise(order.Length, 0, width);
        Matrix<double> turn = Part(rows, width, rows.RowCount);
        Assert.True((turn.TransposeThisAndMultiply(turn) - Matrix<double>.Build.DenseIdentity(rows.RowCount)).InfinityNorm() < 1e-13);
        Matrix<double> expected = turn * Matrix<double>.Build.DenseOfArray(values);
        Assert.True((expected - Part(rows, 0, width)).InfinityNorm() < 2e-13);
    });

    [Fact]
    public void Eliminated_columns_form_a_triangle_of_full_rank() => Gen.Select(s_matrices, Gen.Int[1, 9]).Holds((values, wanted) =>
    {
        (DenseRows rows, int width) = WithIdentity(values);
        int count = Math.Min(wanted, width);
        int[] order = rows.Triangularise(count, 1e-10);
        Assert.Equal(Matrix<double>.Build.DenseOfArray(values).SubMatrix(0, rows.RowCount, 0, count).Svd(false).S.Count(s => s > 1e-10), order.Length);
        Assert.Equal(order.Length, order.Distinct().Count());
        for (int k = 0; k < order.Length; k++)
        {
            Assert.NotEqual(0, rows[k, order[k]]);
            for (int r = k + 1; r < rows.RowCount; r++)
            {
                Assert.Equal(0, rows[r, order[k]], 0.0);
            }
        }

        // what was left out depends on the others: nothing of it remains below the triangle
        for (int r = order.Length; r < rows.RowCount; r++)
        {
            for (int c = 0; c < count; c++)
            {
                Assert.Equal(0, rows[r, c], 1e-9);
            }
        }
    }, count: 500);

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    [InlineData(1e-13)]
    public void Small_singular_values_of_graded_rows_keep_their_digits(double e)
    {
        // rows (1, 1) and e·(1, -2): the product of the singular values is the determinant 3e, the sum of squares 2 + 5e²
        DenseRows rows = Rows(new double[,] { { 1, 1 }, { e, -2 * e } });
        rows.Orthogonalise(0, 0, 2);
        AssertPair(rows, 2 + (5 * e * e), 9 * e * e);
    }

    [Theory]
    [InlineData(1e-3)]
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    [InlineData(1e-13)]
    public void Small_singular_values_of_graded_columns_keep_their_digits(double e)
    {
        // columns (3, 1) and e·(1, 2): determinant 5e, sum of squares 10 + 5e²
        DenseRows rows = Rows(new double[,] { { 3, e }, { 1, 2 * e } });
        rows.Orthogonalise(0, 0, 2);
        AssertPair(rows, 10 + (5 * e * e), 25 * e * e);
    }

    [Fact]
    public void Grades_of_rows_and_columns_together_keep_their_digits() =>
        Gen.Select(Gen.Int[-3, 3].Array[16], Gen.Int[0, 20].Array[4], Gen.Int[0, 20].Array[4]).Holds((entries, rowGrades, columnGrades) =>
        {
            // integers times powers of two: the product of the singular values is the determinant, known exactly
            Matrix<double> x = Matrix<double>.Build.Dense(4, 4, (r, c) => entries[(4 * r) + c]);
            double determinant = Math.Abs(Math.Round(x.Determinant()));
            if (determinant > 0)
            {
                DenseRows rows = new(4, 4);
                for (int r = 0; r < 4; r++)
                {
                    for (int c = 0; c < 4; c++)
                    {
                        rows[r, c] = Math.ScaleB(x[r, c], -rowGrades[r] - columnGrades[c]);
                    }
                }

                rows.Orthogonalise(0, 0, 4);
                double product = Part(rows, 0, 4).EnumerateRows().Select(r => r.L2Norm()).Aggregate((p, q) => p * q);
                Assert.Equal(1, product / Math.ScaleB(determinant, -rowGrades.Sum() - columnGrades.Sum()), 1e-12);
            }
        }, count: 3000);

    [Fact]
    public void Dependent_rows_end_as_rows_of_zeros()
    {
        DenseRows rows = Rows(new double[,] { { 1, 2, 3 }, { 2, 4, 6 }, { -1, -2, -3 }, { 0, 1, 0 } });
        rows.Orthogonalise(0, 0, 3);
        Assert.Equal(2, Part(rows, 0, 3).EnumerateRows().Count(r => r.L2Norm() == 0));
    }

    [Fact]
    public void Rows_of_zeros_and_a_single_row_stay_as_they_are()
    {
        DenseRows zeros = new(3, 2);
        zeros.Orthogonalise(0, 0, 2);
        Assert.Empty(zeros.Triangularise(2, 0));
        Assert.Equal(0, Part(zeros, 0, 2).FrobeniusNorm());
        DenseRows single = Rows(new double[,] { { 3, -4 } });
        single.Orthogonalise(0, 0, 2);
        Assert.Equal([3, -4], single.Row(0).ToArray());
        Assert.Equal([1], single.Triangularise(2, 0));
        DenseRows none = new(0, 4);
        none.Orthogonalise(0, 0, 4);
        Assert.Empty(none.Triangularise(4, 0));
    }

    [Fact]
    public void Many_rows_are_orthogonalised_too()
    {
        // beyond what fits the stack
        Random random = new(5);
        double[,] values = new double[300, 20];
        for (int r = 0; r < 300; r++)
        {
            for (int c = 0; c < 20; c++)
            {
                values[r, c] = random.NextDouble() - 0.5;
            }
        }

        DenseRows rows = Rows(values);
        rows.Orthogonalise(0, 0, 20);
        double[] expected = [.. Matrix<double>.Build.DenseOfArray(values).Svd(false).S];
        double[] actual = [.. Part(rows, 0, 20).EnumerateRows().Select(r => r.L2Norm()).OrderDescending().Take(20)];
        for (int k = 0; k < 20; k++)
        {
            Assert.Equal(expected[k], actual[k], 1e-12);
        }
    }

    // the squares of the lengths are the roots of s² - sum·s + product
    private static void AssertPair(DenseRows rows, double sum, double product)
    {
        double[] squares = [.. Part(rows, 0, 2).EnumerateRows().Select(r => r.DotProduct(r)).OrderDescending()];
        double large = 0.5 * (sum + Math.Sqrt((sum * sum) - (4 * product)));
        Assert.Equal(1, squares[0] / large, 1e-14);
        Assert.Equal(1, squares[1] / (product / large), 1e-13);
    }

    private static double[,] Product(double[] left, double[] right, int rows, int rank, int columns)
    {
        double[,] values = new double[rows, columns];
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                for (int k = 0; k < rank; k++)
                {
                    values[r, c] += left[(r * rank) + k] * right[(k * columns) + c];
                }
            }
        }

        return values;
    }

    private static DenseRows Rows(double[,] values)
    {
        DenseRows rows = new(values.GetLength(0), values.GetLength(1));
        for (int r = 0; r < rows.RowCount; r++)
        {
            for (int c = 0; c < rows.ColumnCount; c++)
            {
                rows[r, c] = values[r, c];
            }
        }

        return rows;
    }

    private static (DenseRows Rows, int Width) WithIdentity(double[,] values)
    {
        int height = values.GetLength(0), width = values.GetLength(1);
        double[,] wide = new double[height, width + height];
        for (int r = 0; r < height; r++)
        {
            for (int c = 0; c < width; c++)
            {
                wide[r, c] = values[r, c];
            }

            wide[r, width + r] = 1;
        }

        return (Rows(wide), width);
    }

    private static Matrix<double> Part(DenseRows rows, int firstColumn, int count) =>
        Matrix<double>.Build.Dense(rows.RowCount, count, (r, c) => rows[r, firstColumn + c]);
}
