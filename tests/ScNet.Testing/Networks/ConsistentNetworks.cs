using CsCheck;

namespace ScNet.Testing.Networks;

/// <summary>
/// Random converters that obey Kirchhoff's voltage law by construction: every capacitor is given a
/// voltage and every node a potential in every phase, and switches close only between equal potentials.
/// Many have redundant capacitors, parallel switches, bridges of closed switches and floating parts.
/// </summary>
/// <remarks>
/// With twins, every second flying capacitor runs through the same potentials as the one before it between plates of
/// its own: two paths of different values and, as not every switch that could be there is, of different switches, between
/// which component values divide the charge. A capacitor across the output lets a load current flow in every phase.
/// </remarks>
internal static class ConsistentNetworks
{
    /// <summary>A converter and the ratio that its potentials were chosen for.</summary>
    internal sealed record Sample(Converter Converter, int Input, int Output)
    {
        public override string ToString()
        {
            IEnumerable<string> capacitors = Converter.Capacitors.Select(c => $"{c} {c.Farads} F {c.EsrOhms} Ω");
            IEnumerable<string> switches = Converter.Switches.Select((s, i) => $"{s} {s.Ohms} Ω {Converter.Modes[0].ClosedPhases[i]}");
            return string.Join("; ", [$"{Output}/{Input} {Converter.Load}", .. Converter.Phases.Select(p => $"{p.Duty}"), .. capacitors, .. switches]);
        }
    }

    public static Gen<Sample> Gen(LoadKind load, int largestCapacitorCount = 5, int largestPhaseCount = 4, bool hasTwins = false) =>
        CsCheck.Gen.Int[0, int.MaxValue - 1].Select(seed => Make(new Random(seed), load, largestCapacitorCount, largestPhaseCount, hasTwins));

    private static Sample Make(Random random, LoadKind load, int largestCapacitorCount, int largestPhaseCount, bool hasTwins)
    {
        int capacitors = random.Next(1, largestCapacitorCount + 1), phases = random.Next(2, largestPhaseCount + 1);
        int input = random.Next(1, 4), output = random.Next(1, 4);
        int reluctance = random.Next(hasTwins ? 2 : 4);
        bool hasSeriesResistance = random.Next(2) == 0;
        List<(string Name, int[] Potentials)> nodes =
        [
            (Converter.ReferenceNode, new int[phases]), ("vin", Fill(phases, input)), ("vout", Fill(phases, output)),
        ];
        int[] weights = [.. Enumerable.Range(0, phases).Select(_ => random.Next(1, 6))];
        ConverterBuilder builder = Converter.Create("random").Input("vin").Output("vout", load)
            .Duties([.. weights.Select(w => new Fractions.Fraction(w, weights.Sum()))]);
        if (hasTwins)
        {
            builder.Capacitor("out", "vout", Converter.ReferenceNode, farads: 0.5 + random.Next(1, 8), esrOhms: hasSeriesResistance ? 0.25 : 0);
        }

        int voltage = 0;
        int[] below = [];
        for (int i = 0; i < capacitors; i++)
        {
            string bottom = $"b{i}", positive = $"p{i}";
            bool isTwin = hasTwins && i % 2 == 1;
            if (!isTwin)
            {
                voltage = random.Next(1, 4);
                below = [.. Enumerable.Range(0, phases).Select(_ => random.Next(-1, 4))];
            }

            if (!isTwin && random.Next(4) == 0)
            {
                // a capacitor with one plate on a node that is there already
                (bottom, below) = nodes[random.Next(nodes.Count)];
            }
            else
            {
                nodes.Add((bottom, below));
            }

            int[] above = [.. below.Select(u => u + voltage)];
            int same = nodes.FindIndex(n => n.Potentials.SequenceEqual(above));
            if (!isTwin && same >= 0 && random.Next(2) == 0)
            {
                positive = nodes[same].Name;
            }
            else
            {
                nodes.Add((positive, above));
            }

            builder.Capacitor($"c{i}", positive, bottom, farads: 0.5 + random.Next(1, 8), esrOhms: hasSeriesResistance ? 0.25 * random.Next(1, 8) : 0);
        }

        AddSwitches(builder, nodes, random, phases, reluctance);
        return new(builder.Build(), input, output);
    }

    private static void AddSwitches(
        ConverterBuilder builder, List<(string Name, int[] Potentials)> nodes, Random random, int phases, int reluctance)
    {
        int count = 0;
        for (int a = 0; a < nodes.Count; a++)
        {
            for (int b = a + 1; b < nodes.Count; b++)
            {
                int[] equal = [.. Enumerable.Range(0, phases).Where(j => nodes[a].Potentials[j] == nodes[b].Potentials[j])
                    .Where(_ => random.Next(4) >= reluctance).Select(j => j + 1)];
                if (equal.Length > 0)
                {
                    bool isReversed = random.Next(2) == 0;
                    builder.Switch($"s{count++}", nodes[isReversed ? b : a].Name, nodes[isReversed ? a : b].Name, PhaseSet.Of(equal), 0.5 + random.Next(1, 8));
                }
            }
        }

        // both ports must be touched by something, even where nothing shares their potential
        builder.Switch("never1", "vin", "idle").Switch("never2", "vout", "idle");
    }

    private static int[] Fill(int count, int value) => [.. Enumerable.Repeat(value, count)];
}
