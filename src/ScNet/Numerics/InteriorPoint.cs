namespace ScNet.Numerics;

/// <summary>The primal-dual interior-point method for the minimum of a convex function under convex constraints and bounds.</summary>
/// <remarks>
/// Solves ∇F₀ + Σ λ_k ∇F_k = 0, F_k + s_k = 0 and λ_k s_k = τ by Newton's method, each step with a look ahead that chooses τ and
/// corrects for what the products leave over; constraints need not hold on the way, bounds do. Source: S. Mehrotra, "On the
/// implementation of a primal-dual interior point method", SIAM Journal on Optimization 2(4), 1992 (from memory); S. Boyd and L. Vandenberghe,
/// Convex Optimization, Cambridge University Press 2004, 11.7 (from memory).
/// </remarks>
internal sealed class InteriorPoint
{
    private const int StepLimit = 80;
    private const int Remembered = 4;
    private const int LargestHalvings = 12;
    private const double Reach = 0.995;
    private const double LongestStep = 4;
    private const double LeastStart = 1e-2;

    private readonly LogConvexFunction _objective;
    private readonly LogConvexFunction[] _constraints;
    private readonly double[] _lower;
    private readonly double[] _upper;
    private readonly double[] _matrix;
    private readonly double[] _scale;
    private readonly double[] _direction;
    private readonly double[] _slackStep;
    private readonly double[] _multiplierStep;
    private readonly double[] _targets;
    private readonly Queue<double> _residuals = new();
    private InteriorState _now;
    private InteriorState _trial;

    /// <summary>Prepares the method.</summary>
    /// <param name="objective">What is to be small.</param>
    /// <param name="constraints">What is to be at most zero.</param>
    /// <param name="lower">The lower bounds.</param>
    /// <param name="upper">The upper bounds.</param>
    /// <param name="start">A point strictly within the bounds.</param>
    public InteriorPoint(LogConvexFunction objective, LogConvexFunction[] constraints, double[] lower, double[] upper, double[] start)
    {
        (_objective, _constraints, _lower, _upper) = (objective, constraints, lower, upper);
        int n = lower.Length, all = constraints.Length + (2 * n);
        _matrix = new double[n * n];
        _scale = new double[n];
        _direction = new double[n];
        _slackStep = new double[all];
        _multiplierStep = new double[all];
        _targets = new double[all];
        _now = new InteriorState(objective, constraints, n);
        _trial = new InteriorState(objective, constraints, n);
        start.CopyTo(_now.X, 0);
        _now.Evaluate(objective, constraints);
        for (int k = 0; k < all; k++)
        {
            _now.Slacks[k] = k < constraints.Length ? Math.Max(-_now.Values[k], LeastStart) : BoundSlack(_now.X, k);
            _now.Multipliers[k] = Math.Min(1, 1 / (_now.Slacks[k] * all));
        }
    }

    /// <summary>The point.</summary>
    public double[] Point => _now.X;

    /// <summary>The objective there.</summary>
    public double Objective => _now.Objective;

    /// <summary>The multipliers of the constraints, without those of the bounds.</summary>
    public double[] Multipliers => _now.Multipliers[.._constraints.Length];

    /// <summary>The largest constraint.</summary>
    public double Excess => _now.Values.DefaultIfEmpty(double.NegativeInfinity).Max();

    /// <summary>Runs until gap and constraints are as small as asked for, the objective is low enough, or no step helps; gives the steps taken.</summary>
    /// <param name="program">What measures the gap.</param>
    /// <param name="tolerance">The gap to be reached.</param>
    /// <param name="largestExcess">By how much a constraint may fail.</param>
    /// <param name="stopBelow">An objective that is low enough where all constraints hold.</param>
    public int Run(GeometricProgram program, double tolerance, double largestExcess, double stopBelow)
    {
        int steps = 0;
        for (; steps < StepLimit; steps++)
        {
            double products = Products(_now.Slacks, _now.Multipliers, 0);
            if (Excess <= largestExcess && (_now.Objective < stopBelow
                || (products <= tolerance && program.DualityGap(_now.X, _now.Multipliers.AsSpan(0, _constraints.Length)) <= tolerance)))
            {
                break;
            }

            Direct(products / _targets.Length);
            if (!Step())
            {
                break;
            }
        }

        return steps;
    }

    // Newton's direction for products of zero first; how far it leads tells what products to aim at
    private void Direct(double mean)
    {
        Factor();
        _targets.AsSpan().Clear();
        Solve();
        double length = Longest();
        double ahead = Products(_now.Slacks, _now.Multipliers, length) / _targets.Length;
        double share = Math.Pow(Math.Clamp(ahead / mean, 0, 1), 3);
        double target = mean * Math.Max(share, 1e-6);
        for (int k = 0; k < _targets.Length; k++)
        {
            _targets[k] = target - (length * length * _slackStep[k] * _multiplierStep[k]);
        }

        Solve();
    }

    private void Factor()
    {
        int n = _lower.Length, m = _constraints.Length;
        _matrix.AsSpan().Clear();
        _objective.AddCurvature(1, _now.Gradients[0], _now.Work[0], _matrix, n);
        for (int k = 0; k < m; k++)
        {
            _constraints[k].AddCurvature(_now.Multipliers[k], _now.Gradients[k + 1], _now.Work[k + 1], _matrix, n);
            _constraints[k].AddSquare(_now.Multipliers[k] / _now.Slacks[k], _now.Gradients[k + 1], _matrix, n);
        }

        for (int i = 0; i < n; i++)
        {
            int low = m + (2 * i);
            _matrix[(i * n) + i] += (_now.Multipliers[low] / _now.Slacks[low]) + (_now.Multipliers[low + 1] / _now.Slacks[low + 1]);
        }

        SmallSolver.FactorPositive(_matrix, _scale);
    }

    // what leads to λ s = targets
    private void Solve()
    {
        int n = _lower.Length, m = _constraints.Length;
        _direction.AsSpan().Clear();
        InteriorState.Scatter(_objective, _now.Gradients[0], -1, _direction);
        for (int k = 0; k < m; k++)
        {
            // (target/s − λ) + (λ/s)(F + s), and λ from the Lagrangian
            double factor = (_targets[k] + (_now.Multipliers[k] * (_now.Values[k] + _now.Slacks[k]))) / _now.Slacks[k];
            InteriorState.Scatter(_constraints[k], _now.Gradients[k + 1], -factor, _direction);
        }

        for (int i = 0; i < n; i++)
        {
            int low = m + (2 * i);
            _direction[i] += (_targets[low] / _now.Slacks[low]) - (_targets[low + 1] / _now.Slacks[low + 1]);
        }

        SmallSolver.SolveTriangle(_matrix, _direction, _scale);
        for (int k = 0; k < _targets.Length; k++)
        {
            double along = k < m ? _now.Along(_constraints, k, _direction) : (k - m) % 2 == 0 ? -_direction[(k - m) / 2] : _direction[(k - m) / 2];
            _slackStep[k] = -along - (k < m ? _now.Values[k] + _now.Slacks[k] : 0);
            _multiplierStep[k] = ((_targets[k] - (_now.Multipliers[k] * _slackStep[k])) / _now.Slacks[k]) - _now.Multipliers[k];
        }
    }

    // how far slacks and multipliers stay positive, and the point near
    private double Longest()
    {
        double longest = 1;
        foreach (double step in _direction)
        {
            longest = Math.Min(longest, LongestStep / Math.Abs(step));
        }

        for (int k = 0; k < _slackStep.Length; k++)
        {
            longest = _slackStep[k] < 0 ? Math.Min(longest, -Reach * _now.Slacks[k] / _slackStep[k]) : longest;
            longest = _multiplierStep[k] < 0 ? Math.Min(longest, -Reach * _now.Multipliers[k] / _multiplierStep[k]) : longest;
        }

        return longest;
    }

    private bool Step()
    {
        double step = Longest();
        if (!(step > 1e-12))
        {
            return false;
        }

        _residuals.Enqueue(Residual(_now));
        if (_residuals.Count > Remembered)
        {
            _residuals.Dequeue();
        }

        double allowed = _residuals.Max();
        for (int halving = 0; ; halving++, step *= 0.5)
        {
            for (int i = 0; i < _direction.Length; i++)
            {
                _trial.X[i] = _now.X[i] + (step * _direction[i]);
            }

            for (int k = 0; k < _slackStep.Length; k++)
            {
                _trial.Slacks[k] = k < _constraints.Length ? _now.Slacks[k] + (step * _slackStep[k]) : BoundSlack(_trial.X, k);
                _trial.Multipliers[k] = _now.Multipliers[k] + (step * _multiplierStep[k]);
            }

            _trial.Evaluate(_objective, _constraints);
            if (Residual(_trial) <= (1 - (1e-4 * step)) * allowed || halving == LargestHalvings)
            {
                (_now, _trial) = (_trial, _now);
                return true;
            }
        }
    }

    private double BoundSlack(double[] x, int k)
    {
        int i = (k - _constraints.Length) / 2;
        return (k - _constraints.Length) % 2 == 0 ? x[i] - _lower[i] : _upper[i] - x[i];
    }

    private double Products(double[] slacks, double[] multipliers, double step)
    {
        double sum = 0;
        for (int k = 0; k < slacks.Length; k++)
        {
            sum += (slacks[k] + (step * _slackStep[k])) * (multipliers[k] + (step * _multiplierStep[k]));
        }

        return sum;
    }

    private double Residual(InteriorState state)
    {
        int n = _lower.Length, m = _constraints.Length;
        Span<double> dual = n <= 256 ? stackalloc double[n] : new double[n];
        dual.Clear();
        InteriorState.Scatter(_objective, state.Gradients[0], 1, dual);
        double sum = 0;
        for (int k = 0; k < m; k++)
        {
            InteriorState.Scatter(_constraints[k], state.Gradients[k + 1], state.Multipliers[k], dual);
            double primal = state.Values[k] + state.Slacks[k];
            sum += primal * primal;
        }

        for (int i = 0; i < n; i++)
        {
            double entry = dual[i] - state.Multipliers[m + (2 * i)] + state.Multipliers[m + (2 * i) + 1];
            sum += entry * entry;
        }

        for (int k = 0; k < _targets.Length; k++)
        {
            double product = state.Multipliers[k] * state.Slacks[k];
            sum += product * product;
        }

        return Math.Sqrt(sum);
    }
}
