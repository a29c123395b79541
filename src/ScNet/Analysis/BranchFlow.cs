using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// Charges of branches and switches in every phase that belong to given loop charges. In a loop of
/// closed switches all charge takes the spanning forest.
/// </summary>
internal sealed class BranchFlow<T>
    where T : struct, IBinaryInteger<T>
{
    private BranchFlow(Rational<T>[] branches, Rational<T>[] switches)
    {
        Branches = branches;
        Switches = switches;
    }

    /// <summary>Charge through each branch from its first terminal to its second; index branch · phases + phase.</summary>
    public Rational<T>[] Branches { get; }

    /// <summary>Charge through each switch from its first terminal to its second; index switch · phases + phase.</summary>
    public Rational<T>[] Switches { get; }

    public static BranchFlow<T> Of(SwitchedNetwork network, PhaseForest[] forests, LoopSet loops, Rational<T>[] loopCharges)
    {
        int phases = forests.Length;
        var branches = new Rational<T>[network.BranchCount * phases];
        for (int loop = 0; loop < loops.Count; loop++)
        {
            Rational<T> charge = loopCharges[loop];
            if (charge.IsZero)
            {
                continue;
            }

            ReadOnlySpan<int> members = loops.Branches(loop), signs = loops.Signs(loop);
            for (int e = 0; e < members.Length; e++)
            {
                ref Rational<T> sum = ref branches[(members[e] * phases) + loops.Phase(loop)];
                sum += signs[e] > 0 ? charge : -charge;
            }
        }

        var switches = new Rational<T>[network.SwitchCount * phases];
        var demand = new Rational<T>[network.NodeCount];
        for (int phase = 0; phase < phases; phase++)
        {
            FlowThroughSwitches(network, forests[phase], branches, switches, demand, phase, phases);
        }

        return new BranchFlow<T>(branches, switches);
    }

    // What the branches take from each node comes through the closed switches: leaves first, up to the root.
    private static void FlowThroughSwitches(
        SwitchedNetwork network, PhaseForest forest, Rational<T>[] branches, Rational<T>[] switches, Rational<T>[] demand, int phase, int phases)
    {
        demand.AsSpan().Clear();
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            Rational<T> charge = branches[(branch * phases) + phase];
            if (!charge.IsZero)
            {
                demand[network.BranchFirst[branch]] += charge;
                demand[network.BranchSecond[branch]] -= charge;
            }
        }

        for (int k = network.NodeCount - 1; k >= 0; k--)
        {
            int node = forest.NodeOrder[k];
            int via = forest.ParentSwitch[node];
            if (via >= 0 && !demand[node].IsZero)
            {
                switches[(via * phases) + phase] = network.SwitchSecond[via] == node ? demand[node] : -demand[node];
                demand[forest.ParentNode[node]] += demand[node];
            }
        }
    }
}
