using System.Globalization;
using System.Text;
using ScNet.Analysis;

namespace ScNet.Reporting.Drawings;

/// <summary>Drawings in words: titles, and what somebody reads who cannot see them.</summary>
internal static class NetworkWords
{
    /// <summary>What the figures of a phase mean.</summary>
    public static IReadOnlyList<string> PhaseKey { get; } = ["bold: volts per volt of input", "arrows: charge per unit of output charge"];

    public static string PhaseTitle(ModeAnalysis analysis, Phase phase) =>
        $"{Titled(analysis.Converter, analysis.Mode)}, phase {phase.Name}" + (phase.Name == Number(phase) ? $" of {analysis.Converter.Phases.Count}" : "");

    public static string ConverterTitle(Converter converter, Mode? mode) => mode is null ? converter.Name : Titled(converter, mode);

    /// <summary>The network of a phase.</summary>
    public static string OfPhase(Circuit circuit, ModeAnalysis analysis, PhaseGraph graph)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"Closed network of {analysis.Converter.Name}, mode {analysis.Mode.Name}, phase {graph.Phase.Name}. Wires: ");
        text.AppendJoin("; ", circuit.Nets.Select((n, i) => $"{n.Name} at {Known(n.Voltage)}{(graph.Groups[i].Floats ? ", floating" : "")}"));
        text.Append(". Elements: ");
        text.AppendJoin("; ", circuit.Parts.Select(p => $"{Described(circuit, p)}, {Charge(circuit, p)}"));
        text.Append(". Voltages are per volt of input, charges per unit of charge delivered to the load in one period.");
        return text.ToString();
    }

    /// <summary>The whole converter.</summary>
    public static string OfConverter(Circuit circuit, Converter converter, Mode? mode)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"Converter {converter.Name}, input {converter.InputNode}, output {converter.OutputNode}, reference {Converter.ReferenceNode}. Elements: ");
        text.AppendJoin("; ", circuit.Parts.Select(p => Described(circuit, p) + Noted(p)));
        text.Append('.');
        if (mode is not null)
        {
            text.Append(CultureInfo.InvariantCulture, $" Mode {mode.Name}, phases: ");
            text.AppendJoin(", ", converter.Phases.Select(p => $"{Short(p)} for {p.Duty} of the period"));
            text.Append('.');
        }

        return text.ToString();
    }

    /// <summary>A phase in a drawing: its name, or φ with its number.</summary>
    public static string Short(Phase phase) => phase.Name == Number(phase) ? $"φ{phase.Name}" : phase.Name;

    private static string Noted(CircuitPart part) => part switch
    {
        { Note.Length: 0 } => string.Empty,
        { Kind: PartKind.Capacitor } => $", in series with {part.Note}",
        { Kind: PartKind.Inductor } => $", of {part.Note}",
        { Kind: PartKind.Parasitic } => $", {part.Note}",
        _ => part.Note == "open" ? ", always open" : $", closed in {part.Note}",
    };

    private static string Titled(Converter converter, Mode mode) => converter.Modes.Count == 1 ? converter.Name : $"{converter.Name}, mode {mode.Name}";

    private static string Number(Phase phase) => phase.Number.ToString(System.Globalization.CultureInfo.InvariantCulture);

    private static string Known(string voltage) => voltage == "?" ? "an undetermined voltage" : voltage;

    private static string Described(Circuit circuit, CircuitPart part)
    {
        string kind = part.Kind switch
        {
            PartKind.Source => "",
            PartKind.Load => "",
            PartKind.CurrentLoad => part.Name == "load" ? "current " : "current load ",
            PartKind.Capacitor => "capacitor ",
            PartKind.Parasitic => "parasitic capacitance ",
            PartKind.Inductor => "inductor ",
            _ => "switch ",
        };
        return part.First == part.Second
            ? $"{kind}{part.Name} with both ends at {circuit.Nets[part.First].Nodes[0]}"
            : $"{kind}{part.Name} from {circuit.Nets[part.First].Nodes[0]} to {circuit.Nets[part.Second].Nodes[0]}";
    }

    private static string Charge(Circuit circuit, CircuitPart part) => part.Flow switch
    {
        0 when part.Charge == "?" => "charge undetermined",
        0 => "no charge",
        _ when part.First == part.Second => $"charge {part.Charge}",
        _ => $"charge {part.Charge} towards {circuit.Nets[part.Flow > 0 ? part.Second : part.First].Nodes[0]}",
    };
}
