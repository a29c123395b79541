using ScNet.Analysis;

namespace ScNet.Reporting.Drawings;

/// <summary>The closed network of a phase: nodes that closed switches tie together are one net, open switches are left out.</summary>
internal static class PhaseCircuit
{
    public static Circuit Of(ModeAnalysis analysis, PhaseGraph graph)
    {
        Converter converter = analysis.Converter;
        int phase = graph.Phase.Number;
        ChargeFlow flow = analysis.ChargeFlow;
        List<CircuitPart> parts = [Part(PartKind.Source, "source", converter.InputNode, Converter.ReferenceNode, -flow.Input[phase])];
        parts.AddRange(converter.Capacitors.Select((c, i) => Part(PartKind.Capacitor, c.Name, c.PositiveNode, c.BottomNode, flow.Capacitors[i][phase])));
        parts.AddRange(converter.Inductors.Select((l, i) => Part(PartKind.Inductor, l.Name, l.FirstNode, l.SecondNode, flow.Inductors[i][phase])));
        parts.AddRange(converter.FurtherOutputs.Select(o => Part(PartKind.CurrentLoad, o.Name, o.Node, o.ReturnNode, Quantity.Zero)));
        parts.Add(Part(
            converter.Load == LoadKind.Stiff ? PartKind.Load : PartKind.CurrentLoad, "load", converter.OutputNode, Converter.ReferenceNode, flow.Output[phase]));

        double[] levels = NetLevels.Of(
            graph.Groups.Count,
            g => graph.Groups[g].Nodes.Select(n => analysis.IdealPoint.NodePotentials[n][phase]).FirstOrDefault(v => v.IsDetermined),
            parts,
            name => analysis.IdealPoint.CapacitorVoltages[name]);
        CircuitNet[] nets = [.. graph.Groups.Select((g, i) => new CircuitNet(g.Nodes, Voltage(g.Nodes), levels[i]))];
        return new Circuit(nets, parts, graph.GroupOf(converter.InputNode).Index, graph.GroupOf(converter.OutputNode).Index);

        string Voltage(IReadOnlyList<string> nodes) => QuantityWords.Of(analysis.IdealPoint.NodePotentials[nodes[0]][phase]);

        CircuitPart Part(PartKind kind, string name, string first, string second, Quantity charge) => new(
            kind, name, graph.GroupOf(first).Index, graph.GroupOf(second).Index, QuantityWords.Of(charge.Abs()), charge.TryGetSign(out int sign) ? sign : 0);
    }
}
