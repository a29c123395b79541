namespace ScNet.Numerics;

/// <summary>A point of an <see cref="InteriorPoint"/> method with all that is known there.</summary>
/// <param name="objective">What is to be small.</param>
/// <param name="constraints">What is to be at most zero.</param>
/// <param name="variables">The number of variables.</param>
internal sealed class InteriorState(LogConvexFunction objective, LogConvexFunction[] constraints, int variables)
{
    /// <summary>The point.</summary>
    public double[] X { get; } = new double[variables];

    /// <summary>The slack of each constraint, then of each lower and upper bound.</summary>
    public double[] Slacks { get; } = new double[constraints.Length + (2 * variables)];

    /// <summary>The multipliers, in the same order.</summary>
    public double[] Multipliers { get; } = new double[constraints.Length + (2 * variables)];

    /// <summary>The constraints.</summary>
    public double[] Values { get; } = new double[constraints.Length];

    /// <summary>The gradients over the support of each function, the objective first.</summary>
    public double[][] Gradients { get; } = [new double[objective.Support.Length], .. constraints.Select(c => new double[c.Support.Length])];

    /// <summary>What second derivatives are made from.</summary>
    public double[][] Work { get; } = [new double[objective.WorkLength], .. constraints.Select(c => new double[c.WorkLength])];

    /// <summary>The objective.</summary>
    public double Objective { get; private set; }

    /// <summary>Works out values and gradients at the point.</summary>
    public void Evaluate(LogConvexFunction objective, LogConvexFunction[] constraints)
    {
        Objective = objective.Evaluate(X, Gradients[0], Work[0]);
        for (int k = 0; k < constraints.Length; k++)
        {
            Values[k] = constraints[k].Evaluate(X, Gradients[k + 1], Work[k + 1]);
        }
    }

    /// <summary>The slope of a constraint along a direction.</summary>
    public double Along(LogConvexFunction[] constraints, int constraint, ReadOnlySpan<double> direction)
    {
        double sum = 0;
        int[] support = constraints[constraint].Support;
        double[] gradient = Gradients[constraint + 1];
        for (int i = 0; i < gradient.Length; i++)
        {
            sum += gradient[i] * direction[support[i]];
        }

        return sum;
    }

    /// <summary>Adds a multiple of a gradient over its support to a vector over all variables.</summary>
    public static void Scatter(LogConvexFunction function, double[] gradient, double factor, Span<double> total)
    {
        for (int i = 0; i < gradient.Length; i++)
        {
            total[function.Support[i]] += factor * gradient[i];
        }
    }
}
