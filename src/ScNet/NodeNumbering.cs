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
    private readonly int[] _capacitorFirst;
    private readonly int[] _capacitorSecond;
    private readonly int[] _switchFirst;
    private readonly int[] _switchSecond;

    public NodeNumbering(NetlistDeclaration declaration)
    {
        NodeOf(Converter.ReferenceNode);
        _input = NodeOf(declaration.Input!.Value.Value);
        _output = NodeOf(declaration.Output!.Value.Value);
        _capacitorFirst = [.. declaration.Capacitors.Select(c => NodeOf(c.Positive))];
        _capacitorSecond = [.. declaration.Capacitors.Select(c => NodeOf(c.Bottom))];
        _switchFirst = [.. declaration.Switches.Select(s => NodeOf(s.First))];
        _switchSecond = [.. declaration.Switches.Select(s => NodeOf(s.Second))];
        Names = [.. _names];
    }

    /// <summary>The name of each node.</summary>
    public string[] Names { get; }

    public SwitchedNetwork Network(NetlistDeclaration declaration, Phase[] phases, Mode[] modes) => new(
        Names.Length,
        (_capacitorFirst, _capacitorSecond),
        ConverterPorts.Of(_input, _output, declaration.Load),
        (_switchFirst, _switchSecond),
        Array.ConvertAll(phases, p => p.Duty),
        Array.ConvertAll(modes, m => m.ClosedFlags(phases.Length)));

    public void WarnOfFloatingTerminals(NetlistDeclaration declaration, SwitchedNetwork network, DiagnosticList findings)
    {
        var touches = new int[network.NodeCount];
        touches[SwitchedNetwork.Reference] = touches[network.Input] = touches[network.Output] = 1;
        foreach (int[] ends in new[] { _capacitorFirst, _capacitorSecond, _switchFirst, _switchSecond })
        {
            foreach (int node in ends)
            {
                touches[node]++;
            }
        }

        for (int c = 0; c < declaration.Capacitors.Count; c++)
        {
            Warn(declaration.Capacitors[c].Name, _capacitorFirst[c], touches, findings);
            Warn(declaration.Capacitors[c].Name, _capacitorSecond[c], touches, findings);
        }

        for (int s = 0; s < declaration.Switches.Count; s++)
        {
            Warn(declaration.Switches[s].Name, _switchFirst[s], touches, findings);
            Warn(declaration.Switches[s].Name, _switchSecond[s], touches, findings);
        }
    }

    /// <summary>Warns of nodes that look as if the reference node were meant.</summary>
    public void WarnOfReferenceSpellings(NetlistDeclaration declaration, DiagnosticList findings)
    {
        int[][] ends = [_capacitorFirst, _capacitorSecond, _switchFirst, _switchSecond];
        bool isReferenceTouched = ends.Any(e => e.Contains(SwitchedNetwork.Reference));
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
