namespace ScNet;

/// <summary>Checks that input, output and reference are three nodes and that elements touch the first two, and the nodes of further outputs.</summary>
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

        HashSet<string> touched = declaration.FurtherOutputs.Count > 0 ? Touched(declaration) : [];
        foreach (DeclaredOutput output in declaration.FurtherOutputs)
        {
            CheckFurther(output, declaration, complete, touched, findings);
        }
    }

    private static void CheckFurther(DeclaredOutput output, NetlistDeclaration declaration, bool complete, HashSet<string> touched, DiagnosticList findings)
    {
        (string name, SourcePosition? place) = (output.Name.Value, output.Name.Position);
        if (declaration.Output is { } main && main.Value == name)
        {
            findings.Error(DiagnosticCodes.DuplicateName, $"The further output {Quoted.Name(name)} has the name of the output's node, by which results call that output. Rename one.", place, [name]);
        }

        if (output.Node == output.Return && output.Node.Length > 0)
        {
            findings.Error(DiagnosticCodes.SameNode, $"Both terminals of the further output {Quoted.Name(name)} are on node {Quoted.Name(output.Node)}. Move one of them.", place, [name]);
        }

        foreach (string node in new[] { output.Node, output.Return }.Distinct())
        {
            if (complete && node.Length > 0 && node != Converter.ReferenceNode && !touched.Contains(node))
            {
                findings.Error(DiagnosticCodes.PortUnconnected, $"No element touches node {Quoted.Name(node)} of the further output {Quoted.Name(name)}. Connect one, or correct the node's name.", place, [name]);
            }
        }
    }

    private static bool IsTouched(string node, NetlistDeclaration declaration) => Touching(declaration).Any(e => e.First == node || e.Second == node);

    // looked up for every output: a walk for each would be the square of them
    private static HashSet<string> Touched(NetlistDeclaration declaration) => Touching(declaration).SelectMany(e => new[] { e.First, e.Second }).ToHashSet(StringComparer.Ordinal);

    private static IEnumerable<(Declared<string> Name, string First, string Second)> Touching(NetlistDeclaration declaration) => declaration.Elements.SkipLast(declaration.Parasitics.Count);

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
        else if (complete && !IsTouched(name, declaration))
        {
            findings.Error(DiagnosticCodes.PortUnconnected, $"No element touches the {port} node {Quoted.Name(name)}. Connect one, or correct the node's name.", declared.Position);
        }
    }
}
