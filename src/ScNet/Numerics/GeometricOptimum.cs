namespace ScNet.Numerics;

/// <summary>What minimising a <see cref="GeometricProgram"/> came to.</summary>
internal sealed class GeometricOptimum
{
    /// <summary>The logarithms of the variables; where <see cref="IsFeasible"/> is false those at which the worst constraint is violated least.</summary>
    public required double[] Logarithms { get; init; }

    /// <summary>The logarithm of the objective.</summary>
    public required double LogValue { get; init; }

    /// <summary>One multiplier per constraint: by how much the logarithm of the objective falls with that of the constraint's bound.</summary>
    public required double[] Multipliers { get; init; }

    /// <summary>
    /// The duality gap: no point within bounds and constraints has an objective whose logarithm is lower by more. Rigorous but for
    /// rounding, whatever led to the point. Not negative.
    /// </summary>
    public required double Gap { get; init; }

    /// <summary>Whether all constraints hold.</summary>
    public required bool IsFeasible { get; init; }

    /// <summary>The largest logarithm of a constraint: zero or less where it holds.</summary>
    public required double Excess { get; init; }

    /// <summary>Steps of Newton's method.</summary>
    public required int Steps { get; init; }
}
