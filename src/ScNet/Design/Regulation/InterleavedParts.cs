using Fractions;

namespace ScNet.Design.Regulation;

/// <summary>A converter cut into equal parts that work side by side, each later by an equal part of the period.</summary>
internal static class InterleavedParts
{
    /// <summary>Builds the parts of one mode on one load current.</summary>
    /// <remarks>
    /// Every part has 1/n of each capacitance and conductance and n times each inductance, so that all together are the converter; what
    /// hangs between input, output and reference alone stays whole. The phases are cut wherever a part changes. Further outputs carry
    /// nothing and are left out.
    /// </remarks>
    /// <param name="converter">The whole.</param>
    /// <param name="mode">Its mode.</param>
    /// <param name="parts">How many parts.</param>
    /// <param name="spread">The share of the period over which they are spread: part k is later by k/n of it.</param>
    public static Converter Of(Converter converter, Mode mode, int parts, Fraction spread)
    {
        Fraction[] ends = Ends(converter);
        SortedSet<Fraction> cuts = [];
        for (int k = 0; k < parts; k++)
        {
            cuts.UnionWith(ends.Select(e => Within(e + (spread * new Fraction(k, parts)))));
        }

        cuts.Add(Fraction.Zero);
        Fraction[] starts = [.. cuts];
        Fraction[] durations = [.. starts.Select((s, i) => (i + 1 < starts.Length ? starts[i + 1] : Fraction.One) - s)];
        ConverterBuilder builder = Converter.Create(parts == 1 ? converter.Name : $"{converter.Name}, {parts} parts")
            .Input(converter.InputNode).Output(converter.OutputNode, LoadKind.Current).Duties(durations);
        IReadOnlySet<string> shared = new HashSet<string> { converter.InputNode, converter.OutputNode, Converter.ReferenceNode };
        AddShared(builder, converter, shared);
        List<(string, PhaseSet)> closed = [];
        for (int k = 0; k < parts; k++)
        {
            string prefix = parts == 1 ? string.Empty : $"part {k + 1} ";
            AddPart(builder, converter, shared, prefix, parts);
            int[] phaseAt = [.. starts.Select(s => PhaseAt(ends, Within(s - (spread * new Fraction(k, parts)) + Fraction.One)))];
            closed.AddRange(converter.Entries(mode, prefix, p => Enumerable.Range(1, phaseAt.Length).Where(i => phaseAt[i - 1] == p)));
        }

        return builder.Mode(mode.Name, [.. closed]).Build();
    }

    private static void AddShared(ConverterBuilder builder, Converter converter, IReadOnlySet<string> shared)
    {
        foreach (Capacitor c in converter.Capacitors.Where(c => IsShared(shared, c)))
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads, c.EsrOhms, c.Plates, c.Controlled);
        }

        foreach (Parasitic p in converter.Parasitics.Where(p => shared.Contains(p.FirstNode) && shared.Contains(p.SecondNode)))
        {
            builder.Parasitic(p.Name, p.FirstNode, p.SecondNode, p.Farads);
        }
    }

    private static void AddPart(ConverterBuilder builder, Converter converter, IReadOnlySet<string> shared, string prefix, int parts)
    {
        string Node(string node) => shared.Contains(node) ? node : prefix + node;

        foreach (Capacitor c in converter.Capacitors.Where(c => !IsShared(shared, c)))
        {
            CapacitorPlates plates = new(c.Plates.BottomFarads / parts, c.Plates.TopFarads / parts, Node(c.Plates.BodyNode));
            builder.Capacitor(prefix + c.Name, Node(c.PositiveNode), Node(c.BottomNode), c.Farads / parts, c.EsrOhms * parts, plates, c.Controlled);
        }

        foreach (Inductor l in converter.Inductors)
        {
            builder.Inductor(prefix + l.Name, Node(l.FirstNode), Node(l.SecondNode), l.Henries * parts, l.Ohms * parts);
        }

        foreach (Switch s in converter.Switches)
        {
            builder.Switch(prefix + s.Name, Node(s.FirstNode), Node(s.SecondNode), PhaseSet.None, s.Ohms * parts, s.DiodeVolts);
        }

        foreach (Parasitic p in converter.Parasitics.Where(p => !(shared.Contains(p.FirstNode) && shared.Contains(p.SecondNode))))
        {
            builder.Parasitic(prefix + p.Name, Node(p.FirstNode), Node(p.SecondNode), p.Farads / parts);
        }
    }

    private static bool IsShared(IReadOnlySet<string> shared, Capacitor c) => shared.Contains(c.PositiveNode) && shared.Contains(c.BottomNode);

    private static Fraction[] Ends(Converter converter)
    {
        Fraction at = Fraction.Zero;
        return [.. converter.Phases.Select(p => at += p.Duty)];
    }

    // the phase, from 1, that is under way at a share of the period
    private static int PhaseAt(Fraction[] ends, Fraction share) => Array.FindIndex(ends, e => share < e) + 1;

    private static Fraction Within(Fraction share)
    {
        while (share >= Fraction.One)
        {
            share -= Fraction.One;
        }

        return share;
    }
}
