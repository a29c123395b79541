using System.Numerics;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>The slowest disturbance of a map, from the inverse of one minus it: what hardly decays is large there, and accurate.</summary>
internal static class SlowestDecay
{
    /// <summary>The largest magnitude 1 − 1/ν over the eigenvalues ν, and the number of periods in which it falls to 1/e.</summary>
    /// <param name="inverse">The inverse by rows, destroyed.</param>
    /// <param name="n">Its size.</param>
    public static (double Decay, double Periods) Of(Span<double> inverse, int n)
    {
        var values = new Complex[n];
        if (!Eigenvalues.TryFind(inverse, n, values))
        {
            throw new InvalidOperationException("The eigenvalues of the map over a period were not found.");
        }

        double slowest = double.NegativeInfinity;
        foreach (Complex value in values)
        {
            // twice the logarithm of the magnitude of 1 − ε, without forming that
            Complex change = Complex.One / value;
            double square = Complex.Abs(change);
            double logarithm = 0.5 * Log1P((square * square) - (2 * change.Real));
            slowest = Math.Max(slowest, logarithm);
        }

        return (Math.Exp(slowest), slowest < 0 ? -1 / slowest : double.PositiveInfinity);
    }

    // log(1 + x) without losing a small x; less than -1, which rounding could make of a state that is gone at once, is nothing left
    private static double Log1P(double x)
    {
        double sum = Math.Max(0, 1 + x);
        return sum == 1 ? x : Math.Log(sum) * (x / (sum - 1));
    }
}
