using MathNet.Numerics.LinearAlgebra;
using ScNet.Tests.SteadyState;

namespace ScNet.Benchmarks.Baselines;

/// <summary>
/// The four-level stage as one writes it down by hand: two capacitor voltages and the inductor's current, one matrix
/// exponential per interval, the periodic state from a dense solution.
/// </summary>
/// <param name="duty">The duty of every pair of switches.</param>
/// <param name="farads">Each flying capacitor.</param>
/// <param name="henries">The inductor.</param>
/// <param name="ohms">Three switches and the winding together.</param>
internal sealed class FourLevelByHand(double duty, double farads, double henries, double ohms)
{
    private const int States = 3;
    private const int Pairs = 3;

    // x, input voltage, output voltage, and the integrals of input and output current
    private const int Size = States + 4;

    private readonly (double Duty, Matrix<double> Rates)[] _phases = [.. Intervals(duty).Select(i => (i.Duty, Rates(i.High, farads, henries, ohms)))];

    /// <summary>Ratio and impedance.</summary>
    public (double Ratio, double Ohms) At(double frequencyHz)
    {
        Matrix<double> period = Matrix<double>.Build.DenseIdentity(Size);
        foreach ((double share, Matrix<double> rates) in _phases)
        {
            period = MatrixExponential.Of(rates * (share / frequencyHz)) * period;
        }

        Matrix<double> change = Matrix<double>.Build.DenseIdentity(States) - period.SubMatrix(0, States, 0, States);
        Matrix<double> start = change.Solve(period.SubMatrix(0, States, States, 2));
        Matrix<double> charges = period.SubMatrix(States + 2, 2, States, 2) + (period.SubMatrix(States + 2, 2, 0, States) * start);
        return (-charges[1, 0] / charges[1, 1], -1 / (charges[1, 1] * frequencyHz));
    }

    // each pair is high for the duty, a third of a period after the one before
    private static IEnumerable<(double Duty, bool[] High)> Intervals(double duty)
    {
        double[] starts = [.. Enumerable.Range(0, Pairs).Select(k => (double)k / Pairs)];
        double[] instants = [.. starts.Concat(starts.Select(s => (s + duty) % 1)).Append(1).Select(t => Math.Round(t, 12)).Distinct().Order()];
        return instants.Zip(instants.Skip(1), (a, b) => (b - a, (bool[])[.. starts.Select(s => ((((a + b) / 2) - s + 1) % 1) < duty)]));
    }

    private static Matrix<double> Rates(bool[] high, double farads, double henries, double ohms)
    {
        // the switched node: v = h0 (V - v1) + h1 (v1 - v2) + h2 v2
        double[] h = [.. high.Select(x => x ? 1.0 : 0)];
        double first = h[1] - h[0], second = h[2] - h[1];
        return Matrix<double>.Build.DenseOfArray(new[,]
        {
            { 0, 0, -first / farads, 0, 0, 0, 0 },
            { 0, 0, -second / farads, 0, 0, 0, 0 },
            { first / henries, second / henries, -ohms / henries, h[0] / henries, -1 / henries, 0, 0 },
            { 0, 0, 0, 0, 0, 0, 0 },
            { 0, 0, 0, 0, 0, 0, 0 },
            { 0, 0, h[0], 0, 0, 0, 0 },
            { 0, 0, 1, 0, 0, 0, 0 },
        });
    }
}
