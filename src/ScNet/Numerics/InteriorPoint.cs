namespace ScNet.Numerics;

/// <summary>The primal-dual interior-point method for the minimum of a convex function under convex constraints and bounds.</summary>
/// <remarks>
/// Solves ∇F₀ + Σ λ_k ∇F_k = 0 and −λ_k F_k = 1/t by Newton's method, t growing as the gap shrinks, from a point where all
/// constraints hold strictly. Source: S. Boyd and L. Vandenberghe, Convex Optimization, Cambridge University Press 2004, 11.7 (from memory).
/// </remarks>
internal sealed class InteriorPoint
{
    private const int StepLimit = 200;
    private const double Growth = 10;
    private const double Decrease = 0.01;
    private const double Shrink = 0.5;
    private const double LeastStep = 1e-10;

    private readonly LogConvexFunction _objective;
    private readonly LogConvexFunction[] _constraints;
    private readonly double[] _lower;
    private readonly double[] _upper;
    private readonly double[] _matrix;
    private readonly double[] _direction;
    private readonly double[] _multiplierStep;
    private State _now;
    private State _trial;

    /// <summary>Prepares the method.</summary>
    /// <param name="objective">What is to be small.</param>
    /// <param name="constraints">What is to be at most zero.</param>
    /// <param name="lower">The lower bounds.</param>
    /// <param name="upper">The upper bounds.</param>
    /// <param name="start">A point strictly within all of them.</param>
    public InteriorPoint(LogConvexFunction objective, LogConvexFunction[] constraints, double[] lower, double[] upper, double[] start)
    {
        (_objective, _constraints, _lower, _upper) = (objective, constraints, lower, upper);
        int n = lower.Length;
        _matrix = new double[n * n];
        _direction = new double[n];
        _multiplierStep = new double[constraints.Length + (2 * n)];
        _now = new State(objective, constraints, n);
        _trial = new State(objective, constraints, n);
        start.CopyTo(_now.X, 0);
        Evaluate(_now);
        for (int k = 0; k < _now.Multipliers.Length; k++)
        {
            _now.Multipliers[k] = 1 / (-_now.Values[k] * _now.Multipliers.Length);
        }
    }

    /// <summary>The point.</summary>
    public double[] Point => _now.X;

    /// <summary>The objective there.</summary>
    public double Objective => _now.Objective;

    /// <summary>The multipliers of the constraints, without those of the bounds.</summary>
    public double[] Multipliers => _now.Multipliers[.._constraints.Length];

    /// <summary>Runs until the gap is small, the objective low enough, or rounding allows no further step; gives the steps taken.</summary>
    /// <param name="program">What measures the gap.</param>
    /// <param name="tolerance">The gap to be reached.</param>
    /// <param name="stopBelow">An objective that is low enough.</param>
    public int Run(GeometricProgram program, double tolerance, double stopBelow)
    {
        int steps = 0;
        for (; steps < StepLimit && _now.Objective >= stopBelow; steps++)
        {
            double surrogate = 0;
            for (int k = 0; k < _now.Values.Length; k++)
            {
                surrogate -= _now.Values[k] * _now.Multipliers[k];
            }

            if (surrogate <= tolerance && program.DualityGap(_now.X, _now.Multipliers.AsSpan(0, _constraints.Length)) <= tolerance)
            {
                break;
            }

            double inverse = Math.Max(surrogate, tolerance * 1e-3) / (Growth * _now.Values.Length);
            Newton(inverse);
            if (!Step(inverse))
            {
                break;
            }
        }

        return steps;
    }

    private void Newton(double inverse)
    {
        int n = _lower.Length, m = _constraints.Length;
        _matrix.AsSpan().Clear();
        _direction.AsSpan().Clear();
        _objective.AddCurvature(1, _now.Gradients[0], _now.Work[0], _matrix, n);
        Scatter(_objective, _now.Gradients[0], -1, _direction);
        for (int k = 0; k < m; k++)
        {
            double multiplier = _now.Multipliers[k], slack = -_now.Values[k];
            double[] gradient = _now.Gradients[k + 1];
            _constraints[k].AddCurvature(multiplier, gradient, _now.Work[k + 1], _matrix, n);
            _constraints[k].AddSquare(multiplier / slack, gradient, _matrix, n);
            Scatter(_constraints[k], gradient, -inverse / slack, _direction);
        }

        for (int i = 0; i < n; i++)
        {
            int low = m + (2 * i), high = low + 1;
            _matrix[(i * n) + i] += (_now.Multipliers[low] / -_now.Values[low]) + (_now.Multipliers[high] / -_now.Values[high]);
            _direction[i] += inverse * ((1 / -_now.Values[low]) - (1 / -_now.Values[high]));
        }

        SmallSolver.SolvePositive(_matrix, _direction, []);
        for (int k = 0; k < _multiplierStep.Length; k++)
        {
            double along = k < m ? Along(_constraints[k], _now.Gradients[k + 1]) : (k - m) % 2 == 0 ? -_direction[(k - m) / 2] : _direction[(k - m) / 2];
            _multiplierStep[k] = -_now.Multipliers[k] - ((inverse + (_now.Multipliers[k] * along)) / _now.Values[k]);
        }
    }

    private bool Step(double inverse)
    {
        double longest = 1;
        for (int k = 0; k < _multiplierStep.Length; k++)
        {
            longest = _multiplierStep[k] < 0 ? Math.Min(longest, -_now.Multipliers[k] / _multiplierStep[k]) : longest;
        }

        double before = Residual(_now, inverse);
        for (double step = 0.99 * longest; step > LeastStep; step *= Shrink)
        {
            for (int i = 0; i < _direction.Length; i++)
            {
                _trial.X[i] = _now.X[i] + (step * _direction[i]);
            }

            for (int k = 0; k < _multiplierStep.Length; k++)
            {
                _trial.Multipliers[k] = _now.Multipliers[k] + (step * _multiplierStep[k]);
            }

            if (Evaluate(_trial) && Residual(_trial, inverse) <= (1 - (Decrease * step)) * before)
            {
                (_now, _trial) = (_trial, _now);
                return true;
            }
        }

        return false;
    }

    // false where a constraint does not hold strictly
    private bool Evaluate(State state)
    {
        int n = _lower.Length, m = _constraints.Length;
        for (int i = 0; i < n; i++)
        {
            state.Values[m + (2 * i)] = _lower[i] - state.X[i];
            state.Values[m + (2 * i) + 1] = state.X[i] - _upper[i];
            if (!(state.Values[m + (2 * i)] < 0 && state.Values[m + (2 * i) + 1] < 0))
            {
                return false;
            }
        }

        for (int k = 0; k < m; k++)
        {
            state.Values[k] = _constraints[k].Evaluate(state.X, state.Gradients[k + 1], state.Work[k + 1]);
            if (!(state.Values[k] < 0))
            {
                return false;
            }
        }

        state.Objective = _objective.Evaluate(state.X, state.Gradients[0], state.Work[0]);
        return true;
    }

    private double Residual(State state, double inverse)
    {
        int n = _lower.Length, m = _constraints.Length;
        Span<double> dual = n <= 256 ? stackalloc double[n] : new double[n];
        dual.Clear();
        Scatter(_objective, state.Gradients[0], 1, dual);
        for (int k = 0; k < m; k++)
        {
            Scatter(_constraints[k], state.Gradients[k + 1], state.Multipliers[k], dual);
        }

        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            double entry = dual[i] - state.Multipliers[m + (2 * i)] + state.Multipliers[m + (2 * i) + 1];
            sum += entry * entry;
        }

        for (int k = 0; k < state.Values.Length; k++)
        {
            double entry = (-state.Multipliers[k] * state.Values[k]) - inverse;
            sum += entry * entry;
        }

        return Math.Sqrt(sum);
    }

    private static void Scatter(LogConvexFunction function, double[] gradient, double factor, Span<double> total)
    {
        for (int i = 0; i < gradient.Length; i++)
        {
            total[function.Support[i]] += factor * gradient[i];
        }
    }

    private double Along(LogConvexFunction function, double[] gradient)
    {
        double sum = 0;
        for (int i = 0; i < gradient.Length; i++)
        {
            sum += gradient[i] * _direction[function.Support[i]];
        }

        return sum;
    }

    private sealed class State(LogConvexFunction objective, LogConvexFunction[] constraints, int variables)
    {
        public double[] X { get; } = new double[variables];

        public double[] Multipliers { get; } = new double[constraints.Length + (2 * variables)];

        public double[] Values { get; } = new double[constraints.Length + (2 * variables)];

        public double[][] Gradients { get; } = [new double[objective.Support.Length], .. constraints.Select(c => new double[c.Support.Length])];

        public double[][] Work { get; } = [new double[objective.WorkLength], .. constraints.Select(c => new double[c.WorkLength])];

        public double Objective { get; set; }
    }
}
