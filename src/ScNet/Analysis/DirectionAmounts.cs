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
    /// <summary>The amounts in the fast limit, in the order of <see cref="TopologySolution.Directions"/>.</summary>
    public static double[] Fast(Converter converter, TopologySolution topology) => OfDirections(topology, FastWays(converter, topology));

    /// <summary>The amounts in the slow limit; zero for directions that do not move.</summary>
    public static double[] Slow(Converter converter, TopologySolution topology) => OfDirections(topology, SlowWays(converter, topology));

    /// <summary>
    /// Least dissipation: minimise Σ R a² / D over switches and series resistances. Combinations that no
    /// resistance sees are loops of capacitors and sources without a switch, which obey Kirchhoff's
    /// voltage law at every instant and so at the phase ends.
    /// </summary>
    /// <returns>How much of the flow that topology gives, then of each direction's <see cref="FlowDirection.Way"/>.</returns>
    public static double[] FastWays(Converter converter, TopologySolution topology)
    {
        SwitchedNetwork network = converter.Network;
        int phases = network.PhaseCount;
        double[] inverseDuty = Array.ConvertAll(network.Duties, d => 1 / d.ToDouble());
        FlowDirection[] ways = Ways(topology);
        LeastDissipation mixture = LeastDissipation.Of(Array.ConvertAll(ways, way =>
            way.Switches.Weighted(e => Math.Sqrt(converter.Switches[e / phases].Ohms * inverseDuty[e % phases])).Followed(
                way.Branches.Weighted(e => e < network.CapacitorCount * phases ? Math.Sqrt(converter.Capacitors[e / phases].EsrOhms * inverseDuty[e % phases]) : 0),
                network.SwitchCount * phases)));
        double[] amounts = mixture.Amounts(Delivered(topology));
        if (mixture.Unseen() is { Count: > 0 } unseen)
        {
            SparseVector[] charges = Array.ConvertAll(ways, way => CapacitorCharges(converter, way));
            double[] added = VoltageLaw.Amounts([.. unseen.Select(u => Mixed(charges, u))], Mixed(charges, SparseVector.OfDense(amounts)), phases);
            for (int u = 0; u < added.Length; u++)
            {
                for (int e = 0; e < unseen[u].Count; e++)
                {
                    amounts[unseen[u].Indices[e]] += added[u] * unseen[u].Values[e];
                }
            }
        }

        return amounts;
    }

    /// <summary>Kirchhoff's voltage law at the phase ends.</summary>
    /// <returns>How much of the flow that topology gives, then of each direction's <see cref="FlowDirection.Way"/>.</returns>
    public static double[] SlowWays(Converter converter, TopologySolution topology)
    {
        FlowDirection[] ways = Ways(topology);
        int[] moving = [0, .. Enumerable.Range(1, topology.Directions.Count).Where(k => IsMoving(converter.Network, topology.Directions[k - 1]))];
        double[] delivered = Delivered(topology);
        double[] own = VoltageLaw.Mixture(
            [.. moving.Select(k => CapacitorCharges(converter, ways[k]))], [.. moving.Select(k => delivered[k])], converter.Network.PhaseCount);
        var amounts = new double[ways.Length];
        for (int k = 0; k < moving.Length; k++)
        {
            amounts[moving[k]] = own[k];
        }

        return amounts;
    }

    /// <summary>Whether capacitors take part in a direction in the slow-switching limit.</summary>
    public static bool IsMoving(SwitchedNetwork network, FlowDirection direction) =>
        !direction.IsStillWhenSlow && direction.MovesCapacitors(network.CapacitorCount, network.PhaseCount);

    /// <summary>The flow that topology gives, then each direction's <see cref="FlowDirection.Way"/>.</summary>
    public static FlowDirection[] Ways(TopologySolution topology) => [topology.Own!, .. topology.Directions.Select(d => d.Way)];

    /// <summary>What a unit of each of the <see cref="Ways"/> delivers to the load.</summary>
    public static double[] Delivered(TopologySolution topology) => [1, .. topology.Directions.Select(d => d.Path is null ? 0.0 : 1)];

    private static double[] OfDirections(TopologySolution topology, double[] ways) =>
        [.. topology.Directions.Select((d, k) => d.Path is null ? ways[k + 1] : ways[k + 1] / d.PathShare)];

    // charge over the root of capacitance; index capacitor · phases + phase
    private static SparseVector CapacitorCharges(Converter converter, FlowDirection way)
    {
        int phases = converter.Network.PhaseCount, entries = converter.Network.CapacitorCount * phases;
        return way.Branches.Weighted(e => e < entries ? 1 / Math.Sqrt(converter.Capacitors[e / phases].Farads) : 0);
    }

    private static SparseVector Mixed(SparseVector[] charges, SparseVector amounts)
    {
        Dictionary<int, double> sum = [];
        for (int k = 0; k < amounts.Count; k++)
        {
            SparseVector own = charges[amounts.Indices[k]];
            for (int e = 0; e < own.Count; e++)
            {
                sum[own.Indices[e]] = sum.GetValueOrDefault(own.Indices[e]) + (amounts.Values[k] * own.Values[e]);
            }
        }

        return SparseVector.Of([.. sum.Keys], [.. sum.Values]);
    }
}
