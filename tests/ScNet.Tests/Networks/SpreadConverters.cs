using CsCheck;
using Fractions;

namespace ScNet.Tests.Networks;

/// <summary>
/// Converters whose values spread over twelve decades, one per number. They obey Kirchhoff's voltage law by
/// construction, since switches close only between nodes of equal potential: two to five phases, stiff and
/// current loads, held, shorted, redundant and idle capacitors, series resistances, switches in parallel and
/// in rings, parts that float.
/// </summary>
internal static class SpreadConverters
{
    private const int LargestPhaseCount = 5;
    private const int LargestCapacitorCount = 4;
    private const double Decades = 6;

    /// <summary>A converter and the ratio that its potentials were chosen for.</summary>
    internal sealed record Sample(Converter Converter, Fraction Ratio, double FrequencyOverCorner)
    {
        public override string ToString() => string.Join("; ", [
            $"{FrequencyOverCorner:R} times the corner, {Ratio} {Converter.Load}", .. Converter.Phases.Select(p => $"{p.Duty}"),
            .. Converter.Capacitors.Select(c => $"{c.Name} {c.PositiveNode}-{c.BottomNode} {c.Farads:R} F {c.EsrOhms:R} Ω"),
            .. Converter.Switches.Select((s, i) => $"{s.Name} {s.FirstNode}-{s.SecondNode} {s.Ohms:R} Ω {Converter.Modes[0].ClosedPhases[i]}"),
        ]);
    }

    /// <summary>All kinds, each with a frequency within three decades of its corner.</summary>
    public static Gen<Sample> Gen { get; } = CsCheck.Gen.Int[0, int.MaxValue - 1].Select(seed => Make(new Random(seed)));

    private static Sample Make(Random random)
    {
        int phases = random.Next(2, LargestPhaseCount + 1), input = random.Next(1, 4), output = random.Next(1, 4);
        int reluctance = random.Next(4);
        double decades = random.Next(3) * Decades / 2;
        LoadKind load = random.Next(3) == 0 ? LoadKind.Current : LoadKind.Stiff;
        double Value() => Math.Pow(10, decades * ((2 * random.NextDouble()) - 1)) * (0.5 + random.NextDouble());
        double Esr() => random.Next(3) == 0 ? Value() : 0;

        int[] Level(int value) => [.. Enumerable.Repeat(value, phases)];
        List<(string Name, int[] Potentials)> nodes = [(Converter.ReferenceNode, Level(0)), ("vin", Level(input)), ("vout", Level(output))];
        int[] parts = [.. Enumerable.Range(0, phases).Select(_ => random.Next(1, 10))];
        ConverterBuilder builder = Converter.Create("spread").Input("vin").Output("vout", load)
            .Duties([.. parts.Select(part => new Fraction(part, parts.Sum()))]);
        if (load == LoadKind.Current && random.Next(5) > 0)
        {
            builder.Capacitor("out", "vout", Converter.ReferenceNode, Value(), Esr());
        }

        int capacitors = random.Next(LargestCapacitorCount + 1);
        for (int i = 0; i < capacitors; i++)
        {
            int voltage = random.Next(4);
            (string Name, int[] Potentials) bottom = random.Next(3) == 0
                ? nodes[random.Next(nodes.Count)]
                : ($"b{i}", [.. Enumerable.Range(0, phases).Select(_ => random.Next(-1, 4))]);
            (string Name, int[] Potentials) positive = ($"p{i}", [.. bottom.Potentials.Select(u => u + voltage)]);
            (string Name, int[] Potentials)[] same = [.. nodes.Where(n => n.Name != bottom.Name && n.Potentials.SequenceEqual(positive.Potentials))];
            positive = same.Length > 0 && random.Next(2) == 0 ? same[random.Next(same.Length)] : positive;
            nodes.AddRange(new[] { bottom, positive }.Where(node => nodes.TrueForAll(n => n.Name != node.Name)));
            builder.Capacitor($"c{i}", positive.Name, bottom.Name, Value(), Esr());
        }

        AddSwitches();
        return new(builder.Build(), new Fraction(output, input), Math.Pow(10, (6 * random.NextDouble()) - 3));

        void AddSwitches()
        {
            int count = 0;
            for (int a = 0; a < nodes.Count; a++)
            {
                for (int b = a + 1; b < nodes.Count; b++)
                {
                    int[] equal = [.. Enumerable.Range(0, phases).Where(j => nodes[a].Potentials[j] == nodes[b].Potentials[j])
                        .Where(_ => random.Next(4) >= reluctance).Select(j => j + 1)];
                    for (int copies = equal.Length == 0 ? 0 : random.Next(6) == 0 ? 2 : 1; copies > 0; copies--)
                    {
                        builder.Switch($"s{count++}", nodes[a].Name, nodes[b].Name, PhaseSet.Of(equal), Value());
                    }
                }
            }

            // both ports must be touched by something, even where nothing shares their potential
            builder.Switch("never1", "vin", "idle").Switch("never2", "vout", "idle");
        }
    }
}
