using Fractions;
using ScNet.Derivations.Expressions;

namespace ScNet.Derivations;

/// <summary>One term in which a stated closed form differs from the derived one.</summary>
/// <param name="Stated">The term as stated; null where it is missing.</param>
/// <param name="Derived">The term of the derived form; null where the stated one is too many. With the same symbols where both are there.</param>
internal sealed record FormDifference(Term? Stated, Term? Derived)
{
    /// <summary>The coefficient as stated; 0 where the term is missing.</summary>
    public Fraction StatedCoefficient => Stated?.Coefficient ?? Fraction.Zero;

    /// <summary>The coefficient of the derived form; 0 where the term is too many.</summary>
    public Fraction DerivedCoefficient => Derived?.Coefficient ?? Fraction.Zero;

    /// <summary>The terms: "missing 1/(9·C_fly2·f)".</summary>
    public override string ToString() => Stated is null ? $"missing {Derived}"
        : Derived is null ? $"extra {Stated}"
        : $"{Stated} instead of {Derived}";

    /// <summary>The terms that differ, in the order of terms.</summary>
    internal static FormDifference[] Between(Expression stated, Expression derived)
    {
        List<FormDifference> found = [];
        int i = 0, j = 0;
        while (i < stated.Terms.Length || j < derived.Terms.Length)
        {
            int order = i == stated.Terms.Length ? 1 : j == derived.Terms.Length ? -1 : Term.Compare(stated.Terms[i], derived.Terms[j]);
            Term? left = order <= 0 ? stated.Terms[i++] : null, right = order >= 0 ? derived.Terms[j++] : null;
            if (!Equals(left, right))
            {
                found.Add(new FormDifference(left, right));
            }
        }

        return [.. found];
    }
}
