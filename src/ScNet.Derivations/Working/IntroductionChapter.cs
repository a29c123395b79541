using ScNet.Derivations.Expressions;

namespace ScNet.Derivations.Working;

/// <summary>The title, the netlist and the symbols.</summary>
internal static class IntroductionChapter
{
    public static IEnumerable<Block> Write(WorkedMode mode)
    {
        Converter converter = mode.Converter;
        yield return new Heading(1, Line.Of($"Worked solution: {new Named(converter.Name)}, mode {new Named(mode.Mode.Name)}"));
        yield return new Paragraph(Line.Of(
            $"The input source holds node {new Named(converter.InputNode)} at {Symbol.InputVoltage}; the load is on node {new Named(converter.OutputNode)}; the reference node is {new Named(Converter.ReferenceNode)}. {Load(converter)}"));
        yield return new Heading(2, "Elements");
        if (converter.Capacitors.Count > 0)
        {
            yield return new Table(
                ["capacitor", "positive plate", "bottom plate"],
                [.. converter.Capacitors.Select(c => Cells(c.Name, c.PositiveNode, c.BottomNode))]);
        }

        if (converter.Switches.Count > 0)
        {
            yield return new Table(
                ["switch", "first terminal", "second terminal", "closed in phase"],
                [.. converter.Switches.Select((s, i) => (IReadOnlyList<Line>)[.. Cells(s.Name, s.FirstNode, s.SecondNode), Phases(mode.Mode.ClosedPhases[i])])]);
        }

        yield return new Table(
            ["phase", "name", "share of the period"],
            [.. converter.Phases.Select(p => (IReadOnlyList<Line>)[Line.Of($"{p.Number}"), Line.Of($"{new Named(p.Name)}"), Line.Of($"{p.Duty}")])]);
        yield return new Heading(2, "Symbols");
        yield return new Bullets(
        [
            Line.Of($"{new Symbol(SymbolKind.ElementVoltage, "x")}: voltage of capacitor {new Named("x")}, positive plate minus bottom plate; {new Symbol(SymbolKind.OutputVoltage)}: output voltage"),
            Line.Of($"{new Symbol(SymbolKind.NodePotential, "n", 1)}: potential of node {new Named("n")} in phase 1 against the reference"),
            Line.Of($"{new Symbol(SymbolKind.ElementCharge, "x", 1)}: charge through element {new Named("x")} in phase 1, from its first terminal to its second; {new Symbol(SymbolKind.InputCharge, phase: 1)} and {new Symbol(SymbolKind.OutputCharge, phase: 1)}: charge out of the input source and into the load; all per unit of charge into the load in one period"),
            Line.Of($"{new Symbol(SymbolKind.LoopCharge, "1")}: charge round loop 1"),
        ]);
    }

    private static Line Load(Converter converter) => converter.Load == LoadKind.Stiff
        ? "The load is stiff: the output is a voltage source to the capacitors."
        : "The load is a constant current: in each phase it takes the phase's share of the charge.";

    private static List<Line> Cells(params ReadOnlySpan<string> names)
    {
        List<Line> cells = [];
        foreach (string name in names)
        {
            cells.Add(Line.Of($"{new Named(name)}"));
        }

        return cells;
    }

    private static Line Phases(PhaseSet phases) => phases.Count == 0
        ? "none"
        : string.Join(", ", phases.Select(p => p.ToString(System.Globalization.CultureInfo.InvariantCulture)));
}
