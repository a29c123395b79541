namespace ScNet;

/// <summary>Checks that input, output and reference are three nodes and that elements touch the first two.</summary>
internal static class PortCheck
{
    public static void Check(NetlistDeclaration declaration, DiagnosticList findings)
    {
        bool known = !declaration.Gaps.HasFlag(DeclarationGaps.Ports);
        if (known && declaration.Input is null)
        {
            findings.Error(DiagnosticCodes.MissingKey, $"No input node is named. Name the node that the input source holds.", declaration.Position);
        }

        if (known && declaration.Output is null)
        {
            findings.Error(DiagnosticCodes.MissingKey, $"No output node is named. Name the node that the load is connected to.", declaration.Position);
        }

        bool complete = !declaration.Gaps.HasFlag(DeclarationGaps.Elements);
        if (complete && !declaration.Elements.Any())
        {
            findings.Error(DiagnosticCodes.MissingKey, $"The converter has no capacitors and no switches. Add them.", declaration.Position);
            complete = false;
        }

        CheckPort("input", declaration.Input, declaration, complete, findings);
        CheckPort("output", declaration.Output, declaration, complete, findings);
        if (declaration.Input is { } from && declaration.Output is { } to
            && from.Value == to.Value && to.Value != Converter.ReferenceNode)
        {
            findings.Error(DiagnosticCodes.PortClash, $"Input and output are the same node {Quoted.Name(to.Value)}. Choose two nodes.", to.Position);
        }
    }

    private static void CheckPort(
        string port, Declared<string>? node, NetlistDeclaration declaration, bool complete, DiagnosticList findings)
    {
        if (node is not { } declared)
        {
            return;
        }

        string name = declared.Value;
        if (name == Converter.ReferenceNode)
        {
            findings.Error(DiagnosticCodes.PortClash, $"The {port} is the reference node '{name}'. Choose another node.", declared.Position);
        }
        else if (complete
            && !declaration.Elements.SkipLast(declaration.Parasitics.Count).Any(e => e.First == name || e.Second == name))
        {
            findings.Error(DiagnosticCodes.PortUnconnected, $"No element touches the {port} node {Quoted.Name(name)}. Connect one, or correct the node's name.", declared.Position);
        }
    }
}
