using CsCheck;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Tests.Kernel;

/// <summary>
/// A random network as the kernel sees it, and what the plain definitions say of it: potentials of contracted nodes and
/// charges of branches as unknowns, ranks by dense fractions, contraction by flooding. Nothing of the kernel is used.
/// </summary>
internal sealed record KernelSketch(int NodeCount, NodePair[] Capacitors, NetworkPort[] Ports, NodePair[] Switches, int[] Weights, bool[] Closed)
{
    public int BranchCount => Capacitors.Length + Ports.Length;

    public int FirstGiven => Capacitors.Length + Ports.Count(p => !p.IsGiven);

    /// <summary>Multigraphs with parallel and looping elements, floating nodes, one to three phases, up to two ports of either kind, some of held current.</summary>
    public static Gen<KernelSketch> Any { get; } =
        from nodes in Gen.Int[2, 7]
        let node = Gen.Int[0, nodes - 1]
        let pair = Gen.Select(node, node, (a, b) => new NodePair(a, b))
        from capacitors in pair.Array[0, 4]
        from following in Gen.Select(pair, Gen.Int[0, 3], (p, held) => new NetworkPort(p, IsGiven: false, held == 0)).Array[0, 2]
        from given in Gen.Select(pair, Gen.Int[0, 3], (p, held) => new NetworkPort(p, IsGiven: true, held == 0)).Array[1, 2]
        from switches in pair.Array[0, 8]
        from weights in Gen.Int[1, 3].Array[1, 3]
        from closed in Gen.Bool.Array[switches.Length * weights.Length]
        select new KernelSketch(nodes, capacitors, [.. following, .. given], switches, weights, closed);

    public NodePair Ends(int branch) => branch < Capacitors.Length ? Capacitors[branch] : Ports[branch - Capacitors.Length].Nodes;

    public bool IsCurrentHeld(int branch) => branch >= Capacitors.Length && Ports[branch - Capacitors.Length].IsCurrentHeld;

    /// <summary>The least node with which each is joined by the closed switches of a phase, and by branches of held voltage if wished.</summary>
    public int[] Joined(int phase, bool byBranches = false)
    {
        int[] joined = [.. Enumerable.Range(0, NodeCount)];
        IEnumerable<NodePair> links = Switches.Where((_, s) => Closed[(phase * Switches.Length) + s]);
        links = byBranches ? links.Concat(Enumerable.Range(0, BranchCount).Where(b => !IsCurrentHeld(b)).Select(Ends)) : links;
        for (int round = 0; round < NodeCount; round++)
        {
            foreach (NodePair link in links)
            {
                joined[link.First] = joined[link.Second] = Math.Min(joined[link.First], joined[link.Second]);
            }
        }

        return joined;
    }

    /// <summary>What the network allows, from the ranks of its equations.</summary>
    public NetworkStatus Status()
    {
        if (Enumerable.Range(0, BranchCount).Where(IsCurrentHeld).Any(b => Enumerable.Range(0, Weights.Length)
            .Any(j => Joined(j, byBranches: true) is var joined && joined[Ends(b).First] != joined[Ends(b).Second])))
        {
            return NetworkStatus.Interrupted;
        }

        Fraction[][] voltages = VoltageEquations();
        int given = BranchCount - FirstGiven, unknowns = voltages.Length == 0 ? 0 : voltages[0].Length - given;
        int rank = DenseFractions.Rank(Columns(voltages, c => c < unknowns));
        if (DenseFractions.Rank(voltages) > rank)
        {
            return NetworkStatus.Contradictory;
        }

        int firstBranch = unknowns - FirstGiven;
        return Enumerable.Range(Capacitors.Length, FirstGiven - Capacitors.Length).Any(port =>
                DenseFractions.Rank(Columns(voltages, c => c < unknowns && c != firstBranch + port)) == rank) ? NetworkStatus.Open
            : HasCirculation() ? NetworkStatus.Circulating : NetworkStatus.Solved;
    }

    // Potentials by phase and node, then branch voltages, those of given ports last.
    private Fraction[][] VoltageEquations()
    {
        int potentials = NodeCount * Weights.Length;
        List<Fraction[]> rows = [];
        for (int phase = 0; phase < Weights.Length; phase++)
        {
            int[] joined = Joined(phase);
            rows.AddRange(Enumerable.Range(0, BranchCount).Where(b => !IsCurrentHeld(b)).Select(b => Row([(b, -1)], [(phase, b, 1)], joined)));
            rows.Add(Row([], [], joined));
            rows[^1][phase * NodeCount] = 1;
        }

        foreach (int b in Enumerable.Range(0, BranchCount).Where(IsCurrentHeld))
        {
            var row = new Fraction[potentials + BranchCount];
            for (int phase = 0; phase < Weights.Length; phase++)
            {
                Fraction[] part = Row([(b, -Weights[phase])], [(phase, b, Weights[phase])], Joined(phase));
                row = [.. row.Zip(part, (x, y) => x + y)];
            }

            rows.Add(row);
        }

        return [.. rows];

        Fraction[] Row((int Branch, int Factor)[] voltages, (int Phase, int Branch, int Factor)[] differences, int[] joined)
        {
            var row = new Fraction[potentials + BranchCount];
            foreach ((int branch, int factor) in voltages)
            {
                row[potentials + branch] += factor;
            }

            foreach ((int phase, int branch, int factor) in differences)
            {
                row[(phase * NodeCount) + joined[Ends(branch).First]] += factor;
                row[(phase * NodeCount) + joined[Ends(branch).Second]] -= factor;
            }

            return row;
        }
    }

    // Whether charge can flow without any at the ports whose voltage follows: a column per branch and phase, or per held current.
    private bool HasCirculation()
    {
        int columns = BranchCount * Weights.Length;
        List<Fraction[]> rows = [];
        for (int phase = 0; phase < Weights.Length; phase++)
        {
            int[] joined = Joined(phase);
            for (int node = 0; node < NodeCount; node++)
            {
                var row = new Fraction[columns];
                for (int b = 0; b < BranchCount; b++)
                {
                    row[(b * Weights.Length) + phase] += (joined[Ends(b).First] == node ? 1 : 0) - (joined[Ends(b).Second] == node ? 1 : 0);
                }

                rows.Add(row);
            }
        }

        for (int b = 0; b < BranchCount; b++)
        {
            for (int phase = 1; phase < Weights.Length && IsCurrentHeld(b); phase++)
            {
                var share = new Fraction[columns];
                share[b * Weights.Length] = Weights[phase];
                share[(b * Weights.Length) + phase] = -Weights[0];
                rows.Add(share);
            }

            if (b < FirstGiven)
            {
                var balance = new Fraction[columns];
                balance.AsSpan(b * Weights.Length, Weights.Length).Fill(1);
                rows.Add(balance);
            }
        }

        return DenseFractions.Rank([.. rows]) < columns;
    }

    private static Fraction[][] Columns(Fraction[][] rows, Predicate<int> which) => [.. rows.Select(r => r.Where((_, c) => which(c)).ToArray())];
}
