using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The exponential of a dense matrix by scaling, a rational approximation of degree 13 and squaring
/// (N. J. Higham, SIAM J. Matrix Anal. Appl. 26, 2005; coefficients and threshold from memory).
/// </summary>
internal static class MatrixExponential
{
    private const double LargestNorm = 5.371920351148152;

    private static readonly double[] s_coefficients =
    [
        64764752532480000, 32382376266240000, 7771770303897600, 1187353796428800, 129060195264000, 10559470521600,
        670442572800, 33522128640, 1323241920, 40840800, 960960, 16380, 182, 1,
    ];

    public static Matrix<double> Of(Matrix<double> matrix)
    {
        double norm = matrix.L1Norm();
        int squarings = norm > LargestNorm ? (int)Math.Ceiling(Math.Log2(norm / LargestNorm)) : 0;
        Matrix<double> a = matrix * Math.ScaleB(1, -squarings), one = Matrix<double>.Build.DenseIdentity(a.RowCount);
        Matrix<double> odd = one * s_coefficients[13], even = one * s_coefficients[12], square = a * a;
        for (int k = 11; k >= 1; k -= 2)
        {
            odd = (odd * square) + (one * s_coefficients[k]);
            even = (even * square) + (one * s_coefficients[k - 1]);
        }

        odd = a * odd;
        Matrix<double> result = (even - odd).Solve(even + odd);
        for (int k = 0; k < squarings; k++)
        {
            result *= result;
        }

        return result;
    }
}
