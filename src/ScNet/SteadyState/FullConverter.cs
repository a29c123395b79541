using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>
/// A converter with its parasitic capacitances as capacitors, numbered after its own: to the exact steady state a
/// capacitance is a capacitance.
/// </summary>
internal static class FullConverter
{
    /// <summary>The same converter where it has no parasitic capacitance.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="topology">What its mode looks like with them.</param>
    public static Converter Of(Converter converter, FullTopology topology)
    {
        if (converter.ParasiticBranches.Count == 0)
        {
            return converter;
        }

        var capacitors = new Capacitor[topology.Network.CapacitorCount];
        converter.Capacitors.AsSpan().CopyTo(capacitors);
        int next = converter.Capacitors.Count;
        foreach (ParasiticCapacitance own in converter.ParasiticCapacitances)
        {
            capacitors[next++] = new Capacitor(
                "parasitic", converter.Nodes[own.Nodes.First], converter.Nodes[own.Nodes.Second], own.Farads, 0, CapacitorPlates.None, null);
        }

        return new Converter(converter.Name, topology.Network)
        {
            InputNode = converter.InputNode,
            OutputNode = converter.OutputNode,
            Load = converter.Load,
            Phases = converter.Phases,
            Capacitors = NameIndex.ListOf(converter.Name, "capacitor", capacitors, c => c.Name),
            Switches = converter.Switches,
            Inductors = converter.Inductors,
            Parasitics = converter.Parasitics,
            FurtherOutputs = converter.FurtherOutputs,
            Modes = converter.Modes,
            Nodes = converter.Nodes,
            Warnings = converter.Warnings,
        };
    }
}
