namespace ScNet.Numerics;

/// <summary>A geometric program: the least of a posynomial while others are at most 1, in logarithms and within bounds.</summary>
/// <remarks>
/// Convex, so that every minimum is the minimum. Found by a primal-dual interior-point method with Newton steps by Cholesky's
/// triangle (<see cref="InteriorPoint"/>); what is left is told by a duality gap that does not trust the method (<see cref="DualityGap"/>). Source: S. Boyd and
/// L. Vandenberghe, Convex Optimization, Cambridge University Press 2004, 4.5 and 11.7 (from memory). Derivation:
/// docs/theory/sizing.md, "Certificate". Cost of a step: the terms, and a third of the cube of the number of variables.
/// </remarks>
internal sealed class GeometricProgram
{
    private readonly LogConvexFunction _objective;
    private readonly LogConvexFunction[] _constraints;
    private readonly double[] _lower;
    private readonly double[] _upper;

    /// <summary>States a program.</summary>
    /// <param name="objective">What is to be small.</param>
    /// <param name="constraints">What is to be at most 1: the logarithm at most zero.</param>
    /// <param name="lower">The lower bound of each variable's logarithm.</param>
    /// <param name="upper">The upper bound, above the lower one.</param>
    public GeometricProgram(LogConvexFunction objective, IReadOnlyList<LogConvexFunction> constraints, double[] lower, double[] upper)
    {
        for (int i = 0; i < lower.Length; i++)
        {
            if (!(lower[i] < upper[i]) || !double.IsFinite(upper[i] - lower[i]))
            {
                throw new ArgumentException($"Expected finite bounds that rise, but got {lower[i]} and {upper[i]} for variable {i}.", nameof(upper));
            }
        }

        _objective = objective;
        _constraints = [.. constraints];
        _lower = lower;
        _upper = upper;
    }

    /// <summary>The variables.</summary>
    public int VariableCount => _lower.Length;

    /// <summary>Finds the minimum.</summary>
    /// <param name="start">Logarithms to start from, anywhere.</param>
    /// <param name="tolerance">The duality gap at which to stop.</param>
    public GeometricOptimum Minimize(ReadOnlySpan<double> start, double tolerance = 1e-9)
    {
        double[] x = Inside(start);
        InteriorPoint method = new(_objective, _constraints, _lower, _upper, x);
        int steps = method.Run(this, tolerance, LargestExcess, stopBelow: double.NegativeInfinity);
        if (!(method.Excess <= LargestExcess))
        {
            GeometricOptimum least = LeastExcess(x);
            steps += least.Steps;
            if (least.Excess > -LargestExcess)
            {
                return least;
            }

            method = new InteriorPoint(_objective, _constraints, _lower, _upper, Inside(least.Logarithms));
            steps += method.Run(this, tolerance, LargestExcess, stopBelow: double.NegativeInfinity);
        }

        return new GeometricOptimum
        {
            Logarithms = method.Point,
            LogValue = method.Objective,
            Multipliers = method.Multipliers,
            Gap = Math.Max(0, DualityGap(method.Point, method.Multipliers)),
            IsFeasible = true,
            Excess = method.Excess,
            Steps = steps,
        };
    }

    /// <summary>
    /// How much lower than at a point the logarithm of the objective can be anywhere within bounds and constraints, at most: by the
    /// tangent plane of the Lagrangian, which convexity keeps it above.
    /// </summary>
    /// <param name="point">Logarithms of the variables that satisfy the constraints.</param>
    /// <param name="multipliers">One per constraint, not negative; the better they are the smaller is the gap.</param>
    public double DualityGap(ReadOnlySpan<double> point, ReadOnlySpan<double> multipliers)
    {
        var total = new double[VariableCount];
        Add(_objective, 1, point, total);
        double gap = 0;
        for (int k = 0; k < _constraints.Length; k++)
        {
            gap -= multipliers[k] * Add(_constraints[k], multipliers[k], point, total);
        }

        for (int i = 0; i < total.Length; i++)
        {
            gap -= Math.Min(total[i] * (_lower[i] - point[i]), total[i] * (_upper[i] - point[i]));
        }

        return gap;
    }

    private const double LargestExcess = 1e-10;

    // adds a multiple of the gradient, gives the value
    private static double Add(LogConvexFunction function, double factor, ReadOnlySpan<double> point, double[] total)
    {
        var gradient = new double[function.Support.Length];
        double value = function.Evaluate(point, gradient, new double[function.WorkLength]);
        for (int i = 0; i < gradient.Length; i++)
        {
            total[function.Support[i]] += factor * gradient[i];
        }

        return value;
    }

    private double[] Inside(ReadOnlySpan<double> start)
    {
        var x = new double[VariableCount];
        for (int i = 0; i < x.Length; i++)
        {
            double margin = 1e-3 * Math.Min(1, _upper[i] - _lower[i]);
            x[i] = Math.Clamp(start[i], _lower[i] + margin, _upper[i] - margin);
        }

        return x;
    }

    // one more variable, by which all constraints may be exceeded alike, as small as can be; stops where all hold with some room
    private GeometricOptimum LeastExcess(double[] x)
    {
        int slack = VariableCount;
        double worst = _constraints.Max(c => c.Value(x));
        LogConvexFunction[] relaxed = [.. _constraints.Select(c => c.DividedBy(slack))];
        const double Room = 0.05;
        double[] lower = [.. _lower, -1], upper = [.. _upper, worst + 2];
        LogConvexFunction objective = new PosynomialBuilder().Add(1, (slack, 1)).Build();
        GeometricProgram program = new(objective, relaxed, lower, upper);
        InteriorPoint method = new(objective, relaxed, lower, upper, [.. x, worst + 1]);
        int steps = method.Run(program, 1e-9, LargestExcess, stopBelow: -Room);
        double[] point = method.Point[..slack];
        return new GeometricOptimum
        {
            Logarithms = point,
            LogValue = _objective.Value(point),
            Multipliers = method.Multipliers,
            Gap = Math.Max(program.DualityGap(method.Point, method.Multipliers), 0),
            IsFeasible = false,
            Excess = _constraints.Max(c => c.Value(point)),
            Steps = steps,
        };
    }
}
