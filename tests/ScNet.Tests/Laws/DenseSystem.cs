using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace ScNet.Tests.Laws;

/// <summary>Linear equations collected one by one and solved densely by singular values.</summary>
internal sealed class DenseSystem
{
    private const double RankTolerance = 1e-10;

    private readonly List<((int Variable, double Factor)[] Terms, double RightHandSide)> _equations = [];
    private int _variableCount;

    /// <summary>A new unknown.</summary>
    public int Variable() => _variableCount++;

    /// <summary>An array of new unknowns.</summary>
    public int[] Variables(int count) => [.. Enumerable.Range(0, count).Select(_ => Variable())];

    /// <summary>Adds the equation: the sum of the terms is the right-hand side.</summary>
    public void Require(double rightHandSide, params IEnumerable<(int Variable, double Factor)> terms) =>
        _equations.Add(([.. terms], rightHandSide));

    /// <summary>A basis of the solutions of the homogeneous equations, one vector per element.</summary>
    public Vector<double>[] NullSpace()
    {
        Svd<double> svd = Decompose(out _);
        int rank = Rank(svd);
        return [.. Enumerable.Range(rank, _variableCount - rank).Select(i => svd.VT.Row(i))];
    }

    /// <summary>The shortest solution; null where the equations contradict each other.</summary>
    public Vector<double>? Solve()
    {
        Svd<double> svd = Decompose(out Matrix<double> matrix);
        Vector<double> rightHandSide = Vector<double>.Build.Dense(matrix.RowCount, i => i < _equations.Count ? _equations[i].RightHandSide : 0);
        Vector<double> solution = Vector<double>.Build.Dense(_variableCount);
        for (int i = 0; i < Rank(svd); i++)
        {
            solution += svd.VT.Row(i) * (svd.U.Column(i).DotProduct(rightHandSide) / svd.S[i]);
        }

        return ((matrix * solution) - rightHandSide).L2Norm() < 1e-8 ? solution : null;
    }

    private static int Rank(Svd<double> svd) => svd.S.Count(s => s > RankTolerance * svd.S[0]);

    // Rows of zeros make the matrix at least square, so that V is complete.
    private Svd<double> Decompose(out Matrix<double> matrix)
    {
        matrix = Matrix<double>.Build.Dense(Math.Max(_equations.Count, _variableCount), _variableCount);
        for (int row = 0; row < _equations.Count; row++)
        {
            foreach ((int variable, double factor) in _equations[row].Terms)
            {
                matrix[row, variable] += factor;
            }
        }

        return matrix.Svd();
    }
}
