using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The exact coefficients of both limits from charge multipliers, one per element. Charges are indexed
/// element · phases + phase.
/// </summary>
/// <remarks>Equations: docs/theory/exact-steady-state.md, "The two limits".</remarks>
internal static class LimitCoefficients
{
    /// <summary>Slow-switching limit, per 1 / (C · f): Σ a² / 2 over the phases.</summary>
    public static Quantity[] Slow<T>(ReadOnlySpan<Rational<T>> charges, int elements, int phases)
        where T : struct, IBinaryInteger<T>
    {
        var halves = new Rational<T>[phases];
        halves.AsSpan().Fill(Rational<T>.Of(T.One, T.One + T.One));
        return SumsOfSquares(charges, elements, halves);
    }

    /// <summary>Fast-switching limit, per ohm: Σ a² / D over the phases.</summary>
    /// <param name="charges">The charge multipliers.</param>
    /// <param name="elements">The number of elements.</param>
    /// <param name="inverseDuties">1 / D of each phase.</param>
    public static Quantity[] Fast<T>(ReadOnlySpan<Rational<T>> charges, int elements, Rational<T>[] inverseDuties)
        where T : struct, IBinaryInteger<T> =>
        SumsOfSquares(charges, elements, inverseDuties);

    private static Quantity[] SumsOfSquares<T>(ReadOnlySpan<Rational<T>> charges, int elements, ReadOnlySpan<Rational<T>> weights)
        where T : struct, IBinaryInteger<T>
    {
        var coefficients = new Quantity[elements];
        for (int i = 0; i < elements; i++)
        {
            coefficients[i] = SumOfSquares(charges.Slice(i * weights.Length, weights.Length), weights).ToQuantity();
        }

        return coefficients;
    }

    // The charges of an element mostly have one denominator, so the sum is reduced once, at the end.
    private static Rational<T> SumOfSquares<T>(ReadOnlySpan<Rational<T>> charges, ReadOnlySpan<Rational<T>> weights)
        where T : struct, IBinaryInteger<T>
    {
        Rational<T> others = Rational<T>.Zero;
        T sum = T.Zero, common = T.One;
        bool hasOverflown = false;
        for (int j = 0; j < charges.Length; j++)
        {
            Rational<T> charge = charges[j], weight = weights[j];
            if (charge.IsZero)
            {
                continue;
            }

            T square = Integers.Multiply(charge.Numerator, charge.Numerator, ref hasOverflown);
            T term = Integers.Multiply(square, weight.Numerator, ref hasOverflown);
            square = Integers.Multiply(charge.Denominator, charge.Denominator, ref hasOverflown);
            T denominator = Integers.Multiply(square, weight.Denominator, ref hasOverflown);
            if (denominator != common)
            {
                Integers.Demand(!hasOverflown);
                others += Rational<T>.Of(sum, common);
                (sum, common) = (T.Zero, denominator);
            }

            sum = Integers.Add(sum, term, ref hasOverflown);
        }

        Integers.Demand(!hasOverflown);
        return others + Rational<T>.Of(sum, common);
    }
}
