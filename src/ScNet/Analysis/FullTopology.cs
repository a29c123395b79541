using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The topology of a mode as the exact steady state sees it: with the parasitic capacitances as capacitors, which
/// are numbered after the converter's own.
/// </summary>
/// <remarks>
/// Loops that demand different voltages of a parasitic capacitance are no contradiction here: what they would be is a
/// direction in which charge from the input circulates (docs/theory/parasitic-capacitances.md). The flow to the load
/// stays the one of the network without them. Without parasitic capacitances all is the mode's own topology.
/// </remarks>
internal sealed class FullTopology
{
    private readonly IReadOnlyList<NodePair> _parasitics;
    private readonly Lazy<KnownPotentials> _known;

    private FullTopology(
        TopologySolution topology,
        IReadOnlyList<NodePair> parasitics,
        SwitchedNetwork network,
        PhaseForest[] forests,
        IReadOnlyList<FlowDirection> directions,
        Func<KnownPotentials> known)
    {
        Topology = topology;
        _parasitics = parasitics;
        Network = network;
        Forests = forests;
        Directions = directions;
        _known = new(known);
    }

    /// <summary>The mode's own topology, which holds the flow to the load.</summary>
    public TopologySolution Topology { get; }

    public SwitchedNetwork Network { get; }

    /// <summary>Per phase, from 0.</summary>
    public PhaseForest[] Forests { get; }

    /// <summary>The directions in which charge can circulate, from the input or not.</summary>
    public IReadOnlyList<FlowDirection> Directions { get; }

    /// <summary>Which potentials the periodic solution has.</summary>
    public KnownPotentials Known => _known.Value;

    /// <summary>Solves, or reads what was solved.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">The topology of one of its modes, with a result.</param>
    public static FullTopology Of(Converter converter, TopologySolution topology)
    {
        if (converter.ParasiticBranches.Count == 0)
        {
            return new FullTopology(
                topology, [], converter.Network, topology.Forests, topology.Directions, () => KnownPotentials.Of(topology.Settled!.IdealPoint, topology.Settled.BlockingVoltages));
        }

        // threads that meet here find the same
        if (topology.Full is not { } full || !ReferenceEquals(full._parasitics, converter.ParasiticBranches))
        {
            full = topology.Full = Solve(converter, topology);
        }

        return full;
    }

    /// <summary>Solves anew.</summary>
    public static FullTopology Solve(Converter converter, TopologySolution topology)
    {
        SwitchedNetwork network = converter.Network.WithCapacitors([.. converter.ParasiticBranches]);
        var forests = new PhaseForest[network.PhaseCount];
        for (int phase = 0; phase < forests.Length; phase++)
        {
            forests[phase] = PhaseForest.Of(network, network.ClosedIn(topology.Mode.Index, phase));
        }

        LoopSet loops = LoopSet.Of(network, forests);
        try
        {
            return Solve<long>(converter, topology, network, forests, loops);
        }
        catch (OverflowException)
        {
            return Solve<BigInteger>(converter, topology, network, forests, loops);
        }
    }

    private static FullTopology Solve<T>(Converter converter, TopologySolution topology, SwitchedNetwork network, PhaseForest[] forests, LoopSet loops)
        where T : struct, IBinaryInteger<T>
    {
        LoopSolution<T> solution = LoopSolution<T>.Of(network, loops);
        FlowTracer<T> tracer = new(network, forests);
        return new FullTopology(
            topology,
            converter.ParasiticBranches,
            network,
            forests,
            FlowDirections.Of(network, topology.Mode, forests, loops, solution, tracer, withInput: true),
            () => KnownPotentials.Of(network, forests, solution));
    }
}
