using ScNet.Kernel;

namespace ScNet.SteadyState.Exponential;

/// <summary>
/// A network of resistors, capacitors and inductors with an input source and a load, and which resistors conduct in
/// each phase. Node 0 is the reference. Connections only: values come with <see cref="NetworkValues{T}"/>.
/// </summary>
internal sealed class SwitchedLinearNetwork
{
    /// <summary>The number of nodes, the reference included.</summary>
    public required int NodeCount { get; init; }

    /// <summary>Switches and series resistances.</summary>
    public required NodePair[] Resistors { get; init; }

    /// <summary>All capacitors, parasitic ones included.</summary>
    public required NodePair[] Capacitors { get; init; }

    public required NodePair[] Inductors { get; init; }

    /// <summary>Whether an inductor's winding has a resistance.</summary>
    public required bool[] HasWinding { get; init; }

    public required int InputNode { get; init; }

    public required int OutputNode { get; init; }

    /// <summary>Whether the output is a voltage source; otherwise a constant current is drawn from it.</summary>
    public required bool IsStiff { get; init; }

    /// <summary>Further constant currents, drawn from the first node and given back at the second.</summary>
    public NodePair[] FurtherLoads { get; init; } = [];

    /// <summary>The number of constant inputs: both sources, then the further loads.</summary>
    public int InputCount => NetworkStructure.SourceCount + FurtherLoads.Length;

    /// <summary>Every constant current: its input, and the nodes from which it is drawn and where it comes back.</summary>
    public IEnumerable<(int Input, NodePair Nodes)> Loads
    {
        get
        {
            if (!IsStiff)
            {
                yield return (NetworkStructure.Load, new(OutputNode, 0));
            }

            for (int k = 0; k < FurtherLoads.Length; k++)
            {
                yield return (NetworkStructure.SourceCount + k, FurtherLoads[k]);
            }
        }
    }

    /// <summary>Per phase and resistor: whether it conducts.</summary>
    public required bool[][] Closed { get; init; }

    /// <summary>
    /// The number of conducting diodes, which come last among <see cref="Resistors"/>: constant voltages, each from its
    /// first node (cathode) to its second (anode), without resistance.
    /// </summary>
    public int DiodeCount { get; init; }

    /// <summary>The first diode among <see cref="Resistors"/>.</summary>
    public int FirstDiode => Resistors.Length - DiodeCount;

    /// <summary>Whether inductors that a phase leaves without a path rest there, with no current; otherwise that is a fault.</summary>
    public bool InductorsMayRest { get; init; }

    public int PhaseCount => Closed.Length;
}
