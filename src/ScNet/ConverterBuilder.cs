using System.Diagnostics.CodeAnalysis;
using Fractions;

namespace ScNet;

/// <summary>
/// Describes a converter step by step. Mistakes are collected and reported together when it is built.
/// Not safe on several threads; the converter it builds is. A name may hold any characters, but not half of one (a surrogate without
/// its other half): such a name, an empty one and null are an <see cref="ArgumentException"/>.
/// </summary>
public sealed class ConverterBuilder
{
    private readonly NetlistDeclaration _declaration;

    internal ConverterBuilder(string name)
    {
        Guard.Named(name, nameof(name));
        _declaration = new NetlistDeclaration { Name = name };
    }

    /// <summary>The node held by the input source.</summary>
    public ConverterBuilder Input(string node)
    {
        Guard.Named(node, nameof(node));
        _declaration.Input = new(node);
        return this;
    }

    /// <summary>The node that the load is connected to.</summary>
    /// <param name="node">The node's name.</param>
    /// <param name="load">What kind of load it is.</param>
    public ConverterBuilder Output(string node, LoadKind load = LoadKind.Stiff)
    {
        Guard.Named(node, nameof(node));
        _declaration.Output = new(node);
        _declaration.Load = load;
        return this;
    }

    /// <summary>A number of equal phases. Without this, or duties, or names, there are two.</summary>
    public ConverterBuilder Phases(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(count);
        _declaration.PhaseCount = new(count);
        return this;
    }

    /// <summary>The names of the phases, in their order.</summary>
    public ConverterBuilder PhaseNames(params string[] names)
    {
        ArgumentNullException.ThrowIfNull(names);
        foreach (string name in names)
        {
            Guard.Named(name, nameof(names));
        }

        _declaration.PhaseNames = new([.. names.Select(n => new Declared<string>(n))]);
        return this;
    }

    /// <summary>The duty of each phase as a fraction of the period, taken as the decimal written (0.3 is 3/10); they sum to 1.</summary>
    public ConverterBuilder Duties(params double[] duties)
    {
        ArgumentNullException.ThrowIfNull(duties);
        return Duties([.. duties.Select(ExactDecimal.Of)]);
    }

    /// <summary>The duty of each phase as an exact fraction of the period; they sum to 1.</summary>
    public ConverterBuilder Duties(params Fraction[] duties)
    {
        ArgumentNullException.ThrowIfNull(duties);
        _declaration.Duties = new([.. duties.Select(d => new Declared<Fraction>(d))]);
        return this;
    }

    /// <summary>Adds a capacitor.</summary>
    /// <param name="name">The name, unique among all elements.</param>
    /// <param name="positiveNode">The node of the positive plate.</param>
    /// <param name="bottomNode">The node of the bottom plate.</param>
    /// <param name="farads">Capacitance in farads (F).</param>
    /// <param name="esrOhms">Equivalent series resistance in ohms (Ω).</param>
    /// <param name="plates">The parasitic capacitances of the plates; none where left out.</param>
    /// <param name="controlled">The share of the input voltage that a controller outside the netlist keeps the capacitor at; null for none.</param>
    public ConverterBuilder Capacitor(
        string name, string positiveNode, string bottomNode, double farads = 1, double esrOhms = 0, CapacitorPlates? plates = null, Fraction? controlled = null)
    {
        Guard.Named(name, nameof(name));
        Guard.Named(positiveNode, nameof(positiveNode));
        Guard.Named(bottomNode, nameof(bottomNode));
        plates ??= CapacitorPlates.None;
        Guard.Named(plates.BodyNode, nameof(plates));
        _declaration.Capacitors.Add(new(new(name), positiveNode, bottomNode, new(farads), new(esrOhms))
        {
            BottomFarads = new(plates.BottomFarads),
            TopFarads = new(plates.TopFarads),
            Body = new(plates.BodyNode),
            Controlled = controlled is { } share ? new(share) : null,
        });
        return this;
    }

    /// <summary>Adds an inductor.</summary>
    /// <param name="name">The name, unique among all elements.</param>
    /// <param name="firstNode">The node of the first terminal.</param>
    /// <param name="secondNode">The node of the second terminal.</param>
    /// <param name="henries">Inductance in henries (H).</param>
    /// <param name="ohms">Winding resistance in ohms (Ω).</param>
    /// <param name="untilZero">
    /// The phases that last only until this inductor's current is zero, after which every switch is open until the next
    /// phase; left out where <see cref="Mode"/> says it.
    /// </param>
    public ConverterBuilder Inductor(string name, string firstNode, string secondNode, double henries = 1, double ohms = 0, PhaseSet untilZero = default)
    {
        Guard.Named(name, nameof(name));
        Guard.Named(firstNode, nameof(firstNode));
        Guard.Named(secondNode, nameof(secondNode));
        _declaration.Inductors.Add(new(
            new(name), firstNode, secondNode, new(henries), new(ohms), untilZero.Count > 0 ? new(Declare(untilZero)) : null));
        return this;
    }

    /// <summary>Adds a parasitic capacitance, such as a junction or a wire.</summary>
    /// <param name="name">The name, unique among all elements.</param>
    /// <param name="firstNode">One of its nodes.</param>
    /// <param name="secondNode">The other node.</param>
    /// <param name="farads">Capacitance in farads (F).</param>
    public ConverterBuilder Parasitic(string name, string firstNode, string secondNode, double farads)
    {
        Guard.Named(name, nameof(name));
        Guard.Named(firstNode, nameof(firstNode));
        Guard.Named(secondNode, nameof(secondNode));
        _declaration.Parasitics.Add(new(new(name), firstNode, secondNode, new(farads)));
        return this;
    }

    /// <summary>
    /// Adds an output beside the main one: a constant current drawn from a node, which carries nothing unless a result says
    /// so. The capacitors that hold its voltage are listed like any other.
    /// </summary>
    /// <param name="name">The name, unique among all elements, and another one than the main output's node.</param>
    /// <param name="node">The node that the load's current leaves.</param>
    /// <param name="returnNode">The node at which it comes back.</param>
    public ConverterBuilder FurtherOutput(string name, string node, string returnNode = Converter.ReferenceNode)
    {
        Guard.Named(name, nameof(name));
        Guard.Named(node, nameof(node));
        Guard.Named(returnNode, nameof(returnNode));
        _declaration.FurtherOutputs.Add(new(new(name), node, returnNode));
        return this;
    }

    /// <summary>Adds a switch.</summary>
    /// <param name="name">The name, unique among all elements.</param>
    /// <param name="firstNode">The node of the first terminal.</param>
    /// <param name="secondNode">The node of the second terminal.</param>
    /// <param name="on">The phases in which it is closed; left out where <see cref="Mode"/> says it.</param>
    /// <param name="ohms">On-resistance in ohms (Ω).</param>
    /// <param name="diodeVolts">
    /// Forward voltage in volts (V) of a body diode that conducts from the second terminal to the first while the switch
    /// is open; null for none.
    /// </param>
    public ConverterBuilder Switch(string name, string firstNode, string secondNode, PhaseSet on = default, double ohms = 1, double? diodeVolts = null)
    {
        Guard.Named(name, nameof(name));
        Guard.Named(firstNode, nameof(firstNode));
        Guard.Named(secondNode, nameof(secondNode));
        Declared<DeclaredPhase[]>? phases = on.Count > 0 ? new(Declare(on)) : null;
        _declaration.Switches.Add(new(new(name), firstNode, secondNode, new(ohms), phases) { DiodeVolts = diodeVolts is { } volts ? new(volts) : null });
        return this;
    }

    /// <summary>Adds a mode of a converter that can be reconfigured. A switch that it does not name stays open in it.</summary>
    /// <param name="name">The name, unique among the modes.</param>
    /// <param name="closed">Each switch that closes, with the phases in which it does; an inductor's name stands for the phases that its current ends.</param>
    public ConverterBuilder Mode(string name, params (string Switch, PhaseSet On)[] closed)
    {
        Guard.Named(name, nameof(name));
        ArgumentNullException.ThrowIfNull(closed);
        foreach ((string @switch, _) in closed)
        {
            Guard.Named(@switch, nameof(closed));
        }

        _declaration.Modes.Add(new(new(name), [.. closed.Select(c => new DeclaredClosing(new(c.Switch), Declare(c.On)))]));
        return this;
    }

    /// <summary>The converter.</summary>
    /// <exception cref="ScNetException">The description has mistakes; the exception carries all of them.</exception>
    public Converter Build() => TryBuild(out Converter? converter, out IReadOnlyList<Diagnostic> diagnostics)
        ? converter
        : throw new ScNetException($"'{_declaration.Name}' cannot be built:", diagnostics);

    /// <summary>Builds the converter, or tells every mistake of the description.</summary>
    /// <param name="converter">The converter, or null where there are mistakes.</param>
    /// <param name="diagnostics">Every mistake; where there is none, the warnings.</param>
    /// <returns>Whether there is a converter.</returns>
    public bool TryBuild([NotNullWhen(true)] out Converter? converter, out IReadOnlyList<Diagnostic> diagnostics)
    {
        DiagnosticList findings = new();
        converter = ConverterAssembly.Of(_declaration, findings);
        diagnostics = findings.Findings();
        return converter is not null;
    }

    private static DeclaredPhase[] Declare(PhaseSet phases) => [.. phases.Select(p => new DeclaredPhase(p))];
}
