using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class EchelonFormTests
{
    private const int Columns = 5;

    private static readonly Gen<int[][]> s_matrices = Gen.Frequency((2, Gen.Const(0)), (3, Gen.Int[-3, 3])).Array[Columns].Array[0, 6];

    private static int[] Reduce(int[][] matrix, int pivotColumns, out int rank)
    {
        int[] rows = [.. matrix.SelectMany(r => r)];
        Assert.True(EchelonForm.TryReduce(rows, Columns, pivotColumns, out rank));
        return rows;
    }

    private static Fraction[][] Exact(IEnumerable<int[]> rows) => [.. rows.Select(r => r.Select(v => new Fraction(v)).ToArray())];

    [Fact]
    public void The_reduced_rows_span_the_same_space_and_stand_in_echelon() => s_matrices.Holds(
        matrix =>
        {
            int[][] reduced = [.. Reduce(matrix, Columns, out int rank).Chunk(Columns)];
            Assert.Equal(DenseFractions.Rank(Exact(matrix)), rank);
            Assert.Equal(rank, DenseFractions.Rank(Exact(matrix.Concat(reduced))));
            Assert.Equal(rank, DenseFractions.Rank(Exact(reduced)));
            int before = -1;
            for (int row = 0; row < reduced.Length; row++)
            {
                int leading = EchelonForm.Leading(reduced[row]);
                Assert.Equal(row < rank, leading >= 0);
                if (row < rank)
                {
                    Assert.True(leading > before && reduced[row][leading] > 0);
                    Assert.Equal(1, reduced.Count(r => r[leading] != 0));
                    Assert.Equal(1L, reduced[row].Aggregate(0L, (g, v) => g == 0 && v == 0 ? 0 : Integers.Gcd(g, (long)v)));
                    before = leading;
                }
            }
        },
        3000);

    [Fact]
    public void Matrices_of_one_row_space_have_one_form() => Gen.Select(s_matrices, Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[-2, 2]).Holds(
        (matrix, a, b, factor) =>
        {
            if (matrix.Length == 0 || a % matrix.Length == b % matrix.Length)
            {
                return;
            }

            int[][] other = [.. matrix.Reverse().Select(r => r.ToArray())];
            int[] target = other[a % other.Length], source = other[b % other.Length];
            for (int c = 0; c < Columns; c++)
            {
                target[c] += factor * source[c];
            }

            Assert.Equal(Reduce(matrix, Columns, out _), Reduce(other, Columns, out _));
        },
        3000);

    [Fact]
    public void Columns_that_are_carried_hold_no_leading_entry() => s_matrices.Holds(
        matrix =>
        {
            int[][] reduced = [.. Reduce(matrix, 3, out int rank).Chunk(Columns)];
            Assert.Equal(DenseFractions.Rank(Exact(matrix.Select(r => r[..3]))), rank);
            Assert.All(reduced.Skip(rank), r => Assert.True(r[0] == 0 && r[1] == 0 && r[2] == 0));
            Assert.Equal(DenseFractions.Rank(Exact(matrix)), DenseFractions.Rank(Exact(reduced)));
        },
        2000);

    [Fact]
    public void An_entry_that_does_not_fit_is_told()
    {
        int[] rows = [int.MaxValue, 2, 2, int.MaxValue];
        Assert.False(EchelonForm.TryReduce(rows, 2, 2, out _));
    }

    // 2 · [1, 505, 1009] - [2, 1, 0] is 1009 · [0, 1, 2]; times the second pivot its multiple would be beyond 32 bits
    [Fact]
    public void Content_is_removed_before_the_next_pivot()
    {
        int[] rows = [2, 1, 0, 0, 2_000_003, 7, 1, 505, 1009];
        Assert.True(EchelonForm.TryReduce(rows, 3, 3, out int rank));
        Assert.Equal(3, rank);
        Assert.Equal([1, 0, 0, 0, 1, 0, 0, 0, 1], rows);
    }

    [Fact]
    public void A_matrix_without_columns_has_rank_zero()
    {
        Assert.True(EchelonForm.TryReduce([], 0, 0, out int rank));
        Assert.Equal(0, rank);
    }

    // 60000 · 50000 is beyond 32 bits, but 60000 of the first row is taken once from the second
    [Fact]
    public void What_pivot_and_entry_have_in_common_takes_no_room()
    {
        int[] rows = [60_000, 7, 60_000, 50_000];
        Assert.True(EchelonForm.TryReduce(rows, 2, 1, out _));
        Assert.Equal([60_000, 7, 0, 1], rows);
    }

    // twice -2^30 is the least of 32 bits, which has no opposite
    [Fact]
    public void The_least_machine_integer_is_told_and_not_divided()
    {
        int[] rows = [2, 0, 1, 1, -(1 << 30), 0];
        Assert.False(EchelonForm.TryReduce(rows, 3, 2, out _));
    }
}
