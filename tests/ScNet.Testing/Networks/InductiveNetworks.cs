using CsCheck;

namespace ScNet.Testing.Networks;

/// <summary>Families and random networks with inductors between any two nodes.</summary>
internal static class InductiveNetworks
{
    public static Gen<Converter> Any { get; } =
        from sketch in RandomNetworks.Any
        from inductors in Gen.Select(Gen.Int[0, 99], Gen.Int[0, 99], Gen.Int[1, 9], Gen.Int[1, 9]).Array[1, 3]
        select With(sketch, inductors);

    private static Converter With(NetworkSketch sketch, (int First, int Second, int Henries, int Ohms)[] inductors)
    {
        Converter plain = sketch.Build();
        ConverterBuilder builder = Converter.Create("with inductors").Input(plain.InputNode).Output(plain.OutputNode, plain.Load)
            .Duties([.. plain.Phases.Select(p => p.Duty)]);
        foreach (Capacitor c in plain.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms);
        }

        for (int s = 0; s < plain.Switches.Count; s++)
        {
            builder.Switch(plain.Switches[s].Name, plain.Switches[s].FirstNode, plain.Switches[s].SecondNode, plain.Modes[0].ClosedPhases[s], plain.Switches[s].Ohms);
        }

        for (int l = 0; l < inductors.Length; l++)
        {
            int first = inductors[l].First % plain.Nodes.Count, second = inductors[l].Second % (plain.Nodes.Count - 1);
            builder.Inductor($"l{l}", plain.Nodes[first], plain.Nodes[second >= first ? second + 1 : second], inductors[l].Henries, inductors[l].Ohms);
        }

        return builder.Build();
    }
}
