using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>An exact coefficient times powers of symbols: "2/(9·C·f)". Immutable, with structural equality.</summary>
public sealed class Term : IEquatable<Term>
{
    private readonly Factor[] _factors;

    // factors in the order of symbols, each symbol once, no power zero
    internal Term(Fraction coefficient, Factor[] factors)
    {
        Coefficient = coefficient;
        _factors = factors;
    }

    /// <summary>The coefficient, a reduced fraction other than zero.</summary>
    public Fraction Coefficient { get; }

    /// <summary>The powers of symbols, each symbol once, in the order of <see cref="SymbolKind"/> and then of names; none in a constant.</summary>
    public IReadOnlyList<Factor> Factors => _factors;

    /// <inheritdoc/>
    public bool Equals(Term? other) => other is not null && Coefficient.Equals(other.Coefficient) && HasFactorsOf(other);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Term);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        hash.Add(Coefficient);
        foreach (Factor factor in _factors)
        {
            hash.Add(factor);
        }

        return hash.ToHashCode();
    }

    /// <summary>The term in plain text.</summary>
    public override string ToString() => ExpressionText.Write([this]);

    internal bool HasFactorsOf(Term other) => _factors.AsSpan().SequenceEqual(other._factors);

    internal Term Times(Term other)
    {
        List<Factor> product = [];
        foreach (IGrouping<Symbol, Factor> group in _factors.Concat(other._factors).GroupBy(f => f.Symbol))
        {
            int power = group.Sum(f => f.Power);
            if (power != 0)
            {
                product.Add(new Factor(group.Key, power));
            }
        }

        product.Sort((a, b) => Symbol.Compare(a.Symbol, b.Symbol));
        return new Term((Coefficient * other.Coefficient).Reduce(), [.. product]);
    }

    /// <summary>The order of terms in an expression: by their symbols, higher powers first, the constant last.</summary>
    internal static int Compare(Term left, Term right)
    {
        int common = Math.Min(left._factors.Length, right._factors.Length);
        for (int k = 0; k < common; k++)
        {
            int order = Symbol.Compare(left._factors[k].Symbol, right._factors[k].Symbol);
            order = order != 0 ? order : right._factors[k].Power.CompareTo(left._factors[k].Power);
            if (order != 0)
            {
                return order;
            }
        }

        return right._factors.Length.CompareTo(left._factors.Length);
    }
}
