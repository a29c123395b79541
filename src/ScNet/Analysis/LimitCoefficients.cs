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
        where T : struct, IBinaryInteger<T> =>
        SumOfSquares(charges, elements, phases, weights: [], divisor: T.One + T.One);

    /// <summary>Fast-switching limit, per ohm: Σ a² / D over the phases.</summary>
    /// <param name="charges">The charge multipliers.</param>
    /// <param name="elements">The number of elements.</param>
    /// <param name="phases">The number of phases.</param>
    /// <param name="inverseDuties">1 / D of each phase.</param>
    public static Quantity[] Fast<T>(ReadOnlySpan<Rational<T>> charges, int elements, int phases, Rational<T>[] inverseDuties)
        where T : struct, IBinaryInteger<T> =>
        SumOfSquares(charges, elements, phases, inverseDuties, divisor: T.One);

    private static Quantity[] SumOfSquares<T>(
        ReadOnlySpan<Rational<T>> charges, int elements, int phases, ReadOnlySpan<Rational<T>> weights, T divisor)
        where T : struct, IBinaryInteger<T>
    {
        var coefficients = new Quantity[elements];
        for (int i = 0; i < elements; i++)
        {
            Rational<T> sum = Rational<T>.Zero;
            for (int j = 0; j < phases; j++)
            {
                Rational<T> charge = charges[(i * phases) + j];
                if (!charge.IsZero)
                {
                    Rational<T> square = charge.Squared();
                    sum += weights.IsEmpty ? square : square * weights[j];
                }
            }

            coefficients[i] = (sum / divisor).ToQuantity();
        }

        return coefficients;
    }
}
