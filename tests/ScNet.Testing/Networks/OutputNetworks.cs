using CsCheck;

namespace ScNet.Testing.Networks;

/// <summary>Random networks with one to three further outputs between any two nodes.</summary>
internal static class OutputNetworks
{
    /// <summary>Resistors and capacitors only.</summary>
    public static Gen<Converter> Plain { get; } = With(Gen.OneOf(
        ConsistentNetworks.Gen(LoadKind.Stiff).Select(s => s.Converter),
        ConsistentNetworks.Gen(LoadKind.Current).Select(s => s.Converter),
        ConsistentNetworks.Gen(LoadKind.Current, hasTwins: true).Select(s => s.Converter),
        RandomNetworks.Any.Select(s => s.Build())));

    /// <summary>With parasitic capacitances.</summary>
    public static Gen<Converter> Plated { get; } = With(PlatedNetworks.Any);

    /// <summary>With inductors.</summary>
    public static Gen<Converter> Inductive { get; } = With(InductiveNetworks.Any);

    /// <summary>The same converter with these outputs and no others.</summary>
    public static Converter With(Converter converter, params (string Name, string Node, string Return)[] outputs) =>
        Rebuilt(converter, converter.OutputNode, converter.Load, phases => phases, outputs);

    /// <summary>The same converter with its phases in the opposite order.</summary>
    public static Converter Reversed(Converter converter)
    {
        int count = converter.Phases.Count;
        return Rebuilt(converter, converter.OutputNode, converter.Load, p => count + 1 - p, [.. converter.FurtherOutputs.Select(o => (o.Name, o.Node, o.ReturnNode))], isReversed: true);
    }

    /// <summary>
    /// The converter with a further output, to the reference, as its only one: a load current. A main output that was stiff
    /// becomes a capacitor.
    /// </summary>
    public static Converter MadeMain(Converter converter, FurtherOutput output, double reservoirFarads) => Rebuilt(
        converter, output.Node, LoadKind.Current, phases => phases, [], reservoirFarads: converter.Load == LoadKind.Stiff ? reservoirFarads : null);

    private static Gen<Converter> With(Gen<Converter> converters) => Gen.Select(converters, Gen.Int[0, int.MaxValue - 1], (converter, seed) =>
    {
        Random random = new(seed);
        List<(string, string, string)> outputs = [];
        for (int k = random.Next(1, 4); k > 0; k--)
        {
            string node = converter.Nodes[random.Next(converter.Nodes.Count)];
            string back = random.Next(3) == 0 ? converter.Nodes[random.Next(converter.Nodes.Count)] : Converter.ReferenceNode;
            if (node != back)
            {
                outputs.Add(($"o{outputs.Count}", node, back));
            }
        }

        return With(converter, [.. outputs]);
    });

    private static Converter Rebuilt(
        Converter converter, string output, LoadKind load, Func<int, int> phase, (string Name, string Node, string Return)[] outputs, bool isReversed = false, double? reservoirFarads = null)
    {
        Fractions.Fraction[] duties = [.. converter.Phases.Select(p => p.Duty)];
        ConverterBuilder builder = Converter.Create(converter.Name).Input(converter.InputNode).Output(output, load).Duties(isReversed ? [.. duties.Reverse()] : duties);
        foreach (Capacitor c in converter.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms, c.Plates);
        }

        if (reservoirFarads is { } farads)
        {
            builder.Capacitor("reservoir", converter.OutputNode, Converter.ReferenceNode, farads);
        }

        foreach (Inductor l in converter.Inductors)
        {
            builder.Inductor(l.Name, l.FirstNode, l.SecondNode, l.Henries, l.Ohms);
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, PhaseSet.Of([.. converter.Modes[0].ClosedPhases[s].Select(phase).Order()]), own.Ohms);
        }

        foreach (Parasitic p in converter.Parasitics)
        {
            builder.Parasitic(p.Name, p.FirstNode, p.SecondNode, p.Farads);
        }

        foreach ((string name, string node, string back) in outputs)
        {
            builder.FurtherOutput(name, node, back);
        }

        return builder.Build();
    }
}
