using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.SteadyState.Exponential;

/// <summary>A mode of a converter as a switched linear network: series resistances become resistors with an inner node,
/// plates and other parasitic capacitances come after the capacitors.</summary>
internal static class ConverterNetwork
{
    /// <summary>The network and its values.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="outputs">The further outputs, by position, that are to be inputs of the network; none of them otherwise carries a current.</param>
    public static (SwitchedLinearNetwork Network, NetworkValues<DoubleDouble> Values) Of(Converter converter, Mode mode, params IReadOnlyList<int> outputs)
    {
        SwitchedNetwork graph = converter.Network;
        int nodes = graph.NodeCount;
        List<NodePair> resistors = [.. Enumerable.Range(0, graph.SwitchCount).Select(s => new NodePair(graph.SwitchFirst[s], graph.SwitchSecond[s]))];
        List<NodePair> capacitors = [];
        List<double> ohms = [.. converter.Switches.Select(s => s.Ohms)];
        for (int i = 0; i < graph.CapacitorCount; i++)
        {
            int positive = graph.BranchFirst[i];
            if (converter.Capacitors[i].EsrOhms > 0)
            {
                resistors.Add(new(positive, nodes));
                ohms.Add(converter.Capacitors[i].EsrOhms);
                positive = nodes++;
            }

            capacitors.Add(new(positive, graph.BranchSecond[i]));
        }

        ParasiticCapacitance[] parasitics = [.. converter.ParasiticCapacitances];
        capacitors.AddRange(parasitics.Select(p => p.Nodes));
        bool[] alwaysClosed = [.. Enumerable.Repeat(true, resistors.Count - graph.SwitchCount)];
        SwitchedLinearNetwork network = new()
        {
            NodeCount = nodes,
            Resistors = [.. resistors],
            Capacitors = [.. capacitors],
            Inductors = [.. Enumerable.Range(graph.InputBranch + 1, converter.Inductors.Count).Select(b => new NodePair(graph.BranchFirst[b], graph.BranchSecond[b]))],
            HasWinding = [.. converter.Inductors.Select(l => l.Ohms > 0)],
            InputNode = graph.BranchFirst[graph.InputBranch],
            OutputNode = graph.Output,
            IsStiff = graph.Load == LoadKind.Stiff,
            FurtherLoads = [.. outputs.Select(converter.OutputNodes)],
            Closed = [.. Enumerable.Range(0, graph.PhaseCount).Select(j => (bool[])[.. graph.ClosedIn(mode.Index, j), .. alwaysClosed])],
        };
        return (network, new(
            [.. ohms.Select(DoubleDouble.Of)],
            [.. converter.Capacitors.Select(c => c.Farads).Concat(parasitics.Select(p => p.Farads)).Select(DoubleDouble.Of)],
            [.. converter.Inductors.Select(l => DoubleDouble.Of(l.Henries))],
            [.. converter.Inductors.Select(l => DoubleDouble.Of(l.Ohms))],
            [.. converter.Phases.Select(p => DoubleDouble.Of(p.Duty.ToDouble()))]));
    }
}
