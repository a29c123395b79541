using CsCheck;
using Fractions;
using ScNet.Topologies;

namespace ScNet.Tests.Networks;

/// <summary>
/// Converters with inductors whose values spread over twelve decades, one per number: stages of two to twelve phases, and
/// networks of switches and capacitors with inductors between any two of their nodes; some with plates and other parasitic
/// capacitances, some with further outputs. Not all have a periodic state.
/// </summary>
internal static class SpreadHybrids
{
    private const double Decades = 6;

    /// <summary>A converter and a switching frequency.</summary>
    internal sealed record Sample(Converter Converter, double FrequencyHz)
    {
        public override string ToString() => $"{FrequencyHz:R} Hz\n{ScNet.Netlists.NetlistWriter.ToToml(Converter)}";
    }

    public static Gen<Sample> Gen { get; } = CsCheck.Gen.Select(SpreadConverters.Gen, CsCheck.Gen.Int[0, int.MaxValue - 1], (plain, seed) => Make(plain.Converter, new Random(seed)));

    private static Sample Make(Converter plain, Random random)
    {
        double decades = random.Next(3) * Decades / 2;
        double Value() => Math.Pow(10, decades * ((2 * random.NextDouble()) - 1)) * (0.5 + random.NextDouble());
        Converter converter = random.Next(2) == 0 ? plain : Stage(random);
        bool isStage = converter.Inductors.Count > 0, hasPlates = random.Next(3) == 0, hasOutputs = random.Next(3) == 0;
        string Node() => converter.Nodes[random.Next(converter.Nodes.Count)];
        (string First, string Second) Pair()
        {
            string first = Node(), second = Node();
            return first == second ? (converter.OutputNode, Converter.ReferenceNode) : (first, second);
        }

        ConverterBuilder builder = Converter.Create("hybrid").Input(converter.InputNode).Output(converter.OutputNode, converter.Load).Duties([.. converter.Phases.Select(p => p.Duty)]);
        foreach (Capacitor c in converter.Capacitors)
        {
            double esrOhms = random.Next(3) == 0 ? Value() : 0;
            double Plate() => hasPlates && random.Next(3) == 0 ? Value() : 0;
            CapacitorPlates plates = new(c.BottomNode == Converter.ReferenceNode ? 0 : Plate(), c.PositiveNode == Converter.ReferenceNode ? 0 : Plate());
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, Value(), esrOhms, plates);
        }

        for (int s = 0; s < converter.Switches.Count; s++)
        {
            Switch own = converter.Switches[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, converter.Modes[0].ClosedPhases[s], Value());
        }

        foreach (Inductor l in converter.Inductors)
        {
            builder.Inductor(l.Name, l.FirstNode, l.SecondNode, Value(), random.Next(2) * Value());
        }

        for (int k = isStage ? random.Next(2) : random.Next(1, 4); k > 0; k--)
        {
            (string first, string second) = Pair();
            builder.Inductor($"further{k}", first, second, Value(), random.Next(3) == 0 ? 0 : Value());
        }

        for (int k = hasPlates ? random.Next(1, 3) : 0; k > 0; k--)
        {
            (string first, string second) = Pair();
            builder.Parasitic($"stray{k}", first, second, Value());
        }

        for (int k = hasOutputs ? random.Next(1, 3) : 0; k > 0; k--)
        {
            (string first, string second) = Pair();
            builder.FurtherOutput($"o{k}", first, second);
        }

        return new(builder.Build(), Math.Pow(10, (6 * random.NextDouble()) - 3));
    }

    private static Converter Stage(Random random)
    {
        LoadKind load = random.Next(3) == 0 ? LoadKind.Current : LoadKind.Stiff;
        Fraction duty = new(random.Next(1, 20), 20);
        int levels = random.Next(3, 8);
        return random.Next(8) switch
        {
            0 => InductiveStages.StepUp(duty).Build(),
            1 => InductiveStages.CapacitorCoupledInverting(duty).Build(),
            2 => InductiveStages.SinglePrimary(duty).Build(),
            3 => InductiveStages.FourSwitch(duty).Build(),
            4 => InductiveStages.SeriesCharged(duty / 3).Build(),
            _ => FlyingCapacitorStage.Of(levels, new Fraction(random.Next(1, 4 * (levels - 1)), 4 * (levels - 1)), load: load),
        };
    }
}
