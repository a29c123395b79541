using Fractions;
using ScNet.Kernel;

namespace ScNet;

/// <summary>
/// A switched-capacitor or hybrid converter: an input, an output, the reference node, capacitors, inductors,
/// switches, two or more phases and one or more modes. Immutable and safe on many threads.
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

    internal Converter(string name, SwitchedNetwork network)
    {
        Name = name;
        Network = network;
    }

    // the same elements, to be given other ones
    private Converter(Converter other, SwitchedNetwork network)
        : this(other.Name, network)
    {
        (InputNode, OutputNode, Load) = (other.InputNode, other.OutputNode, other.Load);
        (Phases, Modes, Nodes, Warnings) = (other.Phases, other.Modes, other.Nodes, other.Warnings);
        (Capacitors, Switches, Inductors, Parasitics) = (other.Capacitors, other.Switches, other.Inductors, other.Parasitics);
        (ParasiticBranches, FurtherOutputs) = (other.ParasiticBranches, other.FurtherOutputs);
    }

    /// <summary>The name, for people.</summary>
    public string Name { get; }

    /// <summary>The node held by the input source.</summary>
    public string InputNode { get; internal init; } = null!;

    /// <summary>The node that the load is connected to.</summary>
    public string OutputNode { get; internal init; } = null!;

    /// <summary>What is connected to the output node.</summary>
    public LoadKind Load { get; internal init; }

    /// <summary>The phases of the period in their order, phase 1 first; at least two.</summary>
    public NamedList<Phase> Phases { get; internal init; } = null!;

    /// <summary>The capacitors in the order in which they were added.</summary>
    public NamedList<Capacitor> Capacitors { get; internal init; } = null!;

    /// <summary>The switches in the order in which they were added.</summary>
    public NamedList<Switch> Switches { get; internal init; } = null!;

    /// <summary>The inductors in the order in which they were added; none in a converter of switches and capacitors alone.</summary>
    public NamedList<Inductor> Inductors { get; internal init; } = null!;

    /// <summary>
    /// The parasitic capacitances listed by themselves, in the order in which they were added; those from a capacitor's
    /// plates to its body are the capacitor's own.
    /// </summary>
    public NamedList<Parasitic> Parasitics { get; internal init; } = null!;

    /// <summary>The outputs beside <see cref="OutputNode"/>, in the order in which they were added; none in most converters.</summary>
    public NamedList<FurtherOutput> FurtherOutputs { get; internal init; } = null!;

    /// <summary>The modes in the order in which they were added; at least one.</summary>
    public NamedList<Mode> Modes { get; internal init; } = null!;

    /// <summary>Every node, the reference node first, then input, output and the others in order of appearance.</summary>
    public NamedList<string> Nodes { get; internal init; } = null!;

    /// <summary>Harmless oddities of the netlist itself, such as a node that only one terminal touches.</summary>
    public IReadOnlyList<Diagnostic> Warnings { get; internal init; } = null!;

    /// <summary>The connections as plain integers, shared by every converter of the same topology.</summary>
    internal SwitchedNetwork Network { get; }

    /// <summary>The nodes of <see cref="ParasiticCapacitances"/>, in their order.</summary>
    internal IReadOnlyList<NodePair> ParasiticBranches { get; init; } = [];

    /// <summary>
    /// Every parasitic capacitance by its nodes: bottom and positive plates of the capacitors, where they have one, then
    /// those of <see cref="Parasitics"/>.
    /// </summary>
    internal IEnumerable<ParasiticCapacitance> ParasiticCapacitances
    {
        get
        {
            int next = 0;
            foreach (Capacitor capacitor in Capacitors)
            {
                foreach ((_, _, double farads) in capacitor.Plates.From(capacitor))
                {
                    yield return new(ParasiticBranches[next++], farads);
                }
            }

            foreach (Parasitic parasitic in Parasitics)
            {
                yield return new(ParasiticBranches[next++], parasitic.Farads);
            }
        }
    }

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
    /// <param name="henries">Inductances in henries, index as in <see cref="Inductors"/>; null keeps them.</param>
    /// <param name="windingOhms">Winding resistances in ohms, index as in <see cref="Inductors"/>; null keeps them.</param>
    /// <exception cref="ArgumentException">An array has the wrong length or a value is out of range.</exception>
    public Converter WithValues(
        IReadOnlyList<double>? farads = null,
        IReadOnlyList<double>? ohms = null,
        IReadOnlyList<double>? esrOhms = null,
        IReadOnlyList<double>? henries = null,
        IReadOnlyList<double>? windingOhms = null)
    {
        Guard.Values(farads, Capacitors.Count, allowZero: false, nameof(farads));
        Guard.Values(ohms, Switches.Count, allowZero: false, nameof(ohms));
        Guard.Values(esrOhms, Capacitors.Count, allowZero: true, nameof(esrOhms));
        Guard.Values(henries, Inductors.Count, allowZero: false, nameof(henries));
        Guard.Values(windingOhms, Inductors.Count, allowZero: true, nameof(windingOhms));
        return new Converter(this, Network)
        {
            Capacitors = new([.. Capacitors.Select((c, i) => c.With(farads?[i] ?? c.Farads, esrOhms?[i] ?? c.EsrOhms))], Capacitors.Names),
            Switches = new([.. Switches.Select((s, i) => s.With(ohms?[i] ?? s.Ohms))], Switches.Names),
            Inductors = new([.. Inductors.Select((l, i) => l.With(henries?[i] ?? l.Henries, windingOhms?[i] ?? l.Ohms))], Inductors.Names),
        };
    }

    /// <summary>The same elements and modes with phases of other lengths.</summary>
    /// <param name="duties">The share of each phase in the period, exactly; they are positive and sum to 1.</param>
    /// <exception cref="ArgumentException">There is not one duty per phase, one is not positive, or they do not sum to 1.</exception>
    public Converter WithDuties(params IReadOnlyList<Fraction> duties)
    {
        ArgumentNullException.ThrowIfNull(duties);
        if (duties.Count != Phases.Count || duties.Any(d => d.Denominator.IsZero || d <= Fraction.Zero)
            || duties.Aggregate(Fraction.Zero, (sum, d) => sum + d) != Fraction.One)
        {
            throw new ArgumentException($"Expected {Phases.Count} positive duties that sum to 1, but got {string.Join(", ", duties)}.", nameof(duties));
        }

        return new Converter(this, Network.WithDuties([.. duties]))
        {
            Phases = new([.. Phases.Select((p, j) => new Phase(p.Number, p.Name, duties[j]))], Phases.Names),
        };
    }

    /// <summary>The same converter with other parasitic capacitances on nodes that it has.</summary>
    /// <param name="plates">Those of the plates, index as in <see cref="Capacitors"/>.</param>
    /// <param name="parasitics">Those listed by themselves.</param>
    internal Converter WithParasitics(CapacitorPlates[] plates, Parasitic[] parasitics)
    {
        Capacitor[] capacitors = [.. Capacitors.Select((c, i) => c.With(plates[i]))];
        NodePair Nodes(string first, string second) => new(this.Nodes.Names.Find(first), this.Nodes.Names.Find(second));
        return new Converter(this, Network)
        {
            Capacitors = new(capacitors, Capacitors.Names),
            Parasitics = NameIndex.ListOf(Name, "parasitic capacitance", parasitics, p => p.Name),
            ParasiticBranches = [
                .. capacitors.SelectMany(c => c.Plates.From(c)).Select(p => Nodes(p.Plate, p.Body)),
                .. parasitics.Select(p => Nodes(p.FirstNode, p.SecondNode)),
            ],
        };
    }

    /// <summary>The same converter with some of its further outputs as ports of <see cref="Network"/>, after the main one.</summary>
    /// <param name="outputs">Their positions.</param>
    internal Converter WithPorts(IEnumerable<int> outputs) => new(this, Network.WithHeldOutputs([.. outputs.Select(OutputNodes)]));

    /// <summary>The nodes of a further output.</summary>
    /// <param name="output">Its position.</param>
    internal NodePair OutputNodes(int output) => new(Nodes.Names.Find(FurtherOutputs[output].Node), Nodes.Names.Find(FurtherOutputs[output].ReturnNode));

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

        Mode[] made = [.. modes.Select((m, i) => new Mode(m.Name, i, [.. m.ClosedPhases], new PhaseSet[Inductors.Count]))];
        SwitchedNetwork network = Network.WithClosed([.. made.Select(m => m.ClosedFlags(Phases.Count))]);
        return new Converter(this, network) { Modes = NameIndex.ListOf(Name, "mode", made, m => m.Name) };
    }

    /// <summary>Some of the elements, with one mode; without inductors, parasitic capacitances and further outputs.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="capacitors">The positions of the capacitors.</param>
    /// <param name="switches">The positions of the switches.</param>
    internal Converter Part(Mode mode, int[] capacitors, int[] switches)
    {
        Capacitor[] ownCapacitors = Array.ConvertAll(capacitors, c => Capacitors[c]);
        Switch[] ownSwitches = Array.ConvertAll(switches, s => Switches[s]);
        List<string> nodes = [ReferenceNode, InputNode, OutputNode];
        Dictionary<string, int> index = nodes.Select((n, i) => (n, i)).ToDictionary(StringComparer.Ordinal);
        NodePair[] capacitorNodes = Array.ConvertAll(ownCapacitors, c => new NodePair(NodeOf(c.PositiveNode), NodeOf(c.BottomNode)));
        NodePair[] switchNodes = Array.ConvertAll(ownSwitches, s => new NodePair(NodeOf(s.FirstNode), NodeOf(s.SecondNode)));
        Mode ownMode = new(mode.Name, 0, Array.ConvertAll(switches, s => mode.ClosedPhases[s]), []);
        SwitchedNetwork network = new(
            nodes.Count, capacitorNodes, ConverterPorts.Of(index[InputNode], index[OutputNode], Load), switchNodes, Network.Duties, [ownMode.ClosedFlags(Phases.Count)]);
        return new Converter(this, network)
        {
            Capacitors = NameIndex.ListOf(Name, "capacitor", ownCapacitors, c => c.Name),
            Switches = NameIndex.ListOf(Name, "switch", ownSwitches, s => s.Name),
            Inductors = NameIndex.ListOf<Inductor>(Name, "inductor", [], l => l.Name),
            Parasitics = NameIndex.ListOf<Parasitic>(Name, "parasitic capacitance", [], p => p.Name),
            FurtherOutputs = NameIndex.ListOf<FurtherOutput>(Name, "further output", [], o => o.Name),
            Modes = NameIndex.ListOf(Name, "mode", [ownMode], m => m.Name),
            Nodes = NameIndex.ListOf(Name, "node", [.. nodes], n => n),
            ParasiticBranches = [],
            Warnings = [],
        };

        int NodeOf(string name)
        {
            if (!index.TryGetValue(name, out int node))
            {
                node = index[name] = nodes.Count;
                nodes.Add(name);
            }

            return node;
        }
    }

    /// <summary>
    /// The same converter with an interval in which all switches are open after each phase, taken from
    /// that phase. Phase j becomes phase 2j - 1, the interval after it phase 2j. Names are kept; where phases
    /// have names, the interval is called "NAME, dead time".
    /// </summary>
    /// <param name="fractionOfPeriod">The length of each interval as a fraction of the period: dead time in seconds times the switching frequency in hertz.</param>
    /// <exception cref="ArgumentOutOfRangeException">The interval is not positive, or not shorter than the shortest phase.</exception>
    public Converter WithDeadTime(Fraction fractionOfPeriod) => DeadTime.Add(this, fractionOfPeriod);

    /// <summary>The name and the element counts.</summary>
    public override string ToString() =>
        $"{Name}: {UnitText.Count(Capacitors.Count, "capacitor", "capacitors")}, {(Inductors.Count > 0 ? UnitText.Count(Inductors.Count, "inductor", "inductors") + ", " : string.Empty)}{UnitText.Count(Switches.Count, "switch", "switches")}, {Phases.Count} phases, {UnitText.Count(Modes.Count, "mode", "modes")}";
}
