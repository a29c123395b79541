using MathNet.Numerics.LinearAlgebra;

namespace ScNet.Design.Sizing;

/// <summary>Speeds up the way to sizes that a convex program gives back: what the last rounds moved by tells where it leads.</summary>
/// <remarks>
/// With y the logarithms of the sizes that went in, g those of the ones that came out and r = g − y, the next ones are g − Σ θ Δg with the θ that makes
/// r − Σ θ Δr shortest, over the changes Δ between the last rounds. Source: D. G. Anderson, "Iterative procedures for nonlinear
/// integral equations", Journal of the ACM 12(4), 1965 (from memory).
/// </remarks>
internal sealed class FixedPoint
{
    private const int Depth = 5;
    private const double Independent = 1e-10;
    private const double Farthest = 1;

    private readonly List<(Vector<double> Came, Vector<double> Change)> _rounds = [];

    /// <summary>The sizes to go on with.</summary>
    /// <param name="went">What went in; null where none did.</param>
    /// <param name="came">What came out.</param>
    public double[] Next(double[]? went, double[] came)
    {
        Vector<double> reached = Logarithms(came);
        if (went is null)
        {
            return came;
        }

        Vector<double> change = reached - Logarithms(went), next = reached;
        if (_rounds.Count > 0)
        {
            // differences between neighbouring rounds, the newest first
            (Vector<double> Came, Vector<double> Change)[] all = [.. _rounds, (reached, change)];
            int count = all.Length - 1;
            Matrix<double> turns = Matrix<double>.Build.Dense(change.Count, count, (e, k) => all[count - k].Change[e] - all[count - k - 1].Change[e]);
            Matrix<double> square = turns.TransposeThisAndMultiply(turns);
            square += Independent * square.Trace() * Matrix<double>.Build.DenseIdentity(count);
            Vector<double> factors = square.Cholesky().Solve(turns.TransposeThisAndMultiply(change));
            for (int k = 0; k < count; k++)
            {
                next -= factors[k] * (all[count - k].Came - all[count - k - 1].Came);
            }

            Vector<double> step = next - reached;
            double longest = step.AbsoluteMaximum();
            next = longest > Farthest ? reached + (step * (Farthest / longest)) : next;
        }

        _rounds.Add((reached, change));
        if (_rounds.Count > Depth)
        {
            _rounds.RemoveAt(0);
        }

        return [.. next.Select(v => Math.Exp(v))];
    }

    private static Vector<double> Logarithms(double[] values) => Vector<double>.Build.DenseOfEnumerable(values.Select(v => Math.Log(v)));
}
