using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The voltages that some laws allow: one choice, and the movements that may be added to it in any amounts. Vectors over
/// branches are indexed as in <see cref="SwitchedNetwork"/>.
/// </summary>
internal sealed class VoltageSpace<T>
    where T : struct, IBinaryInteger<T>
{
    public VoltageSpace(Rational<T>[] origin, List<Rational<T>[]> movements)
    {
        Origin = origin;
        Movements = movements.ConvertAll(WholeNumbers.Of);
    }

    public Rational<T>[] Origin { get; }

    /// <summary>Independent movements, each of whole numbers.</summary>
    public List<Rational<T>[]> Movements { get; }

    /// <summary>Whether the laws leave the voltage of a branch open.</summary>
    public bool Moves(int branch) => ModeFindings.Moves(Movements, branch);

    /// <summary>The voltages at which further equations hold; null where they contradict each other.</summary>
    /// <param name="equations">Rows: a coefficient for the amount of each movement, then a constant; their sum is to be zero.</param>
    /// <exception cref="OverflowException">A machine integer does not hold a value.</exception>
    public VoltageSpace<T>? Where(IReadOnlyList<Rational<T>[]> equations)
    {
        int count = Movements.Count;
        SparseRows<T> rows = new(equations.Count, Math.Max(1, equations.Count * (count + 1)));
        foreach (Rational<T>[] equation in equations)
        {
            WholeNumbers.AddTo(rows, equation);
        }

        Elimination<T> elimination = Elimination<T>.Run(rows, count, 0);
        for (int row = 0; row < rows.Count; row++)
        {
            if (!elimination.IsPivotRow(row) && rows.Length(row) > 0)
            {
                return null;
            }
        }

        List<Rational<T>[]> left = [];
        for (int k = 0; k < count; k++)
        {
            if (!elimination.IsPivotColumn(k))
            {
                left.Add(Mixture(null, Solution(elimination, k)));
            }
        }

        return new VoltageSpace<T>(Mixture(Origin, Solution(elimination, count)), left);
    }

    /// <summary>The same with room for integers of any size.</summary>
    public VoltageSpace<BigInteger> Widened() => new(
        Array.ConvertAll(Origin, v => v.Widened()), Movements.ConvertAll(m => Array.ConvertAll(m, v => v.Widened())));

    // With one of the amounts that stay free at one, or the constant.
    private Rational<T>[] Solution(Elimination<T> elimination, int one)
    {
        var x = new Rational<T>[Movements.Count + 1];
        x[one] = Rational<T>.One;
        elimination.SubstituteBack(x);
        return x;
    }

    private Rational<T>[] Mixture(Rational<T>[]? origin, Rational<T>[] amounts)
    {
        var mixed = new Rational<T>[Origin.Length];
        origin?.CopyTo(mixed);
        for (int k = 0; k < Movements.Count; k++)
        {
            for (int branch = 0; branch < mixed.Length && !amounts[k].IsZero; branch++)
            {
                if (!Movements[k][branch].IsZero)
                {
                    mixed[branch] += Movements[k][branch] * amounts[k];
                }
            }
        }

        return mixed;
    }
}
