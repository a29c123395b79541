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
    private readonly PriorityQueue<int, int> _due = new();
    private readonly List<(int Loop, Rational<T> Charge)> _charges = [];
    private readonly List<int> _touched = [];
    private readonly List<(int Index, double Value)> _branches = [];
    private readonly List<(int Index, double Value)> _switches = [];
    private readonly int[]?[] _place = new int[]?[forests.Length];

    /// <summary>Follows the charges.</summary>
    /// <param name="loops">The loops.</param>
    /// <param name="charges">Some of them, each with the charge round it.</param>
    public FlowDirection Trace(LoopSet loops, IEnumerable<(int Loop, Rational<T> Charge)> charges)
    {
        _branches.Clear();
        _switches.Clear();
        _charges.Clear();
        _charges.AddRange(charges);
        _charges.Sort((a, b) => loops.Phase(a.Loop).CompareTo(loops.Phase(b.Loop)));
        for (int first = 0; first < _charges.Count;)
        {
            int phase = loops.Phase(_charges[first].Loop);
            _touched.Clear();
            for (; first < _charges.Count && loops.Phase(_charges[first].Loop) == phase; first++)
            {
                (int loop, Rational<T> charge) = _charges[first];
                ReadOnlySpan<int> members = loops.Branches(loop), signs = loops.Signs(loop);
                for (int e = 0; e < members.Length; e++)
                {
                    _touched.Add(members[e]);
                    _charge[members[e]] += signs[e] > 0 ? charge : -charge;
                }
            }

            Collect(phase);
        }

        return new FlowDirection(Vector(_branches), Vector(_switches));
    }

    private static SparseVector Vector(List<(int Index, double Value)> entries)
    {
        var indices = new int[entries.Count];
        var values = new double[entries.Count];
        for (int e = 0; e < indices.Length; e++)
        {
            (indices[e], values[e]) = entries[e];
        }

        return SparseVector.Of(indices, values);
    }

    // What the branches take from each node comes through the closed switches: leaves first, up to the root.
    private void Collect(int phase)
    {
        int phases = network.PhaseCount;
        PhaseForest forest = forests[phase];
        int[] place = _place[phase] ??= Places(forest);
        foreach (int branch in _touched)
        {
            Rational<T> charge = _charge[branch];
            _charge[branch] = Rational<T>.Zero;
            if (!charge.IsZero)
            {
                _branches.Add(((branch * phases) + phase, charge.ToDouble()));
                Demand(network.BranchFirst[branch], charge);
                Demand(network.BranchSecond[branch], -charge);
            }
        }

        while (_due.TryDequeue(out int node, out _))
        {
            Rational<T> demand = _demand[node];
            (_demand[node], _isDue[node]) = (Rational<T>.Zero, false);
            int via = forest.ParentSwitch[node];
            if (via >= 0 && !demand.IsZero)
            {
                _switches.Add(((via * phases) + phase, (network.SwitchSecond[via] == node ? demand : -demand).ToDouble()));
                Demand(forest.ParentNode[node], demand);
            }
        }

        void Demand(int node, Rational<T> charge)
        {
            _demand[node] += charge;
            if (!_isDue[node])
            {
                _isDue[node] = true;
                _due.Enqueue(node, -place[node]);
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
