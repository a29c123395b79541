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
    private readonly NodePair[] _inductors;

    public NodeNumbering(NetlistDeclaration declaration)
    {
        NodeOf(Converter.ReferenceNode);
        _input = NodeOf(declaration.Input!.Value.Value);
        _output = NodeOf(declaration.Output!.Value.Value);
        int[] positives = [.. declaration.Capacitors.Select(c => NodeOf(c.Positive))];
        _capacitors = [.. declaration.Capacitors.Select((c, i) => new NodePair(positives[i], NodeOf(c.Bottom)))];
        int[] firsts = [.. declaration.Switches.Select(s => NodeOf(s.First))];
        _switches = [.. declaration.Switches.Select((s, i) => new NodePair(firsts[i], NodeOf(s.Second)))];
        _inductors = [.. declaration.Inductors.Select(l => new NodePair(NodeOf(l.First), NodeOf(l.Second)))];
        ParasiticBranches = [.. declaration.Capacitors.SelectMany(Plates), .. declaration.Parasitics.Select(p => new NodePair(NodeOf(p.First), NodeOf(p.Second)))];
        Names = [.. _names];
    }

    /// <summary>The name of each node.</summary>
    public string[] Names { get; }

    /// <summary>The nodes of every parasitic capacitance, in the order of <see cref="Converter.ParasiticCapacitances"/>.</summary>
    public NodePair[] ParasiticBranches { get; }

    public SwitchedNetwork Network(NetlistDeclaration declaration, Phase[] phases, Mode[] modes) => new(
        Names.Length,
        _capacitors,
        ConverterPorts.Of(_input, _output, declaration.Load, _inductors),
        _switches,
        Array.ConvertAll(phases, p => p.Duty),
        Array.ConvertAll(modes, m => m.ClosedFlags(phases.Length)));

    public void WarnOfFloatingTerminals(NetlistDeclaration declaration, SwitchedNetwork network, DiagnosticList findings)
    {
        var touches = new int[network.NodeCount];
        touches[SwitchedNetwork.Reference] = touches[network.Input] = touches[network.Output] = 1;
        foreach (NodePair ends in _capacitors.Concat(_switches).Concat(_inductors))
        {
            touches[ends.First]++;
            touches[ends.Second]++;
        }

        NodePair[] terminals = [.. _capacitors, .. _switches, .. _inductors];
        foreach ((NodePair ends, (Declared<string> name, _, _)) in terminals.Zip(declaration.Elements))
        {
            Warn(name, ends.First, touches, findings);
            Warn(name, ends.Second, touches, findings);
        }
    }

    /// <summary>Warns of nodes that look as if the reference node were meant.</summary>
    public void WarnOfReferenceSpellings(NetlistDeclaration declaration, DiagnosticList findings)
    {
        bool isReferenceTouched = _capacitors.Concat(_switches).Concat(_inductors)
            .Any(ends => ends.First == SwitchedNetwork.Reference || ends.Second == SwitchedNetwork.Reference);
        for (int node = SwitchedNetwork.Reference + 1; node < Names.Length; node++)
        {
            bool isSpelling = Names[node].Equals(Converter.ReferenceNode, StringComparison.OrdinalIgnoreCase);
            if (isSpelling || (!isReferenceTouched && Array.IndexOf(s_otherNames, Names[node].ToLowerInvariant()) >= 0))
            {
                SourcePosition? place = declaration.Elements.FirstOrDefault(e => e.First == Names[node] || e.Second == Names[node]).Name.Position;
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

    private IEnumerable<NodePair> Plates(DeclaredCapacitor capacitor)
    {
        if (capacitor.BottomFarads.Value > 0)
        {
            yield return new NodePair(NodeOf(capacitor.Bottom), NodeOf(capacitor.Body.Value));
        }

        if (capacitor.TopFarads.Value > 0)
        {
            yield return new NodePair(NodeOf(capacitor.Positive), NodeOf(capacitor.Body.Value));
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
