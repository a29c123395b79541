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
        return new Converter(
            declaration.Name,
            declaration.Input!.Value.Value,
            declaration.Output!.Value.Value,
            declaration.Load,
            phases.Phases,
            [.. declaration.Capacitors.Select(c => new Capacitor(c.Name.Value, c.Positive, c.Bottom, c.Farads.Value, c.EsrOhms.Value))],
            [.. declaration.Switches.Select(s => new Switch(s.Name.Value, s.First, s.Second, s.Ohms.Value))],
            modes,
            nodes.Names,
            network,
            findings.Warnings);
    }
}
