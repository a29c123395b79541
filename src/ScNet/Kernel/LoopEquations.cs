using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// Kirchhoff's voltage law round the loops as rows with a column per branch: a row per loop of held
/// voltages, and per held current one row, the sum of its loops weighted by the phases.
/// </summary>
/// <remarks>Equations: docs/theory/exact-steady-state.md.</remarks>
internal static class LoopEquations
{
    /// <summary>The rows in the order of <see cref="LoopSet.Equation"/>.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a weight.</exception>
    public static SparseRows<T> Of<T>(SwitchedNetwork network, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        SparseRows<T> rows = new(loops.EquationCount, 4 * (loops.Count + network.BranchCount));
        for (int loop = 0; loop < loops.VoltageLoopCount; loop++)
        {
            int row = rows.AddRow();
            ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
            for (int e = 0; e < branches.Length; e++)
            {
                rows.Append(row, branches[e], T.CreateTruncating(signs[e]));
            }
        }

        T[] sum = network.HeldCurrents.Length > 0 ? new T[network.BranchCount] : [];
        T[] weights = network.HeldCurrents.Length > 0 ? Weights<T>(network) : [];
        int tied = loops.VoltageLoopCount;
        foreach (int held in network.HeldCurrents)
        {
            for (; tied < loops.Count && loops.Branches(tied)[0] == held; tied++)
            {
                Add(sum, loops, tied, weights[loops.Phase(tied)]);
            }

            AppendAndClear(rows, sum);
        }

        return rows;
    }

    /// <summary>The charge round every loop from a charge per equation: tied loops share theirs by the weights of the phases.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a value.</exception>
    public static Rational<T>[] Spread<T>(SwitchedNetwork network, LoopSet loops, Rational<T>[] equations)
        where T : struct, IBinaryInteger<T>
    {
        if (network.HeldCurrents.Length == 0)
        {
            return equations;
        }

        T[] weights = Weights<T>(network);
        var charges = new Rational<T>[loops.Count];
        for (int loop = 0; loop < charges.Length; loop++)
        {
            Rational<T> charge = equations[loops.Equation(loop)];
            charges[loop] = loops.IsTied(loop) ? charge * weights[loops.Phase(loop)] : charge;
        }

        return charges;
    }

    private static T[] Weights<T>(SwitchedNetwork network)
        where T : struct, IBinaryInteger<T> => Array.ConvertAll(network.PhaseWeights, T.CreateChecked);

    private static void Add<T>(T[] sum, LoopSet loops, int loop, T weight)
        where T : struct, IBinaryInteger<T>
    {
        ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
        for (int e = 0; e < branches.Length; e++)
        {
            sum[branches[e]] = checked(sum[branches[e]] + (signs[e] > 0 ? weight : -weight));
        }
    }

    private static void AppendAndClear<T>(SparseRows<T> rows, T[] sum)
        where T : struct, IBinaryInteger<T>
    {
        int row = rows.AddRow();
        for (int branch = 0; branch < sum.Length; branch++)
        {
            if (!T.IsZero(sum[branch]))
            {
                rows.Append(row, branch, sum[branch]);
                sum[branch] = T.Zero;
            }
        }
    }
}
