using ScNet.Kernel;

namespace ScNet;

/// <summary>Numbers the nodes: the reference, input, output, then the others in order of appearance.</summary>
internal sealed class NodeNumbering
{
    // what the reference is called elsewhere
    private static readonly string[] s_otherNames = ["0", "ground", "vss"];

    private readonly List<string> _names = [];
    private readonly Dictionary<string, int> _index = new(StringComparer.Ordinal);
    private readonly int _input;
    private readonly int _output;
    private readonly NodePair[] _capacitors;
    private readonly NodePair[] _switches;

    public NodeNumbering(NetlistDeclaration declaration)
    {
        NodeOf(Converter.ReferenceNode);
        _input = NodeOf(declaration.Input!.Value.Value);
        _output = NodeOf(declaration.Output!.Value.Value);
        int[] positives = [.. declaration.Capacitors.Select(c => NodeOf(c.Positive))];
        _capacitors = [.. declaration.Capacitors.Select((c, i) => new NodePair(positives[i], NodeOf(c.Bottom)))];
        int[] firsts = [.. declaration.Switches.Select(s => NodeOf(s.First))];
        _switches = [.. declaration.Switches.Select((s, i) => new NodePair(firsts[i], NodeOf(s.Second)))];
        Names = [.. _names];
    }

    /// <summary>The name of each node.</summary>
    public string[] Names { get; }

    public SwitchedNetwork Network(NetlistDeclaration declaration, Phase[] phases, Mode[] modes) => new(
        Names.Length,
        _capacitors,
        ConverterPorts.Of(_input, _output, declaration.Load),
        _switches,
        Array.ConvertAll(phases, p => p.Duty),
        Array.ConvertAll(modes, m => m.ClosedFlags(phases.Length)));

    public void WarnOfFloatingTerminals(NetlistDeclaration declaration, SwitchedNetwork network, DiagnosticList findings)
    {
        var touches = new int[network.NodeCount];
        touches[SwitchedNetwork.Reference] = touches[network.Input] = touches[network.Output] = 1;
        foreach (NodePair ends in _capacitors.Concat(_switches))
        {
            touches[ends.First]++;
            touches[ends.Second]++;
        }

        for (int c = 0; c < declaration.Capacitors.Count; c++)
        {
            Warn(declaration.Capacitors[c].Name, _capacitors[c].First, touches, findings);
            Warn(declaration.Capacitors[c].Name, _capacitors[c].Second, touches, findings);
        }

        for (int s = 0; s < declaration.Switches.Count; s++)
        {
            Warn(declaration.Switches[s].Name, _switches[s].First, touches, findings);
            Warn(declaration.Switches[s].Name, _switches[s].Second, touches, findings);
        }
    }

    /// <summary>Warns of nodes that look as if the reference node were meant.</summary>
    public void WarnOfReferenceSpellings(NetlistDeclaration declaration, DiagnosticList findings)
    {
        bool isReferenceTouched = _capacitors.Concat(_switches)
            .Any(ends => ends.First == SwitchedNetwork.Reference || ends.Second == SwitchedNetwork.Reference);
        for (int node = SwitchedNetwork.Reference + 1; node < Names.Length; node++)
        {
            bool isSpelling = Names[node].Equals(Converter.ReferenceNode, StringComparison.OrdinalIgnoreCase);
            if (isSpelling || (!isReferenceTouched && Array.IndexOf(s_otherNames, Names[node].ToLowerInvariant()) >= 0))
            {
                SourcePosition? place = declaration.Capacitors.Where(c => c.Positive == Names[node] || c.Bottom == Names[node]).Select(c => c.Name)
                    .Concat(declaration.Switches.Where(s => s.First == Names[node] || s.Second == Names[node]).Select(s => s.Name)).FirstOrDefault().Position;
                findings.Warning(DiagnosticCodes.ReferenceSpelling, $"Node {Quoted.Name(Names[node])} is a node like any other: the reference node is '{Converter.ReferenceNode}'. Write '{Converter.ReferenceNode}' where the reference is meant.", place);
            }
        }
    }

    private void Warn(Declared<string> element, int node, int[] touches, DiagnosticList findings)
    {
        if (touches[node] == 1)
        {
            findings.Warning(DiagnosticCodes.FloatingTerminal, $"Only {Quoted.Name(element.Value)} touches node {Quoted.Name(Names[node])}, so no charge can flow there. Connect the node, or correct its name.", element.Position, [element.Value]);
        }
    }

    private int NodeOf(string name)
    {
        if (!_index.TryGetValue(name, out int node))
        {
            node = _names.Count;
            _index.Add(name, node);
            _names.Add(name);
        }

        return node;
    }
}
