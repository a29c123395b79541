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
        bool hasOverflown = false;
        for (int loop = 0; loop < loops.Count; loop++)
        {
            Rational<T> charge = loopCharges[loop];
            if (charge.IsZero)
            {
                continue;
            }

            ReadOnlySpan<int> members = loops.Branches(loop), signs = loops.Signs(loop);
            Rational<T> opposite = -charge;
            int phase = loops.Phase(loop);
            for (int e = 0; e < members.Length; e++)
            {
                ref Rational<T> sum = ref branches[(members[e] * phases) + phase];
                sum = Rational<T>.Add(sum, signs[e] > 0 ? charge : opposite, ref hasOverflown);
            }
        }

        var switches = new Rational<T>[network.SwitchCount * phases];
        var demand = new Rational<T>[network.NodeCount];
        for (int phase = 0; phase < phases; phase++)
        {
            hasOverflown |= !TryFlowThroughSwitches(network, forests[phase], branches.AsSpan(phase), switches.AsSpan(phase), demand, phases);
        }

        Integers.Demand(!hasOverflown);
        return new BranchFlow<T>(branches, switches);
    }

    // What the branches take from each node comes through the closed switches: leaves first, up to the root. The
    // entries of one phase lie one stride apart.
    private static bool TryFlowThroughSwitches(
        SwitchedNetwork network, PhaseForest forest, ReadOnlySpan<Rational<T>> branches, Span<Rational<T>> switches, Span<Rational<T>> demand, int stride)
    {
        demand.Clear();
        bool hasOverflown = false;
        ReadOnlySpan<int> first = network.BranchFirst, second = network.BranchSecond;
        for (int branch = 0; branch < network.BranchCount; branch++)
        {
            Rational<T> charge = branches[branch * stride];
            if (!charge.IsZero)
            {
                demand[first[branch]] = Rational<T>.Add(demand[first[branch]], charge, ref hasOverflown);
                demand[second[branch]] = Rational<T>.Add(demand[second[branch]], -charge, ref hasOverflown);
            }
        }

        ReadOnlySpan<int> order = forest.NodeOrder, via = forest.ParentSwitch, parent = forest.ParentNode, switchSecond = network.SwitchSecond;
        for (int k = demand.Length - 1; k >= 0; k--)
        {
            int node = order[k];
            if (via[node] >= 0 && demand[node] is { IsZero: false } charge)
            {
                switches[via[node] * stride] = switchSecond[via[node]] == node ? charge : -charge;
                demand[parent[node]] = Rational<T>.Add(demand[parent[node]], charge, ref hasOverflown);
            }
        }

        return !hasOverflown;
    }
}
