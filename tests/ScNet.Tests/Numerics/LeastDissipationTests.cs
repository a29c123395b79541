using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>The sparse solver against MathNet's dense factorisations, and where columns depend on each other.</summary>
public sealed class LeastDissipationTests
{
    private const double Tolerance = 1e-11;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void The_mixture_of_random_columns_is_the_one_that_normal_equations_give(int seed)
    {
        Random random = new(seed);
        for (int round = 0; round < 200; round++)
        {
            int columns = random.Next(1, 25), rows = columns + random.Next(0, 30);
            Matrix<double> matrix = Matrix<double>.Build.Dense(rows, columns, (r, c) => r == c ? 1 + random.NextDouble() : random.Next(3) > 0 ? 0 : random.Next(-3, 4));
            double[] delivered = [.. Enumerable.Range(0, columns).Select(c => c == 0 ? 1.0 : random.Next(2))];
            if (matrix.ConditionNumber() > 1e3)
            {
                continue;
            }

            Vector<double> d = Vector<double>.Build.Dense(delivered);
            Vector<double> expected = matrix.TransposeThisAndMultiply(matrix).Solve(d);
            expected /= expected * d;
            AssertNear(expected, LeastDissipation.Of(Columns(matrix)).Amounts(delivered));
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(500)]
    public void Columns_that_all_pass_one_row_share_as_conductances_in_parallel_do(int count)
    {
        // column k: a row of its own of root k + 1, and one row that all share
        SparseVector[] columns = [.. Enumerable.Range(0, count).Select(k => SparseVector.Of([0, k + 1], [2, Math.Sqrt(k + 1)]))];
        double[] amounts = LeastDissipation.Of(columns).Amounts([.. Enumerable.Repeat(1.0, count)]);
        double harmonic = Enumerable.Range(1, count).Sum(k => 1.0 / k);
        AssertNear(Vector<double>.Build.Dense(count, k => 1 / ((k + 1) * harmonic)), amounts);
    }

    [Fact]
    public void A_combination_that_dissipates_nothing_is_told_apart_and_left_out()
    {
        SparseVector[] columns =
        [
            SparseVector.Of([0, 1], [1, 2]),
            SparseVector.Of([1, 2], [3, -1]),
            SparseVector.Of([0, 1, 2], [2, 13, -3]),
            default,
        ];
        LeastDissipation mixture = LeastDissipation.Of(columns);
        List<SparseVector> unseen = mixture.Unseen();
        Assert.Equal(2, unseen.Count);
        Assert.All(unseen, u =>
        {
            double[] sum = new double[3];
            for (int k = 0; k < columns.Length; k++)
            {
                for (int r = 0; r < 3; r++)
                {
                    sum[r] += u[k] * columns[k][r];
                }
            }

            Assert.All(sum, s => Assert.InRange(Math.Abs(s), 0, 1e-12));
            Assert.False(u.IsZero);
        });
        double[] amounts = mixture.Amounts([1, 0, 2, 0]);
        Assert.InRange(amounts[0] + (2 * amounts[2]), 1 - 1e-12, 1 + 1e-12);
    }

    [Fact]
    public void Weights_many_decades_apart_keep_their_shares()
    {
        // two ways of 1e-6 and 1e6 ohms: the shares are in the inverse proportion
        double[] amounts = LeastDissipation.Of([SparseVector.Of([0], [1e-3]), SparseVector.Of([1], [1e3])]).Amounts([1, 1]);
        Assert.InRange(amounts[1], 1e-12 * (1 - 1e-9), 1e-12 * (1 + 1e-9));
        Assert.InRange(amounts[0], 1 - 2e-12, 1);
    }

    [Fact]
    public void The_order_of_a_chain_keeps_its_triangle_a_band()
    {
        int[] position = FillOrder.Of(50, Enumerable.Range(0, 49).Select(k => new[] { k, k + 1 }));
        Assert.Equal(Enumerable.Range(0, 50), position.Order());

        // a column that is taken before both its neighbours would join them; only the last one may meet two later ones
        int joined = Enumerable.Range(1, 48).Count(k => position[k] < position[k - 1] && position[k] < position[k + 1]);
        Assert.Equal(0, joined);
    }

    [Fact]
    public void Thin_columns_span_what_the_first_ones_did()
    {
        SparseVector[] columns = [.. Enumerable.Range(0, 40).Select(k => SparseVector.Of([0, 1, k + 2], [1, -2, k + 1]))];
        ThinColumns thin = ThinColumns.Of(columns);
        Assert.True(thin.Columns.Count(c => c[0] != 0) <= 5);
        Random random = new(7);
        double[] amounts = [.. Enumerable.Range(0, 40).Select(_ => random.NextDouble() - 0.5)], first = [.. amounts];
        thin.ToFirst(first);
        for (int row = 0; row < 42; row++)
        {
            double expected = columns.Select((c, k) => first[k] * c[row]).Sum(), actual = thin.Columns.Select((c, k) => amounts[k] * c[row]).Sum();
            Assert.InRange(actual - expected, -1e-12, 1e-12);
        }

        double[] delivered = [.. Enumerable.Range(0, 40).Select(k => (double)(k % 3))];
        Assert.Equal(
            first.Zip(delivered, (a, d) => a * d).Sum(), thin.Row(delivered).Zip(amounts, (d, a) => d * a).Sum(), 12);
    }

    private static SparseVector[] Columns(Matrix<double> matrix) => [.. matrix.EnumerateColumns().Select(c => SparseVector.OfDense(c.ToArray()))];

    private static void AssertNear(Vector<double> expected, double[] actual)
    {
        double scale = expected.AbsoluteMaximum();
        for (int k = 0; k < actual.Length; k++)
        {
            Assert.True(Math.Abs(expected[k] - actual[k]) <= Tolerance * scale, $"amount {k}: expected {expected[k]:R}, but got {actual[k]:R}");
        }
    }
}
