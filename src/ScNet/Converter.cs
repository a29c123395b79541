using ScNet.Kernel;
using ScNet.Netlists;

namespace ScNet;

/// <summary>
/// A switched-capacitor converter: an input, an output, the reference node, capacitors, switches, two
/// or more phases and one or more modes. Immutable and safe on many threads.
/// </summary>
/// <example><code>
/// Converter half = Converter.Create("Half")
///     .Input("vin").Output("vout")
///     .Capacitor("fly", "p", "n", farads: 1e-9)
///     .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1)
///     .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
///     .Build();
/// </code></example>
public sealed class Converter
{
    /// <summary>The node to which input voltage, output voltage and node potentials refer.</summary>
    public const string ReferenceNode = "gnd";

    private readonly Capacitor[] _capacitors;
    private readonly Switch[] _switches;

    internal Converter(
        string name,
        string inputNode,
        string outputNode,
        LoadKind load,
        Phase[] phases,
        Capacitor[] capacitors,
        Switch[] switches,
        Mode[] modes,
        string[] nodes,
        SwitchedNetwork network,
        IReadOnlyList<Diagnostic> warnings)
    {
        Name = name;
        InputNode = inputNode;
        OutputNode = outputNode;
        Load = load;
        Phases = phases;
        _capacitors = capacitors;
        _switches = switches;
        Modes = modes;
        Nodes = nodes;
        Network = network;
        Warnings = warnings;
    }

    /// <summary>The name, for people.</summary>
    public string Name { get; }

    /// <summary>The node held by the input source.</summary>
    public string InputNode { get; }

    /// <summary>The node the load hangs on.</summary>
    public string OutputNode { get; }

    /// <summary>What hangs on the output node.</summary>
    public LoadKind Load { get; }

    /// <summary>The phases of the period in their order, phase 1 first; at least two.</summary>
    public IReadOnlyList<Phase> Phases { get; }

    /// <summary>The capacitors in the order in which they were added.</summary>
    public IReadOnlyList<Capacitor> Capacitors => _capacitors;

    /// <summary>The switches in the order in which they were added.</summary>
    public IReadOnlyList<Switch> Switches => _switches;

    /// <summary>The modes in the order in which they were added; at least one.</summary>
    public IReadOnlyList<Mode> Modes { get; }

    /// <summary>Every node, the reference node first, then input, output and the others in order of appearance.</summary>
    public IReadOnlyList<string> Nodes { get; }

    /// <summary>Harmless oddities of the netlist itself, such as a node that only one terminal touches.</summary>
    public IReadOnlyList<Diagnostic> Warnings { get; }

    /// <summary>The connections as plain integers, shared by every converter of the same topology.</summary>
    internal SwitchedNetwork Network { get; }

    /// <summary>Starts the description of a converter.</summary>
    /// <param name="name">The name, for people.</param>
    public static ConverterBuilder Create(string name) => new(name);

    /// <summary>The mode of the given name.</summary>
    /// <exception cref="ArgumentException">The converter has no such mode.</exception>
    public Mode FindMode(string name) => Modes.FirstOrDefault(m => m.Name == name)
        ?? throw new ArgumentException(
            $"'{Name}' has no mode '{name}'. Its modes: {string.Join(", ", Modes)}.", nameof(name));

    /// <summary>The position of a capacitor in <see cref="Capacitors"/>.</summary>
    /// <exception cref="ArgumentException">The converter has no such capacitor.</exception>
    public int IndexOfCapacitor(string name) => IndexOf(Array.FindIndex(_capacitors, c => c.Name == name), "capacitor", name);

    /// <summary>The position of a switch in <see cref="Switches"/>.</summary>
    /// <exception cref="ArgumentException">The converter has no such switch.</exception>
    public int IndexOfSwitch(string name) => IndexOf(Array.FindIndex(_switches, s => s.Name == name), "switch", name);

    /// <summary>
    /// The same topology with other component values. What topology alone decides need not be computed
    /// again: see <see cref="Analysis.ModeAnalysis.WithValuesOf"/>.
    /// </summary>
    /// <param name="farads">Capacitances in farads, index as in <see cref="Capacitors"/>; null keeps them.</param>
    /// <param name="ohms">On-resistances in ohms, index as in <see cref="Switches"/>; null keeps them.</param>
    /// <param name="esrOhms">Series resistances in ohms, index as in <see cref="Capacitors"/>; null keeps them.</param>
    /// <exception cref="ArgumentException">An array has the wrong length or a value is out of range.</exception>
    public Converter WithValues(
        IReadOnlyList<double>? farads = null,
        IReadOnlyList<double>? ohms = null,
        IReadOnlyList<double>? esrOhms = null)
    {
        Guard.Values(farads, _capacitors.Length, allowZero: false, nameof(farads));
        Guard.Values(ohms, _switches.Length, allowZero: false, nameof(ohms));
        Guard.Values(esrOhms, _capacitors.Length, allowZero: true, nameof(esrOhms));
        Capacitor[] capacitors = [.. _capacitors.Select((c, i) => new Capacitor(
            c.Name, c.PositiveNode, c.BottomNode, farads?[i] ?? c.Farads, esrOhms?[i] ?? c.EsrOhms))];
        Switch[] switches = [.. _switches.Select((s, i) => new Switch(
            s.Name, s.FirstNode, s.SecondNode, ohms?[i] ?? s.Ohms))];
        return new Converter(
            Name, InputNode, OutputNode, Load, (Phase[])Phases, capacitors, switches, (Mode[])Modes, (string[])Nodes, Network, Warnings);
    }

    /// <summary>The same elements and phases with other modes.</summary>
    /// <param name="modes">Name and, index as in <see cref="Switches"/>, the phases in which each switch is closed; at least one mode.</param>
    /// <exception cref="ArgumentException">There is no mode, a name is empty, two share one, a list has the wrong length or a phase does not exist.</exception>
    public Converter WithModes(params IReadOnlyList<(string Name, IReadOnlyList<PhaseSet> ClosedPhases)> modes)
    {
        ArgumentNullException.ThrowIfNull(modes);
        if (modes.Count == 0 || modes.Any(m => string.IsNullOrEmpty(m.Name))
            || modes.Select(m => m.Name).Distinct(StringComparer.Ordinal).Count() != modes.Count)
        {
            throw new ArgumentException("Expected at least one mode, each with a name of its own.", nameof(modes));
        }

        if (modes.Any(m => m.ClosedPhases.Count != _switches.Length || m.ClosedPhases.Any(p => p.Count > 0 && p[^1] > Phases.Count)))
        {
            throw new ArgumentException($"Expected {_switches.Length} sets of phases per mode, one per switch, with numbers from 1 to {Phases.Count}.", nameof(modes));
        }

        Mode[] made = [.. modes.Select((m, i) => new Mode(m.Name, i, [.. m.ClosedPhases]))];
        SwitchedNetwork network = Network.WithClosed([.. made.Select(m => m.ClosedFlags(Phases.Count))]);
        return new Converter(
            Name, InputNode, OutputNode, Load, (Phase[])Phases, _capacitors, _switches, made, (string[])Nodes, network, Warnings);
    }

    /// <summary>The name and the element counts.</summary>
    public override string ToString() =>
        $"{Name}: {UnitText.Count(_capacitors.Length, "capacitor", "capacitors")}, {UnitText.Count(_switches.Length, "switch", "switches")}, {Phases.Count} phases, {UnitText.Count(Modes.Count, "mode", "modes")}";

    private int IndexOf(int index, string kind, string name) => index >= 0
        ? index
        : throw new ArgumentException($"'{Name}' has no {kind} '{name}'.", nameof(name));
}
