using System.Numerics;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;

namespace ScNet.Tests.Numerics;

/// <summary>Eigenvalues against the definition, and where they are known.</summary>
[Trait("Kind", "Law")]
public sealed class EigenvaluesTests
{
    [Fact]
    public void Every_eigenvalue_of_random_matrices_makes_them_singular() => Gen.Double[-1, 1].Array[1, 64].Holds(
        values =>
        {
            int n = (int)Math.Sqrt(values.Length);
            double[] matrix = values[..(n * n)];
            Matrix<Complex> original = Matrix<Complex>.Build.Dense(n, n, (r, c) => matrix[(r * n) + c]);
            Complex trace = original.Trace();
            var actual = new Complex[n];
            Assert.True(Eigenvalues.TryFind(matrix, n, actual));
            foreach (Complex value in actual)
            {
                // an eigenvalue of a matrix that differs by rounding, however sensitive it is
                double nearest = (original - (value * Matrix<Complex>.Build.DenseIdentity(n))).Svd().S[^1].Real;
                Assert.True(nearest < 1e-13 * n, $"{value} is off by {nearest}");
            }

            Assert.Equal(trace.Real, actual.Aggregate((a, b) => a + b).Real, 1e-12);
        },
        500);

    /// <summary>A cyclic permutation has the roots of one, on which plain shifts make no progress.</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(8)]
    public void A_cycle_has_the_roots_of_one(int n)
    {
        var matrix = new double[n * n];
        for (int k = 0; k < n; k++)
        {
            matrix[(k * n) + ((k + 1) % n)] = 1;
        }

        var values = new Complex[n];
        Assert.True(Eigenvalues.TryFind(matrix, n, values));
        Assert.All(values, v => Assert.Equal(0, Complex.Abs(Complex.Pow(v, n) - 1), 1e-12));
        Assert.Equal(n, values.Select(v => Math.Round(v.Phase, 6) % Math.Round(Math.PI, 6) == 0 ? v.Real > 0 ? 0 : 9 : Math.Round(v.Phase, 6)).Distinct().Count());
    }

    [Fact]
    public void Eigenvalues_on_the_diagonal_of_a_triangle_are_read_off()
    {
        double[] matrix = [3, 1e6, -2, 0, 1e-9, 5, 0, 0, -7];
        var values = new Complex[3];
        Assert.True(Eigenvalues.TryFind(matrix, 3, values));
        Assert.Equal([-7, 1e-9, 3], values.Select(v => v.Real).Order());
    }
}
