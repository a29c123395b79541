using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace ScNet.Numerics;

/// <summary>An orthonormal basis of the space that weighted directions span; their rank may be deficient.</summary>
/// <remarks>Cost: rows · columns² for a thin QR factorisation, columns³ for the singular values of its triangle.</remarks>
internal sealed class DirectionBasis
{
    // Directions whose share falls below this fraction of the largest are combinations that move nothing.
    private const double RankTolerance = 1e-13;

    private readonly Matrix<double> _orthonormal;
    private readonly Matrix<double> _toDirections;

    private DirectionBasis(Matrix<double> orthonormal, Matrix<double> toDirections, Matrix<double>? unmoved)
    {
        _orthonormal = orthonormal;
        _toDirections = toDirections;
        Unmoved = unmoved;
    }

    /// <summary>The combinations of directions that have no part in the space, one column each; null where there are none.</summary>
    public Matrix<double>? Unmoved { get; }

    /// <summary>Makes the basis.</summary>
    /// <param name="directions">One column per direction.</param>
    public static DirectionBasis Of(Matrix<double> directions)
    {
        // equal column lengths, so that the rank does not depend on units
        int columns = directions.ColumnCount;
        Vector<double> length = directions.ColumnNorms(2).Map(n => n > 0 ? n : 1);
        Matrix<double> scaled = directions * Matrix<double>.Build.DiagonalOfDiagonalVector(1 / length);
        if (scaled.RowCount < columns)
        {
            scaled = scaled.Stack(Matrix<double>.Build.Dense(columns - scaled.RowCount, columns));
        }

        QR<double> qr = scaled.QR(QRMethod.Thin);
        Svd<double> svd = qr.R.Svd(computeVectors: true);
        int rank = svd.S.Count(s => s > RankTolerance * svd.S[0]);
        Matrix<double> right = Matrix<double>.Build.DiagonalOfDiagonalVector(1 / length) * svd.VT.Transpose();
        Matrix<double>? unmoved = rank < columns ? right.SubMatrix(0, columns, rank, columns - rank) : null;
        Matrix<double> orthonormal = qr.Q.SubMatrix(0, directions.RowCount, 0, columns);
        if (rank == 0)
        {
            return new DirectionBasis(orthonormal, Matrix<double>.Build.Dense(columns, columns), unmoved);
        }

        Matrix<double> moved = right.SubMatrix(0, columns, 0, rank)
            * Matrix<double>.Build.DiagonalOfDiagonalVector(1 / svd.S.SubVector(0, rank));
        return new DirectionBasis(orthonormal * svd.U.SubMatrix(0, columns, 0, rank), moved, unmoved);
    }

    /// <summary>The amount of each direction that a solution in the basis amounts to.</summary>
    /// <param name="solve">Gives the coordinates in the basis, whose vectors are the columns it is given.</param>
    public double[] Amounts(Func<Matrix<double>, Vector<double>> solve) => (_toDirections * solve(_orthonormal)).ToArray();
}
