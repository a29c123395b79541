using ScNet.Kernel;

namespace ScNet;

/// <summary>Checks a declaration as a whole and makes the converter of it, or tells every mistake.</summary>
/// <remarks>Time and space are linear in the declaration, and in modes · phases · switches.</remarks>
internal static class ConverterAssembly
{
    /// <summary>The converter, or null where the findings have an error.</summary>
    public static Converter? Of(NetlistDeclaration declaration, DiagnosticList findings)
    {
        PortCheck.Check(declaration, findings);
        PhaseAssembly phases = new(declaration, findings);
        ElementCheck.Check(declaration, findings);
        Mode[] modes = new ModeAssembly(declaration, phases, findings).Read();
        if (findings.HasErrors || declaration.Gaps != DeclarationGaps.None)
        {
            return null;
        }

        NodeNumbering nodes = new(declaration);
        SwitchedNetwork network = nodes.Network(declaration, phases.Phases, modes);
        nodes.WarnOfFloatingTerminals(declaration, network, findings);
        nodes.WarnOfReferenceSpellings(declaration, findings);
        string name = declaration.Name;
        return new Converter(name, network)
        {
            InputNode = declaration.Input!.Value.Value,
            OutputNode = declaration.Output!.Value.Value,
            Load = declaration.Load,
            Phases = NameIndex.ListOf(name, "phase", phases.Phases, p => p.Name),
            Capacitors = NameIndex.ListOf(name, "capacitor", [.. declaration.Capacitors.Select(Made)], c => c.Name),
            Switches = NameIndex.ListOf(name, "switch", [.. declaration.Switches.Select(Made)], s => s.Name),
            Inductors = NameIndex.ListOf(name, "inductor", [.. declaration.Inductors.Select(Made)], l => l.Name),
            Parasitics = NameIndex.ListOf(name, "parasitic capacitance", [.. declaration.Parasitics.Select(Made)], p => p.Name),
            FurtherOutputs = NameIndex.ListOf(name, "further output", [.. declaration.FurtherOutputs.Select(Made)], o => o.Name),
            Modes = NameIndex.ListOf(name, "mode", modes, m => m.Name),
            Nodes = NameIndex.ListOf(name, "node", nodes.Names, n => n),
            ParasiticBranches = nodes.ParasiticBranches,
            Warnings = findings.Warnings,
        };
    }

    private static Capacitor Made(DeclaredCapacitor c) => new(
        c.Name.Value,
        c.Positive,
        c.Bottom,
        c.Farads.Value,
        c.EsrOhms.Value,
        new CapacitorPlates(c.BottomFarads.Value, c.TopFarads.Value, c.Body.Value),
        c.Controlled?.Value);

    private static Switch Made(DeclaredSwitch s) => new(s.Name.Value, s.First, s.Second, s.Ohms.Value, s.DiodeVolts?.Value);

    private static Inductor Made(DeclaredInductor l) => new(l.Name.Value, l.First, l.Second, l.Henries.Value, l.Ohms.Value);

    private static FurtherOutput Made(DeclaredOutput o) => new(o.Name.Value, o.Node, o.Return);

    private static Parasitic Made(DeclaredParasitic p) => new(p.Name.Value, p.First, p.Second, p.Farads.Value);
}
