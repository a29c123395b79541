using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// The charge that held currents drive at a steady rate through each capacitor in each phase: of all flows that carry
/// them the one of least Σ g² / C, sources counting as capacitors without bound.
/// </summary>
/// <remarks>
/// Equations: docs/theory/averages-with-inductors.md, "Charge sharing". Exact for capacitors that no chain of loops of
/// held voltages joins with the path of a held current. Cost: linear, and by the fill of the loops' triangle where they share.
/// </remarks>
internal sealed class SteadyShare
{
    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly TopologySolution _topology;
    private readonly Quantity[] _branches;
    private readonly int _phases;

    private SteadyShare(Converter converter, TopologySolution topology, Quantity[] branches)
    {
        (_converter, _network, _topology, _branches, _phases) = (converter, converter.Network, topology, branches, converter.Network.PhaseCount);
    }

    /// <summary>What is left for impulses.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of the mode.</param>
    /// <param name="branches">The charges of the slow limit, index branch · phases + phase.</param>
    public static ChargeSharing Sharing(Converter converter, TopologySolution topology, Quantity[] branches)
    {
        Quantity[] steady = Of(converter, topology, branches);
        int phases = converter.Network.PhaseCount;
        var coefficients = new Quantity[converter.Capacitors.Count];
        double ohms = 0;
        for (int i = 0; i < coefficients.Length; i++)
        {
            Quantity sum = Quantity.Zero;
            bool isExact = true;
            for (int j = 0; j < phases && !topology.IsTied; j++)
            {
                Quantity rest = QuantityArithmetic.Add(branches[(i * phases) + j], -steady[(i * phases) + j]);
                sum = QuantityArithmetic.Add(sum, QuantityArithmetic.Multiply(rest, rest));
                isExact &= rest.IsExact;
            }

            // a number stays one also where it happens to be zero
            Quantity half = QuantityArithmetic.Multiply(sum, Quantity.Exact(1, 2));
            coefficients[i] = isExact ? half : Quantity.Numeric(half.ToDouble());
            ohms += coefficients[i].ToDouble() * converter.Capacitors[i].ElastancePerFarad;
        }

        return new ChargeSharing(new NamedList<Quantity>(coefficients, converter.Capacitors.Names), ohms);
    }

    /// <summary>The steady part of the charges of a few branches, as numbers.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of the mode.</param>
    /// <param name="branches">The charges, index branch · phases + phase.</param>
    public static SparseVector Of(Converter converter, TopologySolution topology, SparseVector branches)
    {
        var charges = new Quantity[converter.Network.BranchCount * converter.Network.PhaseCount];
        charges.AsSpan().Fill(Quantity.Zero);
        for (int e = 0; e < branches.Count; e++)
        {
            charges[branches.Indices[e]] = Quantity.Numeric(branches.Values[e]);
        }

        return SparseVector.OfDense(Array.ConvertAll(new SteadyShare(converter, topology, charges).Find(), q => q.ToDouble()));
    }

    /// <summary>The steady part of every capacitor's charge in every phase, index capacitor · phases + phase.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of the mode.</param>
    /// <param name="branches">The charges of the slow limit, index branch · phases + phase.</param>
    public static Quantity[] Of(Converter converter, TopologySolution topology, Quantity[] branches) => new SteadyShare(converter, topology, branches).Find();

    private Quantity[] Find()
    {
        var steady = new Quantity[_network.CapacitorCount * _phases];
        steady.AsSpan().Fill(Quantity.Zero);
        for (int phase = 0; phase < _phases; phase++)
        {
            ThroughTree(phase, steady);
            Share(phase, steady);
        }

        return steady;
    }

    // What the held currents bring to each group leaves it by the tree: leaves first, up to the root.
    private void ThroughTree(int phase, Quantity[] steady)
    {
        PhaseForest forest = _topology.Forests[phase];
        Dictionary<int, Quantity> surplus = [];
        foreach (int branch in _network.HeldCurrents.AsSpan(0, _network.HeldCurrentCount))
        {
            Quantity charge = _branches[(branch * _phases) + phase];
            Bring(forest.Group[_network.BranchSecond[branch]], charge);
            Bring(forest.Group[_network.BranchFirst[branch]], -charge);
        }

        for (int k = forest.GroupCount - 1; k >= 0; k--)
        {
            int group = forest.GroupOrder[k], via = forest.ParentBranch[group];
            if (via >= 0 && surplus.TryGetValue(group, out Quantity charge))
            {
                if (via < _network.CapacitorCount)
                {
                    steady[(via * _phases) + phase] = forest.SignTowardsParent(group) > 0 ? charge : -charge;
                }

                Bring(forest.ParentGroup[group], charge);
            }
        }

        void Bring(int group, Quantity charge) =>
            surplus[group] = surplus.TryGetValue(group, out Quantity before) ? QuantityArithmetic.Add(before, charge) : charge;
    }

    // Loops of held voltages that a chain of capacitors joins with the currents' path share them by capacitance.
    private void Share(int phase, Quantity[] steady)
    {
        LoopSet loops = _topology.Loops!;
        int capacitors = _network.CapacitorCount;
        DisjointSets joined = new(capacitors);
        List<int> own = [.. Enumerable.Range(0, loops.VoltageLoopCount).Where(l => loops.Phase(l) == phase && FirstCapacitor(loops, l) >= 0)];
        foreach (int loop in own)
        {
            foreach (int branch in loops.Branches(loop))
            {
                if (branch < capacitors)
                {
                    joined.Join(branch, FirstCapacitor(loops, loop));
                }
            }
        }

        HashSet<int> carrying = [.. Enumerable.Range(0, capacitors).Where(c => IsCarrying(c)).Select(joined.Find)];
        List<int> sharing = own.FindAll(l => carrying.Contains(joined.Find(FirstCapacitor(loops, l))));
        if (sharing.Count == 0)
        {
            return;
        }

        HashSet<int> parts = [.. sharing.Select(l => joined.Find(FirstCapacitor(loops, l)))];
        int[] members = [.. Enumerable.Range(0, capacitors).Where(c => parts.Contains(joined.Find(c)))];
        SparseVector[] columns =
        [
            SparseVector.Of([.. members], [.. members.Select(c => steady[(c * _phases) + phase].ToDouble())]),
            .. sharing.Select(l => Charges(loops, l)),
        ];
        double[] amounts = LeastDissipation.Of(Array.ConvertAll(columns, column => column.Weighted(c => 1 / Math.Sqrt(_converter.Capacitors[c].Farads))))
            .Amounts([1, .. new double[sharing.Count]]);
        foreach (int c in members)
        {
            double sum = 0;
            for (int k = 0; k < columns.Length; k++)
            {
                sum += amounts[k] * columns[k][c];
            }

            steady[(c * _phases) + phase] = Quantity.Numeric(sum);
        }

        bool IsCarrying(int c) => steady[(c * _phases) + phase].Sign != 0;
    }

    private SparseVector Charges(LoopSet loops, int loop)
    {
        (int Branch, int Sign)[] members =
            [.. loops.Branches(loop).ToArray().Zip(loops.Signs(loop).ToArray()).Where(m => m.First < _network.CapacitorCount)];
        return SparseVector.Of([.. members.Select(m => m.Branch)], [.. members.Select(m => (double)m.Sign)]);
    }

    private int FirstCapacitor(LoopSet loops, int loop)
    {
        foreach (int branch in loops.Branches(loop))
        {
            if (branch < _network.CapacitorCount)
            {
                return branch;
            }
        }

        return -1;
    }
}
