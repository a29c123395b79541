using System.Numerics;
using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Design;

/// <summary>
/// A phase in which held currents flow at a steady rate: the charge that they bring to each capacitor in the whole of a
/// period spent in it, and the loops of held voltages. Exact, with the capacitances as the fractions they were written as.
/// </summary>
/// <remarks>Equations: docs/theory/split-phase.md.</remarks>
internal sealed class SteadyPhase
{
    private SteadyPhase(int number, bool[] closed, Rational<BigInteger>[] charge, List<Rational<BigInteger>[]> loops)
    {
        (Number, Closed, Charge, Loops) = (number, closed, charge, loops);
        Key = $"{string.Join(' ', charge)}|{string.Join('|', loops.Select(l => string.Join(' ', l)))}";
    }

    /// <summary>The number of the phase of which it is a part, from 1.</summary>
    public int Number { get; }

    /// <summary>Whether each switch is closed.</summary>
    public bool[] Closed { get; }

    /// <summary>The charge of each capacitor.</summary>
    public Rational<BigInteger>[] Charge { get; }

    /// <summary>How often each loop runs through each capacitor from its first terminal to its second.</summary>
    public List<Rational<BigInteger>[]> Loops { get; }

    /// <summary>What tells it from others.</summary>
    public string Key { get; }

    /// <summary>The phase with some switches closed; null where a held current has no path.</summary>
    /// <param name="network">The network.</param>
    /// <param name="elastances">One over the capacitance of each capacitor.</param>
    /// <param name="currents">The current of each branch that holds one, index as in <see cref="NetworkGraph.HeldCurrents"/>.</param>
    /// <param name="number">Of which phase it is a part, from 1.</param>
    /// <param name="closed">Whether each switch is closed.</param>
    public static SteadyPhase? Of(
        SwitchedNetwork network, Rational<BigInteger>[] elastances, Rational<BigInteger>[] currents, int number, bool[] closed)
    {
        PhaseForest forest = PhaseForest.Of(network, closed);
        int capacitors = network.CapacitorCount;
        var charge = new Rational<BigInteger>[capacitors];
        for (int k = 0; k < currents.Length; k++)
        {
            int branch = network.HeldCurrents[k];
            if (!forest.AreConnected(network.BranchFirst[branch], network.BranchSecond[branch]))
            {
                return null;
            }

            TreePath back = forest.Path(network.BranchSecond[branch], network.BranchFirst[branch]);
            while (back.MoveNext())
            {
                if (back.Edge < capacitors)
                {
                    charge[back.Edge] += back.Sign > 0 ? currents[k] : -currents[k];
                }
            }
        }

        List<Rational<BigInteger>[]> loops = [.. Enumerable.Range(0, network.BranchCount)
            .Where(b => !network.IsCurrentHeld(b) && !forest.IsTreeBranch(b)).Select(b => Loop(network, forest, b)).Where(l => l.Any(e => !e.IsZero))];
        Share(elastances, charge, loops);
        return new SteadyPhase(number, closed, charge, loops);
    }

    private static Rational<BigInteger>[] Loop(SwitchedNetwork network, PhaseForest forest, int branch)
    {
        var loop = new Rational<BigInteger>[network.CapacitorCount];
        if (branch < loop.Length)
        {
            loop[branch] = Rational<BigInteger>.One;
        }

        TreePath back = forest.Path(network.BranchSecond[branch], network.BranchFirst[branch]);
        while (back.MoveNext())
        {
            if (back.Edge < loop.Length)
            {
                loop[back.Edge] += Rational<BigInteger>.Of(back.Sign);
            }
        }

        return loop;
    }

    // of all flows that carry the currents the one of the least sum of charge² / capacitance
    private static void Share(Rational<BigInteger>[] elastances, Rational<BigInteger>[] charge, List<Rational<BigInteger>[]> loops)
    {
        if (loops.Count == 0)
        {
            return;
        }

        VoltageSpace<BigInteger> amounts = ExactSpace.Where(loops.Count, [.. loops.Select(row => (Rational<BigInteger>[])
            [.. loops.Select(other => ExactSpace.Product(row, other, elastances)), ExactSpace.Product(row, charge, elastances)])])!;
        for (int l = 0; l < loops.Count; l++)
        {
            for (int i = 0; i < charge.Length; i++)
            {
                charge[i] += loops[l][i] * amounts.Origin[l];
            }
        }
    }
}
