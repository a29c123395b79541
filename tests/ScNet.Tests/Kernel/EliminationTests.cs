using System.Numerics;
using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

[Trait("Kind", "Law")]
public class EliminationTests
{
    /// <summary>A matrix with its columns in the three kinds.</summary>
    private sealed record Case(long[][] Rows, int Eager, int Deferred, int Carried)
    {
        public int Columns => Eager + Deferred + Carried;

        public override string ToString() => $"{Eager}+{Deferred}+{Carried}: {string.Join(" ", Rows.Select(r => $"[{string.Join(",", r)}]"))}";
    }

    private static readonly Case s_before = new([[2, 1, 0, 3, 1], [1, 0, 2, 0, 1], [3, 1, 2, 0, 0], [0, 2, 0, 5, 1]], 3, 1, 1);

    private static Gen<Case> Cases(Gen<long> entry) =>
        Gen.Select(Gen.Int[0, 7], Gen.Int[0, 2], Gen.Int[0, 2]).SelectMany((eager, deferred, carried) =>
        {
            // most entries are zero; some rows repeat earlier ones, in part or whole; some columns stay empty
            Gen<long> sparse = Gen.Frequency((2, Gen.Const(0L)), (1, entry));
            return Gen.Select(
                sparse.Array[eager + deferred + carried].Array[0, 9],
                Gen.Int[-3, 8].Array[9],
                Gen.Int[-3, 8],
                (rows, copies, empty) =>
                {
                    for (int r = 0; r < rows.Length; r++)
                    {
                        if (copies[r] >= 0 && copies[r] < r)
                        {
                            rows[r] = [.. rows[copies[r]]];
                        }

                        if (empty >= 0 && empty < rows[r].Length)
                        {
                            rows[r][empty] = 0;
                        }
                    }

                    return new Case(rows, eager, deferred, carried);
                });
        });

    private static Gen<long> Small => Gen.Long[-4, 4];

    private static Gen<long> Hard => Gen.Frequency(
        (2, Gen.Long[-9, 9]), (1, Gen.Long[long.MaxValue - 9, long.MaxValue]), (1, Gen.Long[long.MinValue, long.MinValue + 9]), (1, Gen.Long));

    private static SparseRows<T> Rows<T>(Case c)
        where T : struct, IBinaryInteger<T>
    {
        SparseRows<T> rows = new(1, 2);
        foreach (long[] values in c.Rows)
        {
            int row = rows.AddRow();
            for (int column = 0; column < values.Length; column++)
            {
                if (values[column] != 0)
                {
                    rows.Append(row, column, T.CreateChecked(values[column]));
                }
            }
        }

        return rows;
    }

    private static Fraction[][] Part(Case c, int from, int to) => [.. c.Rows.Select(r => r[from..to].Select(v => new Fraction(v)).ToArray())];

    private static Fraction[] Reduced<T>(Elimination<T> elimination, int row, int columns)
        where T : struct, IBinaryInteger<T>
    {
        var dense = new Fraction[columns];
        ReadOnlySpan<int> own = elimination.Rows.Columns(row);
        ReadOnlySpan<T> values = elimination.Rows.Values(row);
        for (int e = 0; e < own.Length; e++)
        {
            dense[own[e]] = new Fraction(BigInteger.CreateChecked(values[e]));
        }

        return dense;
    }

    private static Fraction ToFraction<T>(Rational<T> value)
        where T : struct, IBinaryInteger<T> => new(BigInteger.CreateChecked(value.Numerator), BigInteger.CreateChecked(value.Denominator));

    private static void Check<T>(Case c)
        where T : struct, IBinaryInteger<T>
    {
        // on a workspace that held another matrix
        Elimination<T> elimination = new();
        Assert.True(elimination.TryRun(Rows<T>(s_before), s_before.Eager, s_before.Deferred));
        Integers.Demand(elimination.TryRun(Rows<T>(c), c.Eager, c.Deferred));
        CheckPivots(c, elimination);
        CheckCarryBack(c, elimination);
        CheckSubstitution(c, elimination);
        CheckCombinations(c, elimination);
    }

    private static void CheckPivots<T>(Case c, Elimination<T> elimination)
        where T : struct, IBinaryInteger<T>
    {
        Assert.Equal(DenseFractions.Rank(Part(c, 0, c.Eager)), elimination.Pivots.Count(p => p.Column < c.Eager));
        Assert.Equal(DenseFractions.Rank(Part(c, 0, c.Eager + c.Deferred)), elimination.Pivots.Count);
        Assert.Equal(elimination.Pivots.Count, elimination.Pivots.Select(p => p.Row).Distinct().Count());
        Assert.Equal(elimination.Pivots.Count, elimination.Pivots.Select(p => p.Column).Distinct().Count());
        Assert.Equal(elimination.Pivots.OrderBy(p => p.Column >= c.Eager), elimination.Pivots);
        for (int row = 0; row < c.Rows.Length; row++)
        {
            Assert.Equal(elimination.Pivots.Any(p => p.Row == row), elimination.IsPivotRow(row));
            if (!elimination.IsPivotRow(row))
            {
                Assert.All(Reduced(elimination, row, c.Columns)[..(c.Eager + c.Deferred)], v => Assert.True(v.IsZero));
            }
        }

        for (int column = 0; column < c.Eager + c.Deferred; column++)
        {
            Assert.Equal(elimination.Pivots.Any(p => p.Column == column), elimination.IsPivotColumn(column));
        }

        // a pivot row keeps no column that was pivoted before it
        for (int k = 0; k < elimination.Pivots.Count; k++)
        {
            Fraction[] row = Reduced(elimination, elimination.Pivots[k].Row, c.Columns);
            Assert.False(row[elimination.Pivots[k].Column].IsZero);
            Assert.All(elimination.Pivots.Take(k), p => Assert.True(row[p.Column].IsZero));
        }
    }

    // Every reduced row, carried back, is the same combination of the original rows.
    private static void CheckCarryBack<T>(Case c, Elimination<T> elimination)
        where T : struct, IBinaryInteger<T>
    {
        Fraction[][] original = Part(c, 0, c.Columns);
        List<Fraction[]> combinations = [];
        for (int row = 0; row < c.Rows.Length; row++)
        {
            var coefficients = new Rational<T>[c.Rows.Length];
            coefficients[row] = Rational<T>.One;
            elimination.CarryBack(coefficients);
            CheckOrigins(elimination, row, coefficients);
            Fraction[] weights = [.. coefficients.Select(ToFraction)];
            combinations.Add(weights);
            Fraction[] sum = [.. Enumerable.Range(0, c.Columns).Select(column =>
                original.Select((r, k) => r[column] * weights[k]).Aggregate(Fraction.Zero, (a, b) => a + b))];
            Assert.Equal(Reduced(elimination, row, c.Columns), sum);
        }

        Assert.Equal(c.Rows.Length, DenseFractions.Rank([.. combinations]));
    }

    // The same for a row alone, and its last step.
    private static void CheckOrigins<T>(Elimination<T> elimination, int row, Rational<T>[] coefficients)
        where T : struct, IBinaryInteger<T>
    {
        RowOrigins<T> origins = new(elimination);
        List<(int Row, Rational<T> Weight)> found = origins.Of(row, Rational<T>.One);
        Assert.Equal(coefficients.Index().Where(c => !c.Item.IsZero), found.OrderBy(f => f.Row));
        RowOperation<T>[] steps = [.. elimination.Operations.Where(o => o.Target == row)];
        Assert.Equal(steps.Length > 0, origins.TryGetLast(row, out RowOperation<T> last));
        Assert.Equal(steps.LastOrDefault(), last);
        Assert.All(steps, s => Assert.True(s.Scale > T.Zero && s.Content > T.Zero));
    }

    // The combination of original rows that leaves one deferred pivot column alone of all pivot columns.
    private static void CheckCombinations<T>(Case c, Elimination<T> elimination)
        where T : struct, IBinaryInteger<T>
    {
        foreach (int column in elimination.Pivots.Select(p => p.Column).Where(column => column >= c.Eager))
        {
            Rational<T>[] coefficients = [.. Enumerable.Repeat(Rational<T>.One, c.Rows.Length)];
            Integers.Demand(elimination.TryCombine(column, coefficients));
            foreach ((_, int other) in elimination.Pivots)
            {
                Fraction sum = c.Rows.Select((r, k) => new Fraction(r[other]) * ToFraction(coefficients[k])).Aggregate(Fraction.Zero, (a, b) => a + b);
                Assert.Equal(other == column ? Fraction.One : Fraction.Zero, sum);
            }
        }
    }

    // With the other columns given, every row that is not contradictory holds for the solution.
    private static void CheckSubstitution<T>(Case c, Elimination<T> elimination)
        where T : struct, IBinaryInteger<T>
    {
        for (int free = 0; free < c.Columns; free++)
        {
            if (free < c.Eager + c.Deferred && elimination.IsPivotColumn(free))
            {
                continue;
            }

            var x = new Rational<T>[c.Columns];
            x[free] = Rational<T>.One;
            elimination.SubstituteBack(x);
            Assert.Equal(Fraction.One, ToFraction(x[free]));
            bool isContradictory = Enumerable.Range(0, c.Rows.Length).Any(r =>
                !elimination.IsPivotRow(r) && !Reduced(elimination, r, c.Columns)[free].IsZero);
            bool holds = c.Rows.All(r => r.Select((v, k) => new Fraction(v) * ToFraction(x[k])).Aggregate(Fraction.Zero, (a, b) => a + b).IsZero);
            Assert.Equal(!isContradictory, holds);
        }
    }

    [Fact]
    public void Small_matrices_on_machine_integers_agree_with_dense_fractions() => Cases(Small).Holds(Check<long>, count: 3000, print: c => c.ToString());

    [Fact]
    public void Any_matrix_on_big_integers_agrees_with_dense_fractions() => Cases(Hard).Holds(Check<BigInteger>, count: 1500, print: c => c.ToString());

    [Fact]
    public void Any_matrix_on_machine_integers_is_right_or_throws_an_overflow()
    {
        int right = 0, overflown = 0;
        Cases(Hard).Holds(
            c =>
            {
                try
                {
                    Check<long>(c);
                    Interlocked.Increment(ref right);
                }
                catch (OverflowException)
                {
                    Interlocked.Increment(ref overflown);
                }
            },
            count: 3000,
            print: c => c.ToString());
        Assert.True(right > 100 && overflown > 100, $"{right} right, {overflown} overflown");
    }

    [Fact]
    public void Thirty_two_bit_integers_overflow_rather_than_wrap()
    {
        Case c = new([[3, 2], [2, int.MaxValue]], 2, 0, 0);
        Assert.Throws<OverflowException>(() => Elimination<int>.Run(Rows<int>(c), 2, 0));
        Check<long>(c);
    }

    [Fact]
    public void Content_is_removed_so_that_repeated_doubling_stays_small()
    {
        // without dividing by the common content the entries of this chain would grow to 6^40
        const int n = 40;
        long[][] rows = [.. Enumerable.Range(0, n).Select(r =>
        {
            var row = new long[n + 1];
            row[r] = 6;
            row[r + 1] = -6;
            return row;
        })];
        Check<long>(new Case(rows, n, 0, 1));
    }

    // a ring with a prime of its own for each row: whatever is combined with whatever, the primes have to be divided out again
    [Fact]
    public void Content_of_unlike_rows_is_removed_too()
    {
        long[] primes = [101, 103, 107, 109, 113, 127, 131, 137, 139, 149, 151, 157, 163, 167, 173, 179, 181, 191, 193, 197];
        long[][] rows = [.. primes.Select((p, r) => Enumerable.Range(0, primes.Length + 1).Select(c => c == r || c == (r + 1) % primes.Length || (c == primes.Length && r == 0) ? p : 0).ToArray())];
        Check<long>(new Case(rows, primes.Length, 0, 1));
    }

    [Fact]
    public void The_smallest_machine_integer_is_never_negated_silently()
    {
        Case c = new([[long.MinValue, 1], [-1, long.MinValue], [long.MinValue, long.MinValue]], 2, 0, 0);
        Assert.Throws<OverflowException>(() => Elimination<long>.Run(Rows<long>(c), 2, 0));
        Check<BigInteger>(c);
    }

    [Fact]
    public void Small_matrices_on_32_bits_agree_with_dense_fractions() => Cases(Small).Holds(Check<int>, count: 500, print: c => c.ToString());

    // an arrow: to begin with its tip would fill the whole matrix
    [Fact]
    public void A_pivot_is_taken_where_little_fills()
    {
        const int n = 60;
        long[][] rows = [.. Enumerable.Range(0, n).Select(r => Enumerable.Range(0, n).Select(c => r == 0 ? 1L : c == 0 ? 1 : c == r ? 2 : 0).ToArray())];
        Case c = new(rows, n, 0, 0);
        Elimination<long> elimination = Elimination<long>.Run(Rows<long>(c), n, 0);
        Assert.Equal(n, elimination.Pivots.Count);
        Assert.InRange(elimination.Operations.Count, n - 1, n + 1);
        Assert.InRange(Enumerable.Range(0, n).Sum(elimination.Rows.Length), 1, 3 * n);
    }

    // it has no opposite, so that nothing may be done with it
    [Theory]
    [InlineData(long.MinValue, 0)]
    [InlineData(long.MinValue, long.MinValue)]
    public void The_smallest_machine_integer_is_refused_as_it_comes_in(long first, long second) =>
        Assert.False(new Elimination<long>().TryRun(Rows<long>(new Case([[1, first, second]], 1, 0, 2)), 1, 0));

    // 6e9 · 5e9 is beyond 64 bits, but the one row is taken once from the other
    [Fact]
    public void What_pivot_and_entry_have_in_common_takes_no_room() => Check<long>(new Case([[6_000_000_000, 7], [6_000_000_000, 5_000_000_000]], 1, 0, 1));

    [Fact]
    public void An_empty_matrix_has_no_pivots() => Assert.Empty(Elimination<long>.Run(new SparseRows<long>(0, 0), 0, 0).Pivots);
}
