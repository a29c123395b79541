using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>
/// A period of state equations by exponentials of dense matrices that hold states, inputs and the integrals of both, the
/// identity included: for moderate numbers.
/// </summary>
internal sealed class DensePeriod
{
    private readonly int _n;
    private readonly int _width;
    private readonly double[] _seconds;
    private readonly Matrix<double>[] _maps;
    private readonly Matrix<double>[] _integrals;

    private DensePeriod(int n, int width, double[] seconds, (Matrix<double> Map, Matrix<double> Integral)[] phases)
    {
        (_n, _width, _seconds) = (n, width, seconds);
        _maps = [.. phases.Select(p => p.Map)];
        _integrals = [.. phases.Select(p => p.Integral)];
        Period = _maps.Aggregate((product, next) => next * product);
    }

    /// <summary>What a period makes of states and inputs.</summary>
    public Matrix<double> Period { get; }

    /// <summary>One minus the map over the states.</summary>
    public Matrix<double> Return => Matrix<double>.Build.DenseIdentity(_n) - Period.SubMatrix(0, _n, 0, _n);

    /// <summary>What drives the states over a period, per input.</summary>
    public Matrix<double> Drive => Period.SubMatrix(0, _n, _n, _width - _n);

    /// <summary>The periodic state at the start, per input.</summary>
    public Matrix<double> Start => Return.Solve(Drive);

    public static DensePeriod Of<T>(StateEquations<T> equations, double period)
        where T : struct, IReal<T>
    {
        double[] seconds = [.. equations.Duties.Select(d => d.Nearest * period)];
        return new(equations.StateCount, equations.Width, seconds, [.. equations.Phases.Select((p, j) => Phase(p, equations.StateCount, equations.Width, seconds[j]))]);
    }

    /// <summary>What a phase adds to the state, from states and inputs.</summary>
    public Matrix<double> Change(int phase) => (_maps[phase] - Matrix<double>.Build.DenseIdentity(_width)).SubMatrix(0, _n, 0, _width);

    /// <summary>The integral of the state over a phase, from states and inputs.</summary>
    public Matrix<double> Integral(int phase) => _integrals[phase].SubMatrix(0, _n, 0, _width);

    /// <summary>The integral over a period of a signal of which each phase has a row over states and inputs, or none; per input.</summary>
    public double[] Sum(Func<int, double[]> row)
    {
        Matrix<double> vector = Start.Stack(Matrix<double>.Build.DenseIdentity(_width - _n));
        Vector<double> sum = Vector<double>.Build.Dense(_width - _n);
        for (int j = 0; j < _maps.Length; j++)
        {
            sum += row(j) is { Length: > 0 } own ? Vector<double>.Build.Dense(own) * _integrals[j] * vector : sum * 0;
            vector = _maps[j] * vector;
        }

        return [.. sum];
    }

    /// <summary>The states at the starts of all phases, per input.</summary>
    public IEnumerable<Matrix<double>> Starts()
    {
        Matrix<double> vector = Start.Stack(Matrix<double>.Build.DenseIdentity(_width - _n));
        foreach (Matrix<double> map in _maps)
        {
            yield return vector.SubMatrix(0, _n, 0, _width - _n);
            vector = map * vector;
        }
    }

    /// <summary>What the state at the end of a phase adds to the integral of a signal for ever after, phase by phase.</summary>
    public Vector<double> Weight(int phase, Func<int, double[]> row, int periods)
    {
        Vector<double> weight = Vector<double>.Build.Dense(_n);
        Matrix<double> passed = Matrix<double>.Build.DenseIdentity(_n);
        for (int k = 1; k <= periods * _maps.Length; k++)
        {
            int j = (phase + k) % _maps.Length;
            weight += row(j) is { Length: > 0 } own ? Vector<double>.Build.Dense(own[.._n]) * _integrals[j].SubMatrix(0, _n, 0, _n) * passed : weight * 0;
            passed = _maps[j].SubMatrix(0, _n, 0, _n) * passed;
        }

        return weight;
    }

    public double Seconds(int phase) => _seconds[phase];

    private static (Matrix<double> Map, Matrix<double> Integral) Phase<T>(PhaseEquations<T> phase, int n, int width, double seconds)
        where T : struct, IReal<T>
    {
        Matrix<double> matrix = Matrix<double>.Build.Dense(2 * width, 2 * width);
        for (int k = 0; k < phase.Generator.Length; k++)
        {
            matrix[k / width, k % width] = phase.Generator[k].Nearest * seconds;
        }

        for (int k = 0; k < width; k++)
        {
            matrix[width + k, k] = seconds;
        }

        Matrix<double> exponential = MatrixExponential.Of(matrix), held = Matrix<double>.Build.DenseIdentity(width);
        for (int at = 0; at < phase.RestingDirections.Length; at += n)
        {
            Vector<double> direction = Vector<double>.Build.Dense(width);
            for (int x = 0; x < n; x++)
            {
                direction[x] = phase.RestingDirections[at + x].Nearest;
            }

            held -= direction.OuterProduct(direction);
        }

        return (exponential.SubMatrix(0, width, 0, width) * held, exponential.SubMatrix(width, width, 0, width) * held);
    }
}
