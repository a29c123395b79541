namespace ScNet.Numerics;

/// <summary>Collects the terms of a <see cref="LogConvexFunction"/>.</summary>
internal sealed class PosynomialBuilder
{
    private readonly List<double> _logCoefficients = [];
    private readonly List<int> _termStarts = [0];
    private readonly List<int> _variables = [];
    private readonly List<double> _exponents = [];
    private readonly List<int> _groupStarts = [0];
    private readonly SortedDictionary<int, double> _slope = [];
    private double _shift;

    /// <summary>Adds a term c · Π v^a to the group that is open; a coefficient of zero adds nothing.</summary>
    /// <param name="coefficient">The coefficient, at least zero.</param>
    /// <param name="powers">Variables and their exponents, each variable once.</param>
    public PosynomialBuilder Add(double coefficient, params ReadOnlySpan<(int Variable, double Exponent)> powers)
    {
        if (!(coefficient >= 0) || double.IsInfinity(coefficient))
        {
            throw new ArgumentOutOfRangeException(nameof(coefficient), coefficient, "Expected a finite coefficient of at least zero.");
        }

        if (coefficient == 0)
        {
            return this;
        }

        int start = _variables.Count;
        foreach ((int variable, double exponent) in powers)
        {
            // by rising variable
            int at = _variables.Count;
            while (at > start && _variables[at - 1] > variable)
            {
                at--;
            }

            _variables.Insert(at, variable);
            _exponents.Insert(at, exponent);
        }

        _logCoefficients.Add(Math.Log(coefficient));
        _termStarts.Add(_variables.Count);
        return this;
    }

    /// <summary>Closes the group that is open, if it has a term, and opens another one.</summary>
    public PosynomialBuilder NextGroup()
    {
        if (_groupStarts[^1] < _logCoefficients.Count)
        {
            _groupStarts.Add(_logCoefficients.Count);
        }

        return this;
    }

    /// <summary>Multiplies the whole by a power of a variable, of either sign.</summary>
    public PosynomialBuilder Times(int variable, double exponent)
    {
        _slope[variable] = _slope.GetValueOrDefault(variable) + exponent;
        return this;
    }

    /// <summary>Multiplies the whole by a positive number, told by its logarithm.</summary>
    public PosynomialBuilder TimesExponential(double logarithm)
    {
        _shift += logarithm;
        return this;
    }

    /// <summary>The function (Σ groups^p)^(1/p), times the monomial.</summary>
    /// <param name="power">The power p; 1 for the plain sum of all terms.</param>
    /// <exception cref="InvalidOperationException">There is no term.</exception>
    public LogConvexFunction Build(double power = 1)
    {
        NextGroup();
        if (_logCoefficients.Count == 0)
        {
            throw new InvalidOperationException("Expected at least one term.");
        }

        int[] support = [.. _variables.Concat(_slope.Keys).Distinct().Order()];
        var place = new Dictionary<int, int>(support.Length);
        for (int i = 0; i < support.Length; i++)
        {
            place[support[i]] = i;
        }

        return new LogConvexFunction(
            support, power, [.. _logCoefficients], [.. _termStarts], [.. _variables.Select(v => place[v])], [.. _exponents], [.. _groupStarts],
            [.. support.Select(v => _slope.GetValueOrDefault(v))], _shift);
    }
}
