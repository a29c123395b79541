using ScNet.Analysis;

namespace ScNet.Reporting.Drawings;

/// <summary>Drawings of networks as an engineer makes them: source left, output right, higher potentials above lower ones, the reference below.</summary>
/// <remarks>
/// Symbols are those of IEC 60617 in usual proportions. Wires that join have a dot, wires that cross have none; nothing
/// overlaps anything, however large the network: the drawing grows. The same network gives the same drawing to the byte.
/// Cost: some milliseconds for a phase of ten elements, a tenth of a second for a converter of thirty.
/// </remarks>
public static class NetworkDrawing
{
    private const int Margin = 16;

    /// <summary>
    /// The closed network of one phase. Nodes that closed switches tie together are one wire, named "vin = p", with its
    /// voltage per volt of input in bold; beside each element an arrow and the charge that passes it, per unit of charge
    /// delivered to the load in one period; what has no connection to the reference stands in a dashed frame.
    /// </summary>
    /// <param name="analysis">The analysis of a mode.</param>
    /// <param name="phase">The phase number, from 1.</param>
    /// <param name="appearance">On what ground it is drawn.</param>
    /// <exception cref="ArgumentOutOfRangeException">The converter has no such phase.</exception>
    public static Picture OfPhase(ModeAnalysis analysis, int phase, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        PhaseGraph graph = PhaseGraph.Of(analysis, phase);
        Circuit circuit = PhaseCircuit.Of(analysis, graph);
        string title = NetworkWords.PhaseTitle(analysis, graph.Phase);
        return SheetSvg.Write(OfPhase(analysis, graph, circuit), title, NetworkWords.OfPhase(circuit, analysis, graph), Palette.Of(appearance));
    }

    /// <summary>
    /// The whole converter with all its switches, drawn open, and beside it a strip that shows in which phases of a mode
    /// each of them is closed, the lengths of the phases to scale. Resistances of capacitors and windings stand beside them;
    /// parasitic capacitances are drawn smaller, faint and dashed.
    /// </summary>
    /// <param name="converter">The converter.</param>
    /// <param name="mode">One of its modes; null for the only one, or for none where there are several.</param>
    /// <param name="appearance">On what ground it is drawn.</param>
    /// <exception cref="ArgumentException">The mode is not one of the converter's.</exception>
    public static Picture OfConverter(Converter converter, Mode? mode = null, Appearance appearance = Appearance.Light)
    {
        ArgumentNullException.ThrowIfNull(converter);
        if (mode is not null && !converter.Modes.Contains(mode))
        {
            throw new ArgumentException($"Mode '{mode.Name}' is not one of the modes of '{converter.Name}'.", nameof(mode));
        }

        Mode? shown = mode ?? (converter.Modes.Count == 1 ? converter.Modes[0] : null);
        Circuit circuit = ConverterCircuit.Of(converter, shown);
        string title = NetworkWords.ConverterTitle(converter, shown);
        return SheetSvg.Write(SheetOf(converter, shown, circuit), title, NetworkWords.OfConverter(circuit, converter, shown), Palette.Of(appearance));
    }

    /// <summary>The geometry of a phase.</summary>
    internal static Sheet OfPhase(ModeAnalysis analysis, PhaseGraph graph, Circuit circuit)
    {
        Sheet sheet = new();
        Head(sheet, NetworkWords.PhaseTitle(analysis, graph.Phase));
        sheet.Add(NetworkSheet.Of(circuit, hasCharges: true), Margin, sheet.Height + 10);
        Foot(sheet, NetworkWords.PhaseKey);
        return Framed(sheet);
    }

    /// <summary>The geometry of a converter.</summary>
    internal static Sheet SheetOf(Converter converter, Mode? mode, Circuit circuit)
    {
        Sheet sheet = new();
        Head(sheet, NetworkWords.ConverterTitle(converter, mode));
        int top = sheet.Height + 10;
        sheet.Add(NetworkSheet.Of(circuit, hasCharges: false), Margin, top);
        if (mode is not null)
        {
            sheet.Add(TimingStrip.Of(converter, mode), Math.Max(sheet.Width, 0) + 40, top);
        }

        return Framed(sheet);
    }

    private static void Head(Sheet sheet, string whole)
    {
        string title = TextSize.Fitting(whole, LabelRole.Heading);
        int width = TextSize.Width(title, LabelRole.Heading);
        sheet.Labels.Add(new SheetLabel(new SheetBox(Margin, 12, Margin + width, 30), title, LabelRole.Heading));
        (sheet.Width, sheet.Height) = (Margin + width, 30);
    }

    private static void Foot(Sheet sheet, IReadOnlyList<string> notes)
    {
        int y = sheet.Height + 10;
        foreach (string note in notes)
        {
            int width = TextSize.Width(note, LabelRole.Note);
            sheet.Labels.Add(new SheetLabel(new SheetBox(Margin, y, Margin + width, y + TextSize.Line), note, LabelRole.Note));
            y += TextSize.Line + 1;
            sheet.Width = Math.Max(sheet.Width, Margin + width);
        }

        sheet.Height = y;
    }

    private static Sheet Framed(Sheet sheet)
    {
        sheet.Width += Margin;
        sheet.Height += Margin - 4;
        return sheet;
    }
}
