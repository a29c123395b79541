using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Networks;

/// <summary>What the loops of all phases decide: every voltage and every charge, as whole numbers.</summary>
internal sealed class NetworkSolution
{
    private NetworkSolution(long[] voltages, long[][] charges)
    {
        Voltages = voltages;
        Charges = charges;
        OutputCharge = charges.Sum(phase => phase[LoopSpace.OutputColumn]);
    }

    /// <summary>The voltage of each branch without load, positive less negative end; the input's is the scale and positive.</summary>
    public IReadOnlyList<long> Voltages { get; }

    /// <summary>Per phase the charge through each branch from its positive to its negative end; that of the input is what it gives, negated.</summary>
    public IReadOnlyList<IReadOnlyList<long>> Charges { get; }

    /// <summary>The charge into the output in a period, the scale of charges; positive.</summary>
    public long OutputCharge { get; }

    /// <summary>
    /// Solves phases whose loops are independent of one another and one fewer than branches, so that they fix every
    /// voltage and every charge.
    /// </summary>
    /// <param name="phases">The loops of each phase.</param>
    /// <param name="solution">The solution.</param>
    /// <returns>False where the loops leave something open, short-circuit input or output, or leave a capacitor without charge or voltage.</returns>
    public static bool TrySolve(IReadOnlyList<LoopSpace> phases, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out NetworkSolution? solution)
    {
        solution = null;
        int width = phases[0].BranchCount, loops = phases.Sum(p => p.Dimension);
        if (loops != width - 1)
        {
            return false;
        }

        long[] equations = new long[loops * width];
        int row = 0;
        foreach (LoopSpace phase in phases)
        {
            for (int loop = 0; loop < phase.Dimension; loop++, row++)
            {
                for (int c = 0; c < width; c++)
                {
                    equations[(row * width) + c] = phase.Row(loop)[c];
                }
            }
        }

        // charges: the loops' amounts at which every capacitor ends as it began
        int capacitors = width - LoopSpace.FirstCapacitorColumn;
        long[] balance = new long[capacitors * loops];
        for (int c = 0; c < capacitors; c++)
        {
            for (int loop = 0; loop < loops; loop++)
            {
                balance[(c * loops) + loop] = equations[(loop * width) + c + LoopSpace.FirstCapacitorColumn];
            }
        }

        long[] voltages = new long[width], amounts = new long[loops];
        if (!NullVector.TryFind((long[])equations.Clone(), width, voltages) || voltages.Contains(0) || !NullVector.TryFind(balance, loops, amounts))
        {
            return false;
        }

        long[][] charges = ChargesOf(phases, amounts, width);
        long delivered = charges.Sum(phase => phase[LoopSpace.OutputColumn]);
        for (int c = LoopSpace.FirstCapacitorColumn; c < width; c++)
        {
            if (charges.All(phase => phase[c] == 0))
            {
                return false;
            }
        }

        if (delivered < 0)
        {
            charges = [.. charges.Select(phase => phase.Select(charge => -charge).ToArray())];
        }

        solution = new NetworkSolution(voltages, charges);
        return true;
    }

    private static long[][] ChargesOf(IReadOnlyList<LoopSpace> phases, long[] amounts, int width)
    {
        int next = 0;
        long[][] charges = new long[phases.Count][];
        for (int phase = 0; phase < phases.Count; phase++)
        {
            charges[phase] = new long[width];
            for (int loop = 0; loop < phases[phase].Dimension; loop++, next++)
            {
                for (int c = 0; c < width; c++)
                {
                    charges[phase][c] += amounts[next] * phases[phase].Row(loop)[c];
                }
            }
        }

        return charges;
    }
}
