using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// How far rounding can have moved what a period carries: the error that the exponential of every phase brings into the
/// state, times what it does to the result until the state has forgotten it.
/// </summary>
/// <remarks>
/// In energy coordinates no phase enlarges a state, so doubling adds errors and does not multiply them: a phase
/// brings ε (‖A‖τ + 1) of the state. Derivation and measured margin: docs/theory/two-port.md. Cost: two products of a
/// row and a matrix per phase and result.
/// </remarks>
/// <param name="n">The number of states.</param>
/// <param name="inputs">The number of inputs.</param>
/// <param name="further">The number of further outputs.</param>
internal sealed class PeriodError(int n, int inputs, int further)
{
    // errors of single operations, as far as random networks show them
    private const double Operations = 16;

    private readonly double[] _weight = new double[n];
    private readonly double[] _next = new double[n];
    private readonly double[] _largest = new double[inputs];

    // which row of a phase is meant: the source's current, the output, then the further outputs
    private const int Source = -2;
    private const int Main = -1;

    /// <summary>Of the charge out of the input source, per input.</summary>
    public double[] InputCharge { get; } = new double[inputs];

    /// <summary>Of the charge into a stiff output or the integral of the output voltage, per input.</summary>
    public double[] Output { get; } = new double[inputs];

    /// <summary>Of the integral of the voltage of each further output, per input.</summary>
    public double[][] FurtherOutputs { get; } = [.. Enumerable.Range(0, further).Select(_ => new double[inputs])];

    public void Restart() => _largest.AsSpan().Clear();

    /// <summary>Takes note of the state at the start of a phase, one column per input.</summary>
    public void Meet<T>(ReadOnlySpan<T> state)
        where T : struct, IReal<T>
    {
        for (int k = 0; k < state.Length; k++)
        {
            _largest[k % inputs] = Math.Max(_largest[k % inputs], Math.Abs(state[k].Nearest));
        }
    }

    public void Estimate<T>(PeriodMap<T> map, StateEquations<T> equations, T period)
        where T : struct, IReal<T>
    {
        Weigh(map, equations, period.Nearest, Source, InputCharge);
        Weigh(map, equations, period.Nearest, Main, Output);
        for (int k = 0; k < FurtherOutputs.Length; k++)
        {
            Weigh(map, equations, period.Nearest, k, FurtherOutputs[k]);
        }
    }

    private void Weigh<T>(PeriodMap<T> map, StateEquations<T> equations, double period, int which, double[] errors)
        where T : struct, IReal<T>
    {
        int width = equations.Width;
        _weight.AsSpan().Clear();
        for (int j = equations.Phases.Length - 1; j >= 0; j--)
        {
            Pull(map, Row(equations.Phases[j], which), j, width);
        }

        map.Repeat(_weight, _next);
        errors.AsSpan().Clear();
        for (int j = equations.Phases.Length - 1; j >= 0; j--)
        {
            PhaseEquations<T> phase = equations.Phases[j];
            double time = equations.Duties[j].Nearest * period, rate = phase.Norm * time, weight = Largest(_weight);
            ReadOnlySpan<T> row = Row(phase, which);
            double own = Largest(row);
            for (int u = 0; u < inputs && row.Length > 0; u++)
            {
                errors[u] += Operations * T.Rounding * (
                    (weight * (((rate + 1) * _largest[u]) + (time * phase.Drives[u])))
                    + (time * ((own * _largest[u]) + Math.Abs(row[n + u].Nearest))));
            }

            Pull(map, row, j, width);
        }
    }

    private static ReadOnlySpan<T> Row<T>(PhaseEquations<T> phase, int which)
        where T : struct, IReal<T> => which == Source ? phase.InputCurrent : which == Main ? phase.Output : phase.FurtherOutputs[which];

    private double Largest<T>(ReadOnlySpan<T> row)
        where T : struct, IReal<T>
    {
        double largest = 0;
        for (int x = 0; x < n && x < row.Length; x++)
        {
            largest = Math.Max(largest, Math.Abs(row[x].Nearest));
        }

        return largest;
    }

    // from a weight of the state at a phase's end to that at its start: w (1 + E) + c P
    private void Pull<T>(PeriodMap<T> map, ReadOnlySpan<T> row, int phase, int width)
        where T : struct, IReal<T>
    {
        _weight.CopyTo(_next, 0);
        ReadOnlySpan<T> change = map.ChangeOf(phase), integral = map.IntegralOf(phase);
        for (int r = 0; r < n; r++)
        {
            double weight = _weight[r], own = row.Length > 0 ? row[r].Nearest : 0;
            for (int c = 0; c < n; c++)
            {
                _next[c] += (weight * change[(r * width) + c].Nearest) + (own * integral[(r * width) + c].Nearest);
            }
        }

        _next.CopyTo(_weight, 0);
    }

    private static double Largest(double[] values)
    {
        double largest = 0;
        foreach (double value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        return largest;
    }
}
