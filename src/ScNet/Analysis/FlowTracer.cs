using System.Numerics;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// Charges of branches and switches that belong to charges round a few loops; <see cref="BranchFlow{T}"/>
/// gives the same for all elements at once. Cost: by the elements that take part.
/// </summary>
internal sealed class FlowTracer<T>(SwitchedNetwork network, PhaseForest[] forests)
    where T : struct, IBinaryInteger<T>
{
    private readonly Rational<T>[] _charge = new Rational<T>[network.BranchCount];
    private readonly Rational<T>[] _demand = new Rational<T>[network.NodeCount];
    private readonly bool[] _isDue = new bool[network.NodeCount];
    private readonly int[]?[] _place = new int[]?[forests.Length];

    /// <summary>Follows the charges.</summary>
    /// <param name="loops">The loops.</param>
    /// <param name="charges">Some of them, each with the charge round it.</param>
    public FlowDirection Trace(LoopSet loops, IEnumerable<(int Loop, Rational<T> Charge)> charges)
    {
        List<(int Index, double Value)> branches = [], switches = [];
        foreach (IGrouping<int, (int Loop, Rational<T> Charge)> phase in charges.GroupBy(c => loops.Phase(c.Loop)))
        {
            List<int> touched = [];
            foreach ((int loop, Rational<T> charge) in phase)
            {
                ReadOnlySpan<int> members = loops.Branches(loop), signs = loops.Signs(loop);
                for (int e = 0; e < members.Length; e++)
                {
                    touched.Add(members[e]);
                    _charge[members[e]] += signs[e] > 0 ? charge : -charge;
                }
            }

            Collect(phase.Key, touched, branches, switches);
        }

        return new FlowDirection(Vector(branches), Vector(switches));
    }

    private static SparseVector Vector(List<(int Index, double Value)> entries) =>
        SparseVector.Of([.. entries.Select(e => e.Index)], [.. entries.Select(e => e.Value)]);

    // What the branches take from each node comes through the closed switches: leaves first, up to the root.
    private void Collect(int phase, List<int> touched, List<(int Index, double Value)> branches, List<(int Index, double Value)> switches)
    {
        int phases = network.PhaseCount;
        PhaseForest forest = forests[phase];
        int[] place = _place[phase] ??= Places(forest);
        PriorityQueue<int, int> due = new();
        foreach (int branch in touched)
        {
            Rational<T> charge = _charge[branch];
            _charge[branch] = Rational<T>.Zero;
            if (!charge.IsZero)
            {
                branches.Add(((branch * phases) + phase, charge.ToDouble()));
                Demand(network.BranchFirst[branch], charge);
                Demand(network.BranchSecond[branch], -charge);
            }
        }

        while (due.TryDequeue(out int node, out _))
        {
            Rational<T> demand = _demand[node];
            (_demand[node], _isDue[node]) = (Rational<T>.Zero, false);
            int via = forest.ParentSwitch[node];
            if (via >= 0 && !demand.IsZero)
            {
                switches.Add(((via * phases) + phase, (network.SwitchSecond[via] == node ? demand : -demand).ToDouble()));
                Demand(forest.ParentNode[node], demand);
            }
        }

        void Demand(int node, Rational<T> charge)
        {
            _demand[node] += charge;
            if (!_isDue[node])
            {
                _isDue[node] = true;
                due.Enqueue(node, -place[node]);
            }
        }
    }

    private static int[] Places(PhaseForest forest)
    {
        var place = new int[forest.NodeOrder.Length];
        for (int k = 0; k < place.Length; k++)
        {
            place[forest.NodeOrder[k]] = k;
        }

        return place;
    }
}
