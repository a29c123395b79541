using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>Linear equations with polynomials for coefficients, solved without fractions.</summary>
/// <remarks>
/// Every step divides by the pivot before, which goes without a remainder: E. H. Bareiss, "Sylvester's identity and
/// multistep integer-preserving Gaussian elimination", Math. Comp. 22 (1968) (from memory). Cost: unknowns · equations² products.
/// </remarks>
internal sealed class PolynomialEquations
{
    private readonly Polynomials _polynomials;
    private readonly Expression[][] _rows;
    private readonly List<int> _pivots = [];
    private readonly int _unknowns;

    /// <summary>Eliminates.</summary>
    /// <param name="polynomials">The arithmetic.</param>
    /// <param name="rows">A coefficient per unknown, then a constant; each sum is to be zero. Changed.</param>
    /// <param name="unknowns">The number of unknowns.</param>
    public PolynomialEquations(Polynomials polynomials, Expression[][] rows, int unknowns)
    {
        (_polynomials, _rows, _unknowns) = (polynomials, rows, unknowns);
        Pivot = Expression.Of(Fraction.One);
        for (int column = 0; column < unknowns && _pivots.Count < rows.Length; column++)
        {
            Eliminate(column);
        }

        IsContradictory = rows.Skip(_pivots.Count).Any(r => !r[unknowns].IsZero);
    }

    /// <summary>Whether no values of the unknowns meet the equations.</summary>
    public bool IsContradictory { get; }

    /// <summary>What the values below are to be divided by.</summary>
    public Expression Pivot { get; private set; }

    /// <summary>A sum of unknowns times <see cref="Pivot"/>; null where the equations leave it open.</summary>
    /// <param name="constant">The constant of the sum.</param>
    /// <param name="weights">The weight of each unknown. The sum may be fixed where the unknowns by themselves are not.</param>
    public Expression? Sum(Fraction constant, IReadOnlyList<Expression> weights)
    {
        for (int k = 0; k < _unknowns; k++)
        {
            if (!_pivots.Contains(k) && !Combined(weights[k], k, weights).IsZero)
            {
                return null;
            }
        }

        return Combined(Expression.Of(constant), _unknowns, weights);
    }

    // own · pivot - Σ weight · entry
    private Expression Combined(Expression own, int column, IReadOnlyList<Expression> weights)
    {
        List<Expression> parts = [_polynomials.Product(Pivot, own)];
        for (int row = 0; row < _pivots.Count; row++)
        {
            Expression weight = weights[_pivots[row]];
            if (!weight.IsZero)
            {
                parts.Add(-_polynomials.Product(_rows[row][column], weight));
            }
        }

        return Expression.Sum(parts);
    }

    private void Eliminate(int column)
    {
        int own = _pivots.Count;
        int found = Enumerable.Range(own, _rows.Length - own).Where(r => !_rows[r][column].IsZero)
            .OrderBy(r => _rows[r][column].Terms.Length).FirstOrDefault(-1);
        if (found < 0)
        {
            return;
        }

        (_rows[own], _rows[found]) = (_rows[found], _rows[own]);
        Expression[] source = _rows[own];
        Expression pivot = source[column];
        for (int row = 0; row < _rows.Length; row++)
        {
            if (row == own)
            {
                continue;
            }

            Expression factor = _rows[row][column];
            for (int k = 0; k <= _unknowns; k++)
            {
                Expression product = _polynomials.Product(pivot, _rows[row][k]) - _polynomials.Product(factor, source[k]);
                _rows[row][k] = _polynomials.Quotient(product, Pivot);
            }
        }

        _pivots.Add(column);
        Pivot = pivot;
    }
}
