using CsCheck;

namespace ScNet.Testing.Networks;

/// <summary>Random networks with parasitic capacitances: plates to any node as body, and others between any two nodes.</summary>
internal static class PlatedNetworks
{
    /// <summary>Networks that obey Kirchhoff's voltage law, and random ones of any kind, either with plates.</summary>
    public static Gen<Converter> Any { get; } = Gen.Select(
        Gen.OneOf(
            ConsistentNetworks.Gen(LoadKind.Stiff).Select(s => s.Converter),
            ConsistentNetworks.Gen(LoadKind.Current).Select(s => s.Converter),
            RandomNetworks.Any.Select(s => s.Build())),
        Gen.Int[0, int.MaxValue - 1],
        (converter, seed) => WithPlates(converter, new Random(seed), random => 0.01 + (0.19 * random.NextDouble())));

    /// <summary>The same converter with plates, and up to three other parasitic capacitances.</summary>
    public static Converter WithPlates(Converter converter, Random random, Func<Random, double> farads)
    {
        double Farads() => random.Next(2) == 0 ? 0 : farads(random);
        string Node() => converter.Nodes[random.Next(converter.Nodes.Count)];
        ConverterBuilder builder = Frame(converter);
        foreach (Capacitor c in converter.Capacitors)
        {
            CapacitorPlates plates = new(Farads(), Farads(), random.Next(3) == 0 ? Node() : Converter.ReferenceNode);
            plates = plates with
            {
                BottomFarads = plates.BodyNode == c.BottomNode ? 0 : plates.BottomFarads,
                TopFarads = plates.BodyNode == c.PositiveNode ? 0 : plates.TopFarads,
            };
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms, plates);
        }

        for (int k = random.Next(1, 4); k > 0; k--)
        {
            string first = Node(), second = Node();
            if (first != second)
            {
                builder.Parasitic($"stray{k}", first, second, farads(random));
            }
        }

        return WithSwitches(builder, converter, phases => phases);
    }

    /// <summary>The same converter with its phases in the opposite order.</summary>
    public static Converter Reversed(Converter converter)
    {
        int count = converter.Phases.Count;
        ConverterBuilder builder = WithCapacitors(Frame(converter).Duties([.. converter.Phases.Select(p => p.Duty).Reverse()]), converter, plates => plates);
        return WithSwitches(builder, converter, phases => PhaseSet.Of([.. phases.Select(p => count + 1 - p).Order()]));
    }

    /// <summary>The same converter with every parasitic capacitance times a factor, none for zero.</summary>
    public static Converter Scaled(Converter converter, double factor)
    {
        ConverterBuilder builder = Frame(converter);
        builder = WithCapacitors(builder, converter, p => p with { BottomFarads = factor * p.BottomFarads, TopFarads = factor * p.TopFarads }, factor);
        return WithSwitches(builder, converter, phases => phases);
    }

    /// <summary>The same converter with one value times a factor: of each capacitor capacitance, series resistance, bottom and positive plate; then other parasitic capacitances, then on-resistances.</summary>
    public static Converter Changed(Converter converter, int value, double factor)
    {
        int next = 0;
        double Next(double own) => next++ == value ? factor * own : own;
        ConverterBuilder builder = Frame(converter);
        foreach (Capacitor c in converter.Capacitors)
        {
            double farads = Next(c.Farads), ohms = Next(c.EsrOhms);
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, farads, ohms, c.Plates with { BottomFarads = Next(c.Plates.BottomFarads), TopFarads = Next(c.Plates.TopFarads) });
        }

        foreach (Parasitic p in converter.Parasitics)
        {
            builder.Parasitic(p.Name, p.FirstNode, p.SecondNode, Next(p.Farads));
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, converter.Modes[0].ClosedPhases[s], Next(own.Ohms));
        }

        return builder.Build();
    }

    /// <summary>The same converter with other duties.</summary>
    public static Converter WithDuties(Converter converter, params Fractions.Fraction[] duties) =>
        WithSwitches(WithCapacitors(Frame(converter).Duties(duties), converter, plates => plates), converter, phases => phases);

    private static ConverterBuilder Frame(Converter converter) => Converter.Create(converter.Name)
        .Input(converter.InputNode).Output(converter.OutputNode, converter.Load).Duties([.. converter.Phases.Select(p => p.Duty)]);

    private static ConverterBuilder WithCapacitors(ConverterBuilder builder, Converter converter, Func<CapacitorPlates, CapacitorPlates> plates, double factor = 1)
    {
        foreach (Capacitor c in converter.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms, plates(c.Plates));
        }

        foreach (Parasitic p in converter.Parasitics.Where(_ => factor > 0))
        {
            builder.Parasitic(p.Name, p.FirstNode, p.SecondNode, factor * p.Farads);
        }

        return builder;
    }

    private static Converter WithSwitches(ConverterBuilder builder, Converter converter, Func<PhaseSet, PhaseSet> phases)
    {
        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, phases(converter.Modes[0].ClosedPhases[s]), own.Ohms);
        }

        return builder.Build();
    }
}
