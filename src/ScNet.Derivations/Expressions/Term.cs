using System.Collections.Immutable;
using Fractions;

namespace ScNet.Derivations.Expressions;

/// <summary>An exact coefficient times powers of symbols: "2/(9·C·f)". Immutable, with structural equality.</summary>
internal sealed class Term : IEquatable<Term>
{
    // factors in the order of symbols, each symbol once, no power zero
    public Term(Fraction coefficient, ImmutableArray<Factor> factors)
    {
        Coefficient = coefficient;
        Factors = factors;
    }

    /// <summary>The coefficient, a reduced fraction other than zero.</summary>
    public Fraction Coefficient { get; }

    /// <summary>The powers of symbols, each symbol once, in the order of symbols in an expression; none in a constant.</summary>
    public ImmutableArray<Factor> Factors { get; }

    /// <inheritdoc/>
    public bool Equals(Term? other) => other is not null && Coefficient.Equals(other.Coefficient) && HasFactorsOf(other);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Term);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        HashCode hash = default;
        hash.Add(Coefficient);
        foreach (Factor factor in Factors)
        {
            hash.Add(factor);
        }

        return hash.ToHashCode();
    }

    /// <summary>The term in plain text.</summary>
    public override string ToString() => ExpressionText.Write([this]);

    internal bool HasFactorsOf(Term other) => Factors == other.Factors || Factors.AsSpan().SequenceEqual(other.Factors.AsSpan());

    internal Term Times(Term other) => new((Coefficient * other.Coefficient).Reduce(), Merged(Factors, other.Factors));

    internal Term WithCoefficient(Fraction coefficient) => new(coefficient, Factors);

    internal Term Replace(Func<Symbol, Symbol> replace)
    {
        List<Factor> factors = [.. Factors.Select(f => f with { Symbol = replace(f.Symbol) })];
        factors.Sort((a, b) => Symbol.Compare(a.Symbol, b.Symbol));
        ImmutableArray<Factor>.Builder merged = ImmutableArray.CreateBuilder<Factor>(factors.Count);
        for (int k = 0; k < factors.Count;)
        {
            Factor factor = factors[k];
            for (k++; k < factors.Count && factors[k].Symbol.Equals(factor.Symbol); k++)
            {
                factor = factor with { Power = factor.Power + factors[k].Power };
            }

            if (factor.Power != 0)
            {
                merged.Add(factor);
            }
        }

        return new Term(Coefficient, merged.DrainToImmutable());
    }

    /// <summary>The order of terms in an expression: by their symbols, higher powers first, the constant last.</summary>
    internal static int Compare(Term left, Term right)
    {
        int common = Math.Min(left.Factors.Length, right.Factors.Length);
        for (int k = 0; k < common; k++)
        {
            int order = Symbol.Compare(left.Factors[k].Symbol, right.Factors[k].Symbol);
            order = order != 0 ? order : right.Factors[k].Power.CompareTo(left.Factors[k].Power);
            if (order != 0)
            {
                return order;
            }
        }

        return right.Factors.Length.CompareTo(left.Factors.Length);
    }

    // both are in order, so one walk through both is enough
    private static ImmutableArray<Factor> Merged(ImmutableArray<Factor> left, ImmutableArray<Factor> right)
    {
        if (left.IsEmpty || right.IsEmpty)
        {
            return left.IsEmpty ? right : left;
        }

        ImmutableArray<Factor>.Builder merged = ImmutableArray.CreateBuilder<Factor>(left.Length + right.Length);
        int i = 0, j = 0;
        while (i < left.Length && j < right.Length)
        {
            int order = Symbol.Compare(left[i].Symbol, right[j].Symbol);
            if (order != 0)
            {
                merged.Add(order < 0 ? left[i++] : right[j++]);
                continue;
            }

            int power = left[i].Power + right[j++].Power;
            if (power != 0)
            {
                merged.Add(left[i] with { Power = power });
            }

            i++;
        }

        merged.AddRange(left.AsSpan()[i..]);
        merged.AddRange(right.AsSpan()[j..]);
        return merged.DrainToImmutable();
    }
}
