using ScNet.Analysis;

namespace ScNet.Reporting.Drawings;

/// <summary>The whole converter with its switches; nodes stand as high as their potential is on average over phases and modes.</summary>
internal static class ConverterCircuit
{
    /// <summary>The circuit.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">The mode whose phases stand beside the switches; null for none.</param>
    public static Circuit Of(Converter converter, Mode? mode)
    {
        int Net(string node) => converter.Nodes.PositionOf(node);
        List<CircuitPart> parts = [new(PartKind.Source, "source", Net(converter.InputNode), 0)];
        parts.AddRange(converter.Switches.Select((s, i) => new CircuitPart(
            PartKind.Switch, s.Name, Net(s.FirstNode), Net(s.SecondNode), Note: mode is null ? "" : Phases(converter, mode.ClosedPhases[i]))));
        parts.AddRange(converter.Capacitors.Select(c => new CircuitPart(PartKind.Capacitor, c.Name, Net(c.PositiveNode), Net(c.BottomNode), Note: Ohms(c.EsrOhms))));
        parts.AddRange(converter.Inductors.Select(l => new CircuitPart(PartKind.Inductor, l.Name, Net(l.FirstNode), Net(l.SecondNode), Note: Ohms(l.Ohms))));
        parts.AddRange(converter.Capacitors.SelectMany(c => Plates(c, Net)).Concat(converter.Parasitics.Select(p => Parasitic(p.Name, Net(p.FirstNode), Net(p.SecondNode), p.Farads))).Where(p => p.First != p.Second));
        parts.AddRange(converter.FurtherOutputs.Select(o => new CircuitPart(PartKind.CurrentLoad, o.Name, Net(o.Node), Net(o.ReturnNode), Flow: 1)));
        parts.Add(new(converter.Load == LoadKind.Stiff ? PartKind.Load : PartKind.CurrentLoad, "load", Net(converter.OutputNode), 0, Flow: converter.Load == LoadKind.Stiff ? 0 : 1));

        // the same for every mode, so that the drawing of a converter does not depend on the mode shown beside it
        ModeAnalysis[] analyses = [.. converter.Modes.Select(m => ModeAnalysis.Try(converter, m).Analysis).OfType<ModeAnalysis>()];
        double[] levels = NetLevels.Of(converter.Nodes.Count, n => Average(analyses, n), parts, _ => default);
        CircuitNet[] nets = [.. converter.Nodes.Select((n, i) => new CircuitNet([n], "", levels[i]))];
        return new Circuit(nets, parts, Net(converter.InputNode), Net(converter.OutputNode));
    }

    private static IEnumerable<CircuitPart> Plates(Capacitor capacitor, Func<string, int> net)
    {
        if (capacitor.Plates.TopFarads > 0)
        {
            yield return Parasitic($"{capacitor.Name} top", net(capacitor.PositiveNode), net(capacitor.Plates.BodyNode), capacitor.Plates.TopFarads);
        }

        if (capacitor.Plates.BottomFarads > 0)
        {
            yield return Parasitic($"{capacitor.Name} bottom", net(capacitor.BottomNode), net(capacitor.Plates.BodyNode), capacitor.Plates.BottomFarads);
        }
    }

    private static CircuitPart Parasitic(string name, int first, int second, double farads) =>
        new(PartKind.Parasitic, name, first, second, Note: EngineeringNumber.Of(farads, "F"));

    private static string Ohms(double ohms) => ohms > 0 ? EngineeringNumber.Of(ohms, "Ω") : string.Empty;

    // over the phases of all modes in which the node does not float
    private static Quantity Average(ModeAnalysis[] analyses, int node)
    {
        if (node == 0)
        {
            return Quantity.Zero;
        }

        double sum = 0;
        double share = 0;
        foreach (ModeAnalysis analysis in analyses)
        {
            foreach (Phase phase in analysis.Converter.Phases)
            {
                if (analysis.IdealPoint.NodePotentials[node][phase.Number].TryGetDouble(out double volts))
                {
                    double duty = phase.Duty.ToDouble();
                    sum += duty * volts;
                    share += duty;
                }
            }
        }

        return share > 0 ? Quantity.Numeric(sum / share) : Quantity.Undetermined;
    }

    private static string Phases(Converter converter, PhaseSet phases) => phases.Count == 0 ? "open" : string.Join(", ", phases.Select(p => NetworkWords.Short(converter.Phases[p - 1])));
}
