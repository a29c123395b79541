using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// One period of a network in one number type: the map of its state, the periodic states for one unit of each input,
/// and what they carry. Holds its own room, so that a further period allocates nothing; not for several threads.
/// </summary>
/// <remarks>Equations: docs/theory/two-port.md. Cost: per phase the exponential and three products of matrices.</remarks>
internal sealed class PeriodMap<T>
    where T : struct, IReal<T>
{
    private readonly StateEquations<T> _equations;
    private readonly int _n;
    private readonly int _width;
    private readonly int _inputs;
    private readonly int[] _exponentialOf;
    private readonly T[][] _changes;
    private readonly T[][] _integrals;
    private readonly T[] _room;
    private readonly T[] _map;
    private readonly T[] _step;
    private readonly T[] _system;
    private readonly double[] _scales;
    private readonly T[] _freeStates;
    private readonly int[] _free;
    private readonly int[] _kept;
    private readonly T[] _state;
    private readonly T[] _nextState;
    private readonly T[] _phaseIntegral;
    private readonly PeriodError _error;

    public PeriodMap(StateEquations<T> equations)
    {
        _equations = equations;
        (_n, _width, _inputs) = (equations.StateCount, equations.Width, equations.InputCount);
        int phases = equations.Phases.Length;
        _exponentialOf = new int[phases];
        List<int> distinct = [];
        for (int j = 0; j < phases; j++)
        {
            int same = distinct.FindIndex(k => ReferenceEquals(equations.Phases[k], equations.Phases[j]) && equations.Duties[k].Equals(equations.Duties[j]));
            if (same < 0)
            {
                same = distinct.Count;
                distinct.Add(j);
            }

            _exponentialOf[j] = same;
        }

        FirstPhase = [.. distinct];
        _changes = [.. distinct.Select(_ => new T[_n * _width])];
        _integrals = [.. distinct.Select(_ => new T[_n * _width])];
        _room = new T[PhaseExponential.Room(_n, _width)];
        (_freeStates, _free) = equations.FreeStates();
        _kept = [.. Enumerable.Range(0, _n).Except(_free)];
        _map = new T[_n * _width];
        _step = new T[_n * _width];
        _system = new T[_kept.Length * SystemWidth];
        _scales = new double[_kept.Length];
        _state = new T[_n * _inputs];
        _nextState = new T[_n * _inputs];
        _phaseIntegral = new T[_n * _inputs];
        StateIntegral = new T[_n * _inputs];
        Start = new T[_n * _inputs];
        InputCharge = new T[_inputs];
        Output = new T[_inputs];
        FurtherOutputs = [.. equations.Phases[0].FurtherOutputs.Select(_ => new T[_inputs])];
        _error = new PeriodError(_n, _inputs, FurtherOutputs.Length);
    }

    /// <summary>The first phase of each exponential: phases with the same connections and duty share one.</summary>
    public int[] FirstPhase { get; }

    /// <summary>The periodic state at the start of phase 1, one column per unit of each input.</summary>
    public T[] Start { get; }

    /// <summary>The integral of the state over the period, likewise.</summary>
    public T[] StateIntegral { get; }

    /// <summary>The charge out of the input source per period, per unit of each input.</summary>
    public T[] InputCharge { get; }

    /// <summary>The charge into a stiff output, or the integral of the output voltage, per unit of each input.</summary>
    public T[] Output { get; }

    /// <summary>The integral of the voltage of each further load, per unit of each input.</summary>
    public T[][] FurtherOutputs { get; }

    /// <summary>Both sources, then the further loads.</summary>
    public int InputCount => _inputs;

    /// <summary>The number of states that something moves.</summary>
    public int KeptCount => _kept.Length;

    private int SystemWidth => (2 * _kept.Length) + _inputs;

    /// <summary>[E, P b] of a phase, as found by the last call of <see cref="TryRun"/>.</summary>
    public ReadOnlySpan<T> ChangeOf(int phase) => _changes[_exponentialOf[phase]];

    /// <summary>[P, Q b] of a phase, likewise.</summary>
    public ReadOnlySpan<T> IntegralOf(int phase) => _integrals[_exponentialOf[phase]];

    /// <summary>How much results of the last call can be off by rounding.</summary>
    public PeriodError Error => _error;

    /// <summary>Solves for a period.</summary>
    /// <returns>False where the map has a state that returns to itself without any drive.</returns>
    public bool TryRun(T period)
    {
        for (int k = 0; k < FirstPhase.Length; k++)
        {
            int phase = FirstPhase[k];
            PhaseExponential.Of<T>(_n, _width, _equations.Phases[phase].Generator, _equations.Phases[phase].Norm, _equations.Duties[phase] * period, _changes[k], _integrals[k], _room);
            Rests.HoldChange<T>(_equations.Phases[phase].RestingDirections, _n, _width, _changes[k]);
            Rests.HoldIntegral<T>(_equations.Phases[phase].RestingDirections, _n, _width, _integrals[k]);
        }

        Join();
        if (!TrySolve())
        {
            return false;
        }

        Sum(period);
        _error.Estimate(this, _equations, period);
        return true;
    }

    /// <summary>
    /// The inverse of one minus the map, over the states that something moves, rounded to doubles: its eigenvalues are
    /// 1/(1 − those of the map).
    /// </summary>
    public void CopyInverse(Span<double> inverse)
    {
        int n = _kept.Length;
        for (int r = 0; r < n; r++)
        {
            for (int c = 0; c < n; c++)
            {
                inverse[(r * n) + c] = _system[(r * SystemWidth) + n + _inputs + c].Nearest;
            }
        }
    }

    /// <summary>
    /// What a row over the states at the start of a period weighs when the state returns after every period: the row
    /// times the inverse of one minus the map, in place.
    /// </summary>
    public void Repeat(Span<double> row, Span<double> room)
    {
        row.CopyTo(room);
        row.Clear();
        for (int c = 0; c < _kept.Length; c++)
        {
            double sum = 0;
            for (int r = 0; r < _kept.Length; r++)
            {
                sum += room[_kept[r]] * _system[(r * SystemWidth) + _kept.Length + _inputs + c].Nearest;
            }

            row[_kept[c]] = sum;
        }

        for (int f = 0; f < _free.Length; f++)
        {
            for (int r = 0; r < _kept.Length; r++)
            {
                row[_free[f]] -= row[_kept[r]] * _freeStates[(f * _n) + _kept[r]].Nearest;
            }
        }
    }

    // The change of the state over the period, never adding the identity: X becomes X + E + E X.
    private void Join()
    {
        _map.AsSpan().Clear();
        for (int j = 0; j < _exponentialOf.Length; j++)
        {
            ReadOnlySpan<T> change = _changes[_exponentialOf[j]];
            change.CopyTo(_step);
            SmallMatrices.AddProduct(change, _width, _n, _map, _width, _step);
            SmallMatrices.AddMultiple<T>(_step, T.Of(1), _map);
        }
    }

    // -X x = Y, over states against the free ones, which are set to zero
    private bool TrySolve()
    {
        int n = _kept.Length, width = SystemWidth;
        _system.AsSpan().Clear();
        for (int r = 0; r < n; r++)
        {
            Span<T> row = _system.AsSpan(r * width, width);
            AddRow(_kept[r], T.Of(1), row);
            for (int f = 0; f < _free.Length; f++)
            {
                AddRow(_free[f], -_freeStates[(f * _n) + _kept[r]], row);
            }

            row[n + _inputs + r] = T.Of(1);
        }

        if (!SmallMatrices.TrySolve<T>(_system, n, width, _scales))
        {
            return false;
        }

        for (int r = 0; r < n; r++)
        {
            _system.AsSpan((r * width) + n, _inputs).CopyTo(Start.AsSpan(_kept[r] * _inputs));
        }

        return true;
    }

    private void AddRow(int state, T factor, Span<T> row)
    {
        ReadOnlySpan<T> own = _map.AsSpan(state * _width, _width);
        for (int c = 0; c < _kept.Length; c++)
        {
            row[c] -= factor * own[_kept[c]];
        }

        for (int u = 0; u < _inputs; u++)
        {
            row[_kept.Length + u] += factor * own[_n + u];
        }
    }

    private void Sum(T period)
    {
        StateIntegral.AsSpan().Clear();
        InputCharge.AsSpan().Clear();
        Output.AsSpan().Clear();
        foreach (T[] further in FurtherOutputs)
        {
            further.AsSpan().Clear();
        }

        Start.CopyTo(_state, 0);
        _error.Restart();
        for (int j = 0; j < _exponentialOf.Length; j++)
        {
            _error.Meet(_state);
            Advance(_integrals[_exponentialOf[j]], _phaseIntegral);
            SmallMatrices.AddMultiple<T>(_phaseIntegral, T.Of(1), StateIntegral);
            T time = _equations.Duties[j] * period;
            AddOutput(_equations.Phases[j].InputCurrent, time, InputCharge);
            AddOutput(_equations.Phases[j].Output, time, Output);
            for (int k = 0; k < FurtherOutputs.Length; k++)
            {
                AddOutput(_equations.Phases[j].FurtherOutputs[k], time, FurtherOutputs[k]);
            }

            Advance(_changes[_exponentialOf[j]], _nextState);
            SmallMatrices.AddMultiple<T>(_nextState, T.Of(1), _state);
        }
    }

    // [M m] of a phase applied to (x, u) for each unit of u
    private void Advance(ReadOnlySpan<T> matrix, Span<T> result)
    {
        for (int r = 0; r < _n; r++)
        {
            for (int u = 0; u < _inputs; u++)
            {
                T sum = matrix[(r * _width) + _n + u];
                for (int c = 0; c < _n; c++)
                {
                    sum += matrix[(r * _width) + c] * _state[(c * _inputs) + u];
                }

                result[(r * _inputs) + u] = sum;
            }
        }
    }

    private void AddOutput(ReadOnlySpan<T> row, T time, Span<T> sums)
    {
        for (int u = 0; u < _inputs && row.Length > 0; u++)
        {
            T sum = row[_n + u] * time;
            for (int c = 0; c < _n; c++)
            {
                sum += row[c] * _phaseIntegral[(c * _inputs) + u];
            }

            sums[u] += sum;
        }
    }
}
