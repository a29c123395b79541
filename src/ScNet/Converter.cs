using ScNet.Kernel;

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
        : this(
            name,
            inputNode,
            outputNode,
            load,
            new NamedList<Phase>(phases, new NameIndex(name, "phase", Array.ConvertAll(phases, p => p.Name))),
            new NamedList<Capacitor>(capacitors, new NameIndex(name, "capacitor", Array.ConvertAll(capacitors, c => c.Name))),
            new NamedList<Switch>(switches, new NameIndex(name, "switch", Array.ConvertAll(switches, s => s.Name))),
            ModeList(name, modes),
            new NamedList<string>(nodes, new NameIndex(name, "node", nodes)),
            network,
            [.. warnings])
    {
    }

    private Converter(
        string name,
        string inputNode,
        string outputNode,
        LoadKind load,
        NamedList<Phase> phases,
        NamedList<Capacitor> capacitors,
        NamedList<Switch> switches,
        NamedList<Mode> modes,
        NamedList<string> nodes,
        SwitchedNetwork network,
        IReadOnlyList<Diagnostic> warnings)
    {
        Name = name;
        InputNode = inputNode;
        OutputNode = outputNode;
        Load = load;
        Phases = phases;
        Capacitors = capacitors;
        Switches = switches;
        Modes = modes;
        Nodes = nodes;
        Network = network;
        Warnings = warnings;
    }

    /// <summary>The name, for people.</summary>
    public string Name { get; }

    /// <summary>The node held by the input source.</summary>
    public string InputNode { get; }

    /// <summary>The node that the load is connected to.</summary>
    public string OutputNode { get; }

    /// <summary>What is connected to the output node.</summary>
    public LoadKind Load { get; }

    /// <summary>The phases of the period in their order, phase 1 first; at least two.</summary>
    public NamedList<Phase> Phases { get; }

    /// <summary>The capacitors in the order in which they were added.</summary>
    public NamedList<Capacitor> Capacitors { get; }

    /// <summary>The switches in the order in which they were added.</summary>
    public NamedList<Switch> Switches { get; }

    /// <summary>The modes in the order in which they were added; at least one.</summary>
    public NamedList<Mode> Modes { get; }

    /// <summary>Every node, the reference node first, then input, output and the others in order of appearance.</summary>
    public NamedList<string> Nodes { get; }

    /// <summary>Harmless oddities of the netlist itself, such as a node that only one terminal touches.</summary>
    public IReadOnlyList<Diagnostic> Warnings { get; }

    /// <summary>The connections as plain integers, shared by every converter of the same topology.</summary>
    internal SwitchedNetwork Network { get; }

    /// <summary>Starts the description of a converter.</summary>
    /// <param name="name">The name, for people.</param>
    public static ConverterBuilder Create(string name) => new(name);

    /// <summary>The only mode.</summary>
    /// <exception cref="ArgumentException">There are several.</exception>
    internal Mode OnlyMode(string parameterName) => Modes.Count == 1
        ? Modes[0]
        : throw new ArgumentException($"'{Name}' has {Modes.Count} modes: name one of {string.Join(", ", Modes)}.", parameterName);

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
        Guard.Values(farads, Capacitors.Count, allowZero: false, nameof(farads));
        Guard.Values(ohms, Switches.Count, allowZero: false, nameof(ohms));
        Guard.Values(esrOhms, Capacitors.Count, allowZero: true, nameof(esrOhms));
        Capacitor[] capacitors = [.. Capacitors.Select((c, i) => new Capacitor(
            c.Name, c.PositiveNode, c.BottomNode, farads?[i] ?? c.Farads, esrOhms?[i] ?? c.EsrOhms))];
        Switch[] switches = [.. Switches.Select((s, i) => new Switch(
            s.Name, s.FirstNode, s.SecondNode, ohms?[i] ?? s.Ohms))];
        return new Converter(
            Name,
            InputNode,
            OutputNode,
            Load,
            Phases,
            new NamedList<Capacitor>(capacitors, Capacitors.Names),
            new NamedList<Switch>(switches, Switches.Names),
            Modes,
            Nodes,
            Network,
            Warnings);
    }

    /// <summary>Throws where a mode is not one of this converter's.</summary>
    internal void RequireOwn(Mode mode, string parameterName)
    {
        ArgumentNullException.ThrowIfNull(mode, parameterName);
        if (mode.Index >= Modes.Count || !ReferenceEquals(Modes[mode.Index], mode))
        {
            throw new ArgumentException($"Mode '{mode.Name}' is not one of the modes of '{Name}'.", parameterName);
        }
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

        if (modes.Any(m => m.ClosedPhases.Count != Switches.Count || m.ClosedPhases.Any(p => p.Count > 0 && p[^1] > Phases.Count)))
        {
            throw new ArgumentException($"Expected {Switches.Count} sets of phases per mode, one per switch, with numbers from 1 to {Phases.Count}.", nameof(modes));
        }

        Mode[] made = [.. modes.Select((m, i) => new Mode(m.Name, i, [.. m.ClosedPhases]))];
        SwitchedNetwork network = Network.WithClosed([.. made.Select(m => m.ClosedFlags(Phases.Count))]);
        return new Converter(
            Name, InputNode, OutputNode, Load, Phases, Capacitors, Switches, ModeList(Name, made), Nodes, network, Warnings);
    }

    /// <summary>The name and the element counts.</summary>
    public override string ToString() =>
        $"{Name}: {UnitText.Count(Capacitors.Count, "capacitor", "capacitors")}, {UnitText.Count(Switches.Count, "switch", "switches")}, {Phases.Count} phases, {UnitText.Count(Modes.Count, "mode", "modes")}";

    private static NamedList<Mode> ModeList(string converter, Mode[] modes) =>
        new(modes, new NameIndex(converter, "mode", Array.ConvertAll(modes, m => m.Name)));
}
