using System.Numerics;

namespace ScNet.Kernel;

/// <summary>
/// Kirchhoff's voltage law round the loops as rows with a column per branch: a row per loop of held
/// voltages, and per held current, or mesh of them, one row, the sum of its loops weighted by the phases.
/// </summary>
/// <remarks>Equations: docs/theory/exact-steady-state.md.</remarks>
internal static class LoopEquations
{
    /// <summary>The rows in the order of <see cref="LoopSet.Equation"/>.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a weight.</exception>
    public static SparseRows<T> Of<T>(SwitchedNetwork network, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        SparseRows<T> rows = new(loops.EquationCount, loops.EntryCount + (loops.EntryCount / 2));
        Integers.Demand(TryAdd(rows, network, loops, Weights<T>(network), network.HeldCurrentCount > 0 ? new T[network.BranchCount] : []));
        return rows;
    }

    /// <summary>Adds the rows in the order of <see cref="LoopSet.Equation"/>.</summary>
    /// <param name="rows">Receives the rows.</param>
    /// <param name="network">The network.</param>
    /// <param name="loops">Its loops.</param>
    /// <param name="weights">The weight of each phase; read only where a current is held.</param>
    /// <param name="sum">Room for a value per branch, all zero before and after; used only where a current is held.</param>
    /// <returns>False where a machine integer does not hold a sum of weights.</returns>
    public static bool TryAdd<T>(SparseRows<T> rows, NetworkGraph network, LoopSet loops, ReadOnlySpan<T> weights, Span<T> sum)
        where T : struct, IBinaryInteger<T>
    {
        for (int loop = 0; loop < loops.VoltageLoopCount; loop++)
        {
            int row = rows.AddRow();
            ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
            for (int e = 0; e < branches.Length; e++)
            {
                rows.Append(row, branches[e], T.CreateTruncating(signs[e]));
            }
        }

        bool hasOverflown = false;
        int tied = loops.VoltageLoopCount;
        for (int mesh = 0; mesh < loops.MeshCount; mesh++)
        {
            for (; tied < loops.Count && loops.Mesh(tied) == mesh; tied++)
            {
                Add(sum, loops, tied, weights[loops.Phase(tied)], ref hasOverflown);
            }

            AppendAndClear(rows, sum);
        }

        return !hasOverflown;
    }

    /// <summary>The charge round every loop from a charge per equation: tied loops share theirs by the weights of the phases.</summary>
    /// <param name="loops">The loops.</param>
    /// <param name="equations">The charge of each equation.</param>
    /// <param name="weights">The weight of each phase; read only where a current is held.</param>
    /// <param name="charges">Receives the charge of each loop.</param>
    /// <returns>False where a machine integer does not hold a value.</returns>
    public static bool TrySpread<T>(LoopSet loops, ReadOnlySpan<Rational<T>> equations, ReadOnlySpan<T> weights, Span<Rational<T>> charges)
        where T : struct, IBinaryInteger<T>
    {
        bool hasOverflown = false;
        equations[..loops.VoltageLoopCount].CopyTo(charges);
        for (int loop = loops.VoltageLoopCount; loop < loops.Count; loop++)
        {
            charges[loop] = Rational<T>.Multiply(equations[loops.Equation(loop)], weights[loops.Phase(loop)], ref hasOverflown);
        }

        return !hasOverflown;
    }

    /// <summary>As <see cref="TrySpread"/>; the same array where no current is held.</summary>
    /// <exception cref="OverflowException">A machine integer does not hold a value.</exception>
    public static Rational<T>[] Spread<T>(SwitchedNetwork network, LoopSet loops, Rational<T>[] equations)
        where T : struct, IBinaryInteger<T>
    {
        if (network.HeldCurrentCount == 0)
        {
            return equations;
        }

        var charges = new Rational<T>[loops.Count];
        Integers.Demand(TrySpread<T>(loops, equations, Weights<T>(network), charges));
        return charges;
    }

    private static T[] Weights<T>(SwitchedNetwork network)
        where T : struct, IBinaryInteger<T> =>
        network.HeldCurrentCount > 0 ? Array.ConvertAll(network.PhaseWeights, T.CreateChecked) : [];

    private static void Add<T>(Span<T> sum, LoopSet loops, int loop, T weight, ref bool hasOverflown)
        where T : struct, IBinaryInteger<T>
    {
        ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
        for (int e = 0; e < branches.Length; e++)
        {
            sum[branches[e]] = Integers.Add(sum[branches[e]], signs[e] > 0 ? weight : -weight, ref hasOverflown);
        }
    }

    private static void AppendAndClear<T>(SparseRows<T> rows, Span<T> sum)
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
