using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// How much charge takes each of the directions that topology leaves free, in either limit.
/// </summary>
/// <remarks>
/// Equations: docs/theory/value-decided-flow.md. The flows that deliver to the load are mixed as they are,
/// not as differences, so that independent parts stay independent and a small share is not what is left of one.
/// </remarks>
internal static class DirectionAmounts
{
    // A current below this share of what adds up to it is what rounding left of none: mixtures are known no better.
    private const double RoundingShare = 1e-13;

    /// <summary>The amounts in the fast limit, in the order of <see cref="TopologySolution.Directions"/>.</summary>
    public static double[] Fast(Converter converter, TopologySolution topology) => OfDirections(topology, FastWays(converter, topology));

    /// <summary>The amounts in the slow limit; zero for directions that do not move.</summary>
    public static double[] Slow(Converter converter, TopologySolution topology) => OfDirections(topology, SlowWays(converter, topology));

    /// <summary>
    /// Least dissipation: minimise Σ R a² / D over switches, series resistances and windings. Combinations that no
    /// resistance sees are loops of capacitors and sources without a switch, which obey Kirchhoff's
    /// voltage law at every instant and so at the phase ends, and loops of inductors without a winding's resistance,
    /// which share a current by inverse inductance, as they do from rest.
    /// </summary>
    /// <returns>How much of the flow that topology gives, then of each direction's <see cref="FlowDirection.Way"/>.</returns>
    public static double[] FastWays(Converter converter, TopologySolution topology)
    {
        FlowDirection[] ways = Ways(topology);
        LeastDissipation mixture = LeastDissipation.Of(LossesOf(converter, ways));
        double[] amounts = mixture.Amounts(Delivered(topology));
        if (ShareByInductance(converter, ways, mixture.Unseen(), amounts) is { Count: > 0 } unseen)
        {
            SparseVector[] charges = Array.ConvertAll(ways, way => CapacitorCharges(converter, way.Branches));
            double[] added = VoltageLaw.Amounts(
                [.. unseen.Select(u => Mixed(charges, u))], Mixed(charges, SparseVector.OfDense(amounts)), converter.Network.PhaseCount);
            Add(amounts, unseen, added);
        }

        return amounts;
    }

    /// <summary>Kirchhoff's voltage law at the phase ends.</summary>
    /// <returns>How much of the flow that topology gives, then of each direction's <see cref="FlowDirection.Way"/>.</returns>
    public static double[] SlowWays(Converter converter, TopologySolution topology)
    {
        FlowDirection[] ways = Ways(topology);
        if (topology.Directions.Any(d => Inductors(converter, d).Count > 0))
        {
            return SlowWaysWithInductors(converter, topology, ways);
        }

        int[] moving = [0, .. Enumerable.Range(1, topology.Directions.Count).Where(k => IsMoving(converter.Network, topology.Directions[k - 1]))];
        double[] delivered = Delivered(topology);
        double[] own = VoltageLaw.Mixture(
            [.. moving.Select(k => CapacitorCharges(converter, ways[k].Branches))], [.. moving.Select(k => delivered[k])], converter.Network.PhaseCount);
        var amounts = new double[ways.Length];
        for (int k = 0; k < moving.Length; k++)
        {
            amounts[moving[k]] = own[k];
        }

        return amounts;
    }

    /// <summary>Whether capacitors take part in a direction in the slow-switching limit; with an inductor's current they always do.</summary>
    public static bool IsMoving(SwitchedNetwork network, FlowDirection direction) =>
        (!direction.IsStillWhenSlow || (direction.Branches.Count > 0 && direction.Branches.Indices[^1] >= network.FirstInductorBranch * network.PhaseCount))
        && direction.MovesCapacitors(network.CapacitorCount, network.PhaseCount);

    /// <summary>The flow that topology gives, then each direction's <see cref="FlowDirection.Way"/>.</summary>
    public static FlowDirection[] Ways(TopologySolution topology) => [topology.Own!, .. topology.Directions.Select(d => d.Way)];

    /// <summary>What a unit of each of the <see cref="Ways"/> delivers to the load.</summary>
    public static double[] Delivered(TopologySolution topology) => [1, .. topology.Directions.Select(d => d.Path is null ? 0.0 : 1)];

    // The fast limit's flow without directions that are still, moved until no mixture of the others sees a voltage on average.
    private static double[] SlowWaysWithInductors(Converter converter, TopologySolution topology, FlowDirection[] ways)
    {
        int[] moving = [.. Enumerable.Range(0, ways.Length).Where(k => k == 0 || IsMoving(converter.Network, topology.Directions[k - 1]))];
        double[] amounts = FastWays(converter, topology);
        foreach (int k in Enumerable.Range(1, ways.Length - 1).Except(moving))
        {
            amounts[0] += topology.Directions[k - 1].Path is null ? 0 : amounts[k];
            amounts[k] = 0;
        }

        SparseVector[] mixtures = [.. moving[1..].Select(k => topology.Directions[k - 1].Path is null ? SparseVector.Unit(k) : SparseVector.Of([0, k], [-1, 1]))];
        SparseVector[] charges = Array.ConvertAll(ways, way => CapacitorCharges(converter, way.Branches));
        SparseVector[] steady = Array.ConvertAll(ways, way => CapacitorCharges(converter, SteadyShare.Of(converter, topology, way.Branches)));
        SparseVector[] losses = LossesOf(converter, ways);
        SparseVector start = SparseVector.OfDense(amounts);
        double[] added = SlowCurrents.Amounts(
            [.. mixtures.Select(m => Mixed(charges, m))],
            [.. mixtures.Select(m => Mixed(steady, m))],
            [.. mixtures.Select(m => Mixed(losses, m))],
            (Mixed(charges, start), Mixed(steady, start)),
            converter.Network.PhaseCount);
        Add(amounts, [.. mixtures], added);
        return amounts;
    }

    // Adds the mixtures that move inductor currents, by least energy, and returns the others. A winding with a resistance rests in all that no resistance sees.
    private static List<SparseVector> ShareByInductance(Converter converter, FlowDirection[] ways, List<SparseVector> unseen, double[] amounts)
    {
        SparseVector[] currents = Array.ConvertAll(ways, way => Inductors(converter, way).Weighted(
            e => converter.Inductors[e / converter.Network.PhaseCount] is { Ohms: 0 } l ? Math.Sqrt(l.Henries) : 0));
        SparseVector[] energies = [.. unseen.Select(u => Mixed(currents, u, RoundingShare))];
        if (Array.TrueForAll(energies, e => e.IsZero))
        {
            return unseen;
        }

        LeastDissipation mixture = LeastDissipation.Of([Mixed(currents, SparseVector.OfDense(amounts)), .. energies]);
        Add(amounts, unseen, mixture.Amounts([1, .. new double[unseen.Count]])[1..]);
        return [.. mixture.Unseen().Where(u => u[0] == 0).Select(u => u.Indices.ToArray().Select(k => SparseVector.Combination(u[k], unseen[k - 1], 0, default))
            .Aggregate((a, b) => SparseVector.Combination(1, a, 1, b)))];
    }

    private static void Add(double[] amounts, List<SparseVector> mixtures, double[] added)
    {
        for (int u = 0; u < added.Length; u++)
        {
            for (int e = 0; e < mixtures[u].Count; e++)
            {
                amounts[mixtures[u].Indices[e]] += added[u] * mixtures[u].Values[e];
            }
        }
    }

    // charge times the root of resistance over duration, of the switches and then of the branches
    private static SparseVector[] LossesOf(Converter converter, FlowDirection[] ways)
    {
        SwitchedNetwork network = converter.Network;
        int phases = network.PhaseCount;
        double[] inverseDuty = Array.ConvertAll(network.Duties, d => 1 / d.ToDouble());
        return Array.ConvertAll(ways, way =>
            way.Switches.Weighted(e => Math.Sqrt(converter.Switches[e / phases].Ohms * inverseDuty[e % phases])).Followed(
                way.Branches.Weighted(e => Math.Sqrt(BranchOhms(converter, e / phases) * inverseDuty[e % phases])),
                network.SwitchCount * phases));
    }

    private static double BranchOhms(Converter converter, int branch) =>
        branch < converter.Network.CapacitorCount ? converter.Capacitors[branch].EsrOhms
        : branch >= converter.Network.FirstInductorBranch ? converter.Inductors[branch - converter.Network.FirstInductorBranch].Ohms
        : 0;

    // the charges of the inductors; index inductor · phases + phase
    private static SparseVector Inductors(Converter converter, FlowDirection way)
    {
        int first = converter.Network.FirstInductorBranch * converter.Network.PhaseCount;
        int start = way.Branches.Indices.BinarySearch(first) is var at && at >= 0 ? at : ~at;
        return SparseVector.Of([.. way.Branches.Indices[start..].ToArray().Select(e => e - first)], way.Branches.Values[start..].ToArray());
    }

    private static double[] OfDirections(TopologySolution topology, double[] ways) =>
        [.. topology.Directions.Select((d, k) => d.Path is null ? ways[k + 1] : ways[k + 1] / d.PathShare)];

    // charge over the root of capacitance; index capacitor · phases + phase
    private static SparseVector CapacitorCharges(Converter converter, SparseVector branches)
    {
        int phases = converter.Network.PhaseCount, entries = converter.Network.CapacitorCount * phases;
        return branches.Weighted(e => e < entries ? 1 / Math.Sqrt(converter.Capacitors[e / phases].Farads) : 0);
    }

    /// <summary>A mixture of flows, less what is below a share of what adds up to it.</summary>
    /// <param name="charges">The flows.</param>
    /// <param name="amounts">How much of each.</param>
    /// <param name="roundingShare">The share.</param>
    public static SparseVector Mixed(SparseVector[] charges, SparseVector amounts, double roundingShare = 0)
    {
        Dictionary<int, (double Sum, double Magnitude)> mixed = [];
        for (int k = 0; k < amounts.Count; k++)
        {
            SparseVector own = charges[amounts.Indices[k]];
            for (int e = 0; e < own.Count; e++)
            {
                (double sum, double magnitude) = mixed.GetValueOrDefault(own.Indices[e]);
                double part = amounts.Values[k] * own.Values[e];
                mixed[own.Indices[e]] = (sum + part, magnitude + Math.Abs(part));
            }
        }

        return SparseVector.Of([.. mixed.Keys], [.. mixed.Values.Select(m => Math.Abs(m.Sum) > roundingShare * m.Magnitude ? m.Sum : 0)]);
    }
}
