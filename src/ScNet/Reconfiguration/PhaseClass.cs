using ScNet.Kernel;

namespace ScNet.Reconfiguration;

/// <summary>
/// All sets of closed switches that say the same about voltages in one phase: their loops span the same
/// space. Ratio, capacitor charges and slow limit of a pattern depend on the classes of its phases only.
/// </summary>
internal sealed class PhaseClass(long[] equations, int columns)
{
    /// <summary>The reduced loop equations by rows, primitive integers; columns as branches.</summary>
    public long[] Equations { get; } = equations;

    public int RowCount => Equations.Length / columns;

    /// <summary>How many sets belong to the class.</summary>
    public long Count { get; set; }

    /// <summary>The sets to which no switch can be added without leaving the class: the best by fast limit and stress are among them.</summary>
    public List<int> Largest { get; } = [];

    /// <summary>The reduced equations of one set of closed switches.</summary>
    public static long[] Reduce(SwitchedNetwork network, ReadOnlySpan<bool> closed)
    {
        PhaseForest[] forests = [PhaseForest.Of(network, closed)];
        LoopSet loops = LoopSet.Of(network, forests);
        var rows = new long[loops.Count * network.BranchCount];
        for (int loop = 0; loop < loops.Count; loop++)
        {
            ReadOnlySpan<int> branches = loops.Branches(loop), signs = loops.Signs(loop);
            for (int e = 0; e < branches.Length; e++)
            {
                rows[(loop * network.BranchCount) + branches[e]] = signs[e];
            }
        }

        int rank = IntegerEchelon.Reduce(rows, loops.Count, network.BranchCount);
        return rows[..(rank * network.BranchCount)];
    }
}
