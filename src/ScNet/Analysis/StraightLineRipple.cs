using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// Charge balance without load where inductor currents are straight lines in each phase, as equations for the amounts
/// of the movements that averages leave open.
/// </summary>
/// <remarks>
/// Equations: docs/theory/averages-with-inductors.md, "Ripple". With V the voltages and F a movement,
/// Σ_L (1/L) Σ_j v_Lj(F) w_j (p_Lj(V) + w_j v_Lj(V) / 2) = 0, w_j the weight of phase j and p_Lj the volt-seconds up to it.
/// Cost: movements² · inductors · phases.
/// </remarks>
internal static class StraightLineRipple
{
    /// <summary>One equation per movement: a coefficient for the amount of each movement, then the constant.</summary>
    /// <param name="space">The voltages that averages leave open.</param>
    /// <param name="inductors">The voltages of the inductors.</param>
    /// <param name="inverseHenries">Whole numbers in the proportion of the inverse inductances.</param>
    /// <param name="weights">Whole numbers in the proportion of the duties.</param>
    /// <exception cref="OverflowException">A machine integer does not hold a value.</exception>
    public static Rational<T>[][] Equations<T>(VoltageSpace<T> space, InductorVoltages<T> inductors, T[] inverseHenries, T[] weights)
        where T : struct, IBinaryInteger<T>
    {
        int count = space.Movements.Count;
        Rational<T>[][] voltages = [.. space.Movements.Select(inductors.Of), inductors.Of(space.Origin)];
        Rational<T>[][] ripples = Array.ConvertAll(voltages, v => Twice(v, inverseHenries, weights));
        var equations = new Rational<T>[count][];
        for (int k = 0; k < count; k++)
        {
            equations[k] = new Rational<T>[count + 1];
            for (int i = 0; i <= count; i++)
            {
                // the form is skew
                equations[k][i] = i < k ? -equations[i][k] : i == k ? Rational<T>.Zero : Product(voltages[k], ripples[i]);
            }
        }

        return equations;
    }

    // Twice the charge of the ripple in each phase, but for a charge in the proportion of the duties, which no movement feels.
    private static Rational<T>[] Twice<T>(Rational<T>[] voltages, T[] inverseHenries, T[] weights)
        where T : struct, IBinaryInteger<T>
    {
        var ripple = new Rational<T>[voltages.Length];
        for (int l = 0; l < inverseHenries.Length; l++)
        {
            Rational<T> sum = Rational<T>.Zero;
            for (int j = 0; j < weights.Length; j++)
            {
                int at = (l * weights.Length) + j;
                Rational<T> voltSeconds = voltages[at] * weights[j];
                ripple[at] = (sum + sum + voltSeconds) * weights[j] * inverseHenries[l];
                sum += voltSeconds;
            }
        }

        return ripple;
    }

    private static Rational<T> Product<T>(Rational<T>[] left, Rational<T>[] right)
        where T : struct, IBinaryInteger<T>
    {
        Rational<T> sum = Rational<T>.Zero;
        for (int k = 0; k < left.Length; k++)
        {
            if (!left[k].IsZero)
            {
                sum += left[k] * right[k];
            }
        }

        return sum;
    }
}
