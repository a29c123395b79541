namespace ScNet.Numerics;

/// <summary>
/// The logarithm of a posynomial, or of a root of a sum of powers of posynomials, times a monomial, as a function of the
/// logarithms of its variables: convex.
/// </summary>
/// <remarks>
/// With y_g = log Σ_t c_t e^{a_t·x} over the terms t of group g, F = (1/p) log Σ_g e^{p y_g} + a·x + b. Gradients and second
/// derivatives speak of the variables in <see cref="Support"/> alone, in its order. Derivation: docs/theory/sizing.md,
/// "In logarithms". Source: S. Boyd and L. Vandenberghe, Convex Optimization, Cambridge University Press 2004, 4.5
/// (from memory). Cost: the terms times their variables, and for second derivatives the groups times the square of the support.
/// </remarks>
internal sealed class LogConvexFunction
{
    private readonly double _power;
    private readonly double[] _logCoefficients;
    private readonly int[] _termStarts;
    private readonly int[] _places;
    private readonly double[] _exponents;
    private readonly int[] _groupStarts;
    private readonly double[] _slope;
    private readonly double _shift;

    /// <summary>Takes over what a <see cref="PosynomialBuilder"/> collected.</summary>
    internal LogConvexFunction(
        int[] support, double power, double[] logCoefficients, int[] termStarts, int[] places, double[] exponents, int[] groupStarts, double[] slope, double shift)
    {
        Support = support;
        _power = power;
        _logCoefficients = logCoefficients;
        _termStarts = termStarts;
        _places = places;
        _exponents = exponents;
        _groupStarts = groupStarts;
        _slope = slope;
        _shift = shift;
    }

    /// <summary>The variables that it depends on, rising; not to be changed.</summary>
    public int[] Support { get; }

    /// <summary>The terms of all groups.</summary>
    public int TermCount => _logCoefficients.Length;

    /// <summary>The groups of terms.</summary>
    public int GroupCount => _groupStarts.Length - 1;

    /// <summary>The numbers that <see cref="Evaluate"/> keeps for <see cref="AddCurvature"/>: a weight per term, and per group a weight and a gradient.</summary>
    public int WorkLength => TermCount + (GroupCount * (1 + Support.Length));

    /// <summary>The same over a variable that it does not depend on yet.</summary>
    /// <param name="variable">The variable, with a number above all others.</param>
    public LogConvexFunction DividedBy(int variable) => new(
        [.. Support, variable], _power, _logCoefficients, _termStarts, _places, _exponents, _groupStarts, [.. _slope, -1], _shift);

    /// <summary>The same times a positive number, told by its logarithm.</summary>
    public LogConvexFunction Times(double logarithm) =>
        new(Support, _power, _logCoefficients, _termStarts, _places, _exponents, _groupStarts, _slope, _shift + logarithm);

    /// <summary>The value alone.</summary>
    /// <param name="x">The logarithms of all variables.</param>
    public double Value(ReadOnlySpan<double> x)
    {
        Span<double> work = WorkLength <= 512 ? stackalloc double[WorkLength] : new double[WorkLength];
        Span<double> gradient = Support.Length <= 128 ? stackalloc double[Support.Length] : new double[Support.Length];
        return Evaluate(x, gradient, work);
    }

    /// <summary>Value and gradient.</summary>
    /// <param name="x">The logarithms of all variables.</param>
    /// <param name="gradient">Receives the derivative by each variable of the support.</param>
    /// <param name="work">Receives what <see cref="AddCurvature"/> reads; at least <see cref="WorkLength"/> long.</param>
    public double Evaluate(ReadOnlySpan<double> x, Span<double> gradient, Span<double> work)
    {
        int count = Support.Length, groups = GroupCount;
        Span<double> weights = work[..TermCount], groupWeights = work.Slice(TermCount, groups), groupGradients = work.Slice(TermCount + groups, groups * count);
        groupGradients.Clear();
        double largest = double.NegativeInfinity;
        for (int g = 0; g < groups; g++)
        {
            groupWeights[g] = _power * Group(g, x, weights, groupGradients.Slice(g * count, count));
            largest = Math.Max(largest, groupWeights[g]);
        }

        double sum = 0;
        for (int g = 0; g < groups; g++)
        {
            groupWeights[g] = Math.Exp(groupWeights[g] - largest);
            sum += groupWeights[g];
        }

        _slope.CopyTo(gradient);
        double value = _shift + ((largest + Math.Log(sum)) / _power);
        for (int g = 0; g < groups; g++)
        {
            groupWeights[g] /= sum;
            DenseRows.AddMultiple(groupGradients.Slice(g * count, count), groupWeights[g], gradient[..count]);
        }

        for (int i = 0; i < count; i++)
        {
            value += _slope[i] * x[Support[i]];
        }

        return value;
    }

    /// <summary>Adds a multiple of the second derivatives to the lower half of a matrix over all variables.</summary>
    /// <param name="factor">The multiple, at least zero.</param>
    /// <param name="gradient">The gradient at the point.</param>
    /// <param name="work">What <see cref="Evaluate"/> left there.</param>
    /// <param name="matrix">The matrix by rows.</param>
    /// <param name="size">Its rows.</param>
    public void AddCurvature(double factor, ReadOnlySpan<double> gradient, ReadOnlySpan<double> work, Span<double> matrix, int size)
    {
        int count = Support.Length, groups = GroupCount;
        ReadOnlySpan<double> groupWeights = work.Slice(TermCount, groups), groupGradients = work[(TermCount + groups)..];
        for (int g = 0; g < groups; g++)
        {
            double weight = factor * groupWeights[g];
            for (int t = _groupStarts[g]; t < _groupStarts[g + 1]; t++)
            {
                AddTerm(t, weight * work[t], matrix, size);
            }

            AddSquare(weight * (_power - 1), groupGradients.Slice(g * count, count), matrix, size);
        }

        Span<double> own = count <= 128 ? stackalloc double[count] : new double[count];
        for (int i = 0; i < count; i++)
        {
            own[i] = gradient[i] - _slope[i];
        }

        AddSquare(-factor * _power, own, matrix, size);
    }

    /// <summary>Adds a multiple of the square of a vector over the support to the lower half of a matrix over all variables.</summary>
    /// <param name="factor">The multiple.</param>
    /// <param name="vector">The vector; index as in <see cref="Support"/>.</param>
    /// <param name="matrix">The matrix by rows.</param>
    /// <param name="size">Its rows.</param>
    public void AddSquare(double factor, ReadOnlySpan<double> vector, Span<double> matrix, int size)
    {
        for (int i = 0; i < vector.Length && factor != 0; i++)
        {
            double scaled = factor * vector[i];
            Span<double> row = matrix.Slice(Support[i] * size, size);
            for (int k = 0; k <= i && scaled != 0; k++)
            {
                row[Support[k]] += scaled * vector[k];
            }
        }
    }

    // log of the sum of a group's terms; its gradient, and the share of each term
    private double Group(int group, ReadOnlySpan<double> x, Span<double> weights, Span<double> gradient)
    {
        int from = _groupStarts[group], to = _groupStarts[group + 1];
        double largest = double.NegativeInfinity;
        for (int t = from; t < to; t++)
        {
            double exponent = _logCoefficients[t];
            for (int e = _termStarts[t]; e < _termStarts[t + 1]; e++)
            {
                exponent += _exponents[e] * x[Support[_places[e]]];
            }

            weights[t] = exponent;
            largest = Math.Max(largest, exponent);
        }

        double sum = 0;
        for (int t = from; t < to; t++)
        {
            weights[t] = Math.Exp(weights[t] - largest);
            sum += weights[t];
        }

        for (int t = from; t < to; t++)
        {
            weights[t] /= sum;
            for (int e = _termStarts[t]; e < _termStarts[t + 1]; e++)
            {
                gradient[_places[e]] += weights[t] * _exponents[e];
            }
        }

        return largest + Math.Log(sum);
    }

    // the exponents of a term stand by rising variable
    private void AddTerm(int term, double weight, Span<double> matrix, int size)
    {
        for (int e = _termStarts[term]; e < _termStarts[term + 1]; e++)
        {
            Span<double> row = matrix.Slice(Support[_places[e]] * size, size);
            for (int k = _termStarts[term]; k <= e; k++)
            {
                row[Support[_places[k]]] += weight * _exponents[e] * _exponents[k];
            }
        }
    }
}
