using System.Globalization;
using System.Text;
using Fractions;
using ScNet.Netlists.Toml;

namespace ScNet.Netlists;

/// <summary>Writes netlist documents: the TOML that <see cref="NetlistReader"/> reads back as an equal converter.</summary>
/// <remarks>
/// Equal means: the same names, nodes, values, duties, modes and warnings, in the same order. One converter
/// gives the same text always, byte for byte: UTF-8, "\n" line ends, numbers with a point in every culture.
/// What has its default value is left out. The text is not bounded by what the reader takes.
/// </remarks>
public static class NetlistWriter
{
    /// <summary>The netlist document of a converter. Time and space are linear in modes · switches, plus the other elements.</summary>
    /// <param name="converter">The converter.</param>
    /// <exception cref="ArgumentException">
    /// The document cannot hold the converter: phases are unequal and a duty is neither a decimal nor a fraction of at
    /// most 64 characters.
    /// </exception>
    public static string ToToml(Converter converter)
    {
        ArgumentNullException.ThrowIfNull(converter);
        StringBuilder text = new();
        Line(text, $"{NetlistKeys.Name} = {TomlLiteral.Text(converter.Name)}");
        Line(text, $"{NetlistKeys.Input} = {TomlLiteral.Text(converter.InputNode)}");
        Line(text, $"{NetlistKeys.Output} = {TomlLiteral.Text(converter.OutputNode)}");
        if (converter.Load == LoadKind.Current)
        {
            Line(text, $"{NetlistKeys.Load} = \"current\"");
        }

        WritePhases(text, converter);
        WriteElements(text, converter);
        if (!HasDefaultMode(converter))
        {
            WriteModes(text, converter);
        }

        return text.ToString();
    }

    private static void WritePhases(StringBuilder text, Converter converter)
    {
        NamedList<Phase> phases = converter.Phases;
        bool areEqual = phases.All(p => p.Duty == new Fraction(1, phases.Count));
        bool areNamed = phases.Any(p => p.Name != p.Number.ToString(CultureInfo.InvariantCulture));
        if (areEqual && phases.Count == 2 && !areNamed)
        {
            return;
        }

        Header(text, NetlistKeys.Phases);
        if (!areEqual)
        {
            Line(text, $"{NetlistKeys.Duty} = [{string.Join(", ", phases.Select(p => DutyOf(p, converter)))}]");
        }
        else if (phases.Count != 2)
        {
            Line(text, $"{NetlistKeys.Count} = {TomlLiteral.Number(phases.Count)}");
        }

        if (areNamed)
        {
            Line(text, $"{NetlistKeys.Names} = [{string.Join(", ", phases.Select(p => TomlLiteral.Text(p.Name)))}]");
        }
    }

    private static string DutyOf(Phase phase, Converter converter) => TomlLiteral.Exact(phase.Duty)
        ?? throw new ArgumentException(
            $"Expected equal phases, or duties that are decimals or fractions of at most {ExactDecimal.MaximumLength} characters, but phase {phase} of '{converter.Name}' lasts {phase.Duty} of the period. Round the duties before writing.",
            nameof(converter));

    private static void WriteElements(StringBuilder text, Converter converter)
    {
        Mode? only = HasDefaultMode(converter) ? converter.Modes[0] : null;
        WriteElements(text, ElementShape.Capacitor, converter.Capacitors, (c, _) =>
        [
            c.Name,
            Between(c.PositiveNode, c.BottomNode),
            Value(QuantityKey.Farads, c.Farads),
            Value(QuantityKey.EsrOhms, c.EsrOhms),
            Value(QuantityKey.BottomFarads, c.Plates.BottomFarads),
            Value(QuantityKey.TopFarads, c.Plates.TopFarads),
            c.Plates.BodyNode == Converter.ReferenceNode ? null : $"{NetlistKeys.Body} = {TomlLiteral.Text(c.Plates.BodyNode)}",
            c.Controlled is { } share ? $"{NetlistKeys.Controlled} = {Share(share, c)}" : null,
        ]);
        WriteElements(text, ElementShape.Inductor, converter.Inductors, (l, i) =>
        [
            l.Name,
            Between(l.FirstNode, l.SecondNode),
            Value(QuantityKey.Henries, l.Henries),
            Value(QuantityKey.WindingOhms, l.Ohms),
            only?.UntilZeroPhases[i] is { Count: > 0 } ended ? $"{NetlistKeys.UntilZero} = {Closed(ended)}" : null,
        ]);
        WriteElements(text, ElementShape.Switch, converter.Switches, (s, i) =>
        [
            s.Name,
            Between(s.FirstNode, s.SecondNode),
            Value(QuantityKey.Ohms, s.Ohms),
            only is null ? null : $"{NetlistKeys.On} = {Closed(only.ClosedPhases[i])}",
            s.DiodeVolts is { } volts ? $"{QuantityKey.DiodeVolts.Key} = {TomlLiteral.Number(volts)}" : null,
        ]);
        WriteElements(text, ElementShape.Parasitic, converter.Parasitics, (p, _) =>
            [p.Name, Between(p.FirstNode, p.SecondNode), $"{QuantityKey.Farads.Key} = {TomlLiteral.Number(p.Farads)}"]);
        WriteElements(text, ElementShape.FurtherOutput, converter.FurtherOutputs, (o, _) => [o.Name, Between(o.Node, o.ReturnNode)]);
    }

    private static string Share(Fraction share, Capacitor capacitor) => TomlLiteral.Exact(share)
        ?? throw new ArgumentException(
            $"Expected a share that is a decimal or a fraction of at most {ExactDecimal.MaximumLength} characters, but capacitor '{capacitor.Name}' is controlled at {share}. Round it before writing.",
            nameof(capacitor));

    // the parts of an element: its name, then its entries, null where one is left out
    private static void WriteElements<T>(StringBuilder text, ElementShape shape, IReadOnlyList<T> elements, Func<T, int, string?[]> parts)
    {
        for (int i = 0; i < elements.Count; i++)
        {
            if (i == 0)
            {
                Header(text, shape.Table);
            }

            string?[] written = parts(elements[i], i);
            Line(text, $"{TomlLiteral.Key(written[0]!)} = {{ {string.Join(", ", written.Skip(1).Where(e => e is not null))} }}");
        }
    }

    private static void WriteModes(StringBuilder text, Converter converter)
    {
        foreach (Mode mode in converter.Modes)
        {
            Header(text, $"{NetlistKeys.Modes}.{TomlLiteral.Key(mode.Name)}");
            IEnumerable<(string Name, PhaseSet Phases)> entries = converter.Switches.Select((s, i) => (s.Name, mode.ClosedPhases[i]))
                .Concat(converter.Inductors.Select((l, i) => (l.Name, mode.UntilZeroPhases[i])));
            foreach ((string name, PhaseSet phases) in entries.Where(e => e.Phases.Count > 0))
            {
                Line(text, $"{TomlLiteral.Key(name)} = {Closed(phases)}");
            }
        }
    }

    private static bool HasDefaultMode(Converter converter) => converter.Modes is [{ Name: Mode.DefaultName }];

    private static void Header(StringBuilder text, string table) => Line(text, $"\n[{table}]");

    private static string Between(string first, string second) =>
        $"{NetlistKeys.Between} = [{TomlLiteral.Text(first)}, {TomlLiteral.Text(second)}]";

    // null where the value is the default
    private static string? Value(QuantityKey key, double value) =>
        value == key.Quantity.Default ? null : $"{key.Key} = {TomlLiteral.Number(value)}";

    private static string Closed(PhaseSet phases) => phases.Count == 1
        ? TomlLiteral.Number(phases[0])
        : $"[{string.Join(", ", phases.Select(TomlLiteral.Number))}]";

    // not AppendLine, whose line end is the machine's
    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
