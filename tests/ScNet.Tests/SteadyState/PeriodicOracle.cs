using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;
using ScNet.Analysis;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The output impedance as it would be measured: (ratio · input voltage - mean output voltage) / mean
/// output current, in the periodic state of the nodal equations. The state of a period's end depends
/// linearly on the state at its start, so the periodic one is the solution of a dense system.
/// </summary>
internal sealed class PeriodicOracle
{
    private readonly double _ratio;
    private readonly bool _isStiff;
    private readonly NodalNetwork _network;
    private readonly Matrix<double> _conserved;

    private PeriodicOracle(ModeAnalysis analysis)
    {
        _ratio = analysis.Ratio.ToDouble();
        _isStiff = analysis.Converter.Load == LoadKind.Stiff;

        // an output one volt below the ideal one
        _network = NodalNetwork.Of(analysis.Converter, analysis.Mode, _ratio - 1);
        _conserved = Conserved(_network);
    }

    public static PeriodicOracle Of(ModeAnalysis analysis) => new(analysis);

    /// <summary>Every phase by a matrix exponential.</summary>
    public double ByExponential(double frequencyHz) =>
        Measure(frequencyHz, (phase, seconds) => MatrixExponential.Of(Augmented(phase) * seconds));

    /// <summary>Every phase by a fourth-order Runge-Kutta method with steps short against the fastest time constant.</summary>
    public double ByRungeKutta(double frequencyHz, double stepsPerTimeConstant) =>
        Measure(frequencyHz, (phase, seconds) =>
        {
            Matrix<double> matrix = Augmented(phase);
            int steps = 50 + (int)(stepsPerTimeConstant * seconds * phase.A.InfinityNorm());
            return Matrix<double>.Build.DenseOfColumnVectors(Enumerable.Range(0, matrix.ColumnCount).Select(k =>
                RungeKutta.FourthOrder(
                    Vector<double>.Build.Dense(matrix.ColumnCount, i => i == k ? 1 : 0), 0, seconds, steps, (_, x) => matrix * x)[^1]));
        });

    // The state, the constant one and the integral of what is observed.
    private static Matrix<double> Augmented(NodalNetwork.PhaseEquations phase)
    {
        int n = phase.B.Count;
        Matrix<double> matrix = Matrix<double>.Build.Dense(n + 2, n + 2);
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                matrix[i, k] = phase.A[i, k];
            }

            matrix[i, n] = phase.B[i];
            matrix[n + 1, i] = phase.C[i];
        }

        matrix[n + 1, n] = phase.D;
        return matrix;
    }

    /// <summary>The projection on the w with wᵀA = 0 in every phase.</summary>
    public static Matrix<double> Conserved(NodalNetwork network)
    {
        if (network.StateCount == 0)
        {
            return Matrix<double>.Build.Dense(1, 1);
        }

        Matrix<double> all = network.Phases.Select(p => p.A).Aggregate((a, b) => a.Append(b));
        var svd = all.Svd();
        int[] free = [.. Enumerable.Range(0, network.StateCount).Where(k => svd.S[k] <= 1e-12 * network.LargestRate)];
        return Matrix<double>.Build.Dense(network.StateCount, network.StateCount, (i, j) => free.Sum(k => svd.U[i, k] * svd.U[j, k]));
    }

    private double Measure(double frequencyHz, Func<NodalNetwork.PhaseEquations, double, Matrix<double>> map)
    {
        int n = _network.StateCount;
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(n + 2);
        foreach (NodalNetwork.PhaseEquations phase in _network.Phases)
        {
            period = map(phase, phase.Duty / frequencyHz) * period;
        }

        double integral = period[n + 1, n];
        if (n > 0)
        {
            // charges that no phase can change keep any value: zero is chosen
            Matrix<double> change = Matrix<double>.Build.DenseIdentity(n) - period.SubMatrix(0, n, 0, n) + _conserved;
            integral += period.Row(n + 1, 0, n) * change.Solve(period.Column(n, 0, n));
        }

        double mean = integral * frequencyHz;
        return _isStiff ? 1 / mean : _ratio - mean;
    }
}
