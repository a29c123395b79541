namespace ScNet.Reporting.Drawings;

/// <summary>
/// Finds the lines of a <see cref="RowPlan"/>. Every net gets a line; the ends of an inductor share a row where they can, since
/// its average voltage is zero. A part both ends of which would lie in one row gets a second line of its first net
/// beside that row, joined to the first one by a piece of wire.
/// </summary>
internal sealed class RowPlanner
{
    private readonly Circuit _circuit;
    private readonly List<Line> _lines = [];
    private readonly List<PlannedPart> _parts = [];
    private readonly List<PlannedPart> _wires = [];
    private readonly Dictionary<int, int> _lineOfNet = [];
    private readonly Dictionary<int, int> _loopLine = [];
    private readonly int[] _toOutput;
    private readonly bool _liesLevel;

    public RowPlanner(Circuit circuit, IReadOnlyList<int> nets, bool liesLevel)
    {
        _circuit = circuit;
        _liesLevel = liesLevel;
        _toOutput = NetDistances.From(circuit, circuit.OutputNet);
        foreach (int net in nets)
        {
            _lineOfNet.Add(net, _lines.Count);
            _lines.Add(new Line(net, circuit.Nets[net].Level, _lines.Count, 0));
        }
    }

    public RowPlan Plan()
    {
        CircuitPart[] own = [.. _circuit.Parts.Where(p => _lineOfNet.ContainsKey(p.First))];
        foreach (CircuitPart part in own.Where(IsLevelInductor))
        {
            LayLevel(part);
        }

        foreach (CircuitPart part in own.Where(p => !IsLevelInductor(p)))
        {
            int first = _lineOfNet[part.First];
            int second = _lineOfNet[part.Second];
            _parts.Add(new PlannedPart(part, _lines[first].Cluster == _lines[second].Cluster ? LoopLine(first) : first, second));
        }

        return Numbered();
    }

    private bool IsLevelInductor(CircuitPart part) =>
        _liesLevel && part.Kind == PartKind.Inductor && part.First != part.Second && part.First != 0 && part.Second != 0;

    // its left end stays on its line; its right end is the line of the other net, or a second one that a wire joins to it
    private void LayLevel(CircuitPart part)
    {
        bool isFirstLeft = _toOutput[part.First] >= _toOutput[part.Second];
        (int left, int right) = isFirstLeft ? (_lineOfNet[part.First], _lineOfNet[part.Second]) : (_lineOfNet[part.Second], _lineOfNet[part.First]);
        if (_lines[left].HasRight)
        {
            left = SecondLine(left);
        }

        if (_lines[right].HasLeft || _lines[right].Cluster == _lines[left].Cluster)
        {
            int second = SecondLine(right);
            _lines[second] = _lines[second] with { Level = _lines[left].Level };
            right = second;
        }

        int cluster = _lines[right].Cluster;
        for (int l = 0; l < _lines.Count; l++)
        {
            if (_lines[l].Cluster == cluster)
            {
                _lines[l] = _lines[l] with { Cluster = _lines[left].Cluster, Level = _lines[left].Level, Shift = _lines[left].Shift };
            }
        }

        _lines[left] = _lines[left] with { HasRight = true };
        _lines[right] = _lines[right] with { HasLeft = true };
        _parts.Add(isFirstLeft ? new PlannedPart(part, left, right) : new PlannedPart(part, right, left));
    }

    // beside the row, above it where the row is the reference's
    private int LoopLine(int line)
    {
        int net = _lines[line].Net;
        if (!_loopLine.TryGetValue(net, out int loop))
        {
            _loopLine[net] = loop = SecondLine(line);
            bool isShort = _lines.Count(l => l.Cluster == _lines[line].Cluster) == 1;
            _lines[loop] = _lines[loop] with { Shift = net == 0 || !isShort ? -1 : 1 };
        }

        return loop;
    }

    private int SecondLine(int line)
    {
        int second = _lines.Count;
        _lines.Add(new Line(_lines[line].Net, _lines[line].Level, second, 0));
        _wires.Add(new PlannedPart(new CircuitPart(PartKind.Wire, "", _lines[line].Net, _lines[line].Net), line, second));
        return second;
    }

    private RowPlan Numbered()
    {
        int[] clusters = [.. _lines.Select(l => l.Cluster).Distinct()
            .Select(c => (Cluster: c, Line: _lines.First(l => l.Cluster == c), HasReference: _lines.Any(l => l.Cluster == c && l.Net == 0)))
            .OrderBy(c => c.HasReference)
            .ThenByDescending(c => c.HasReference ? 0 : c.Line.Level)
            .ThenBy(c => c.Line.Net == 0 ? c.Line.Shift : 0)
            .ThenBy(c => c.Line.Net == 0 ? 0 : _lineOfNet[c.Line.Net])
            .ThenBy(c => c.Line.Shift)
            .Select(c => c.Cluster)];
        int[] rows = [.. _lines.Select(l => Array.IndexOf(clusters, l.Cluster))];
        // a reference line never changes places, nor does a second line beside its own
        double[] levels = [.. clusters.Select((c, r) => _lines.Any(l => l.Cluster == c && (l.Net == 0 || l.Shift != 0)) ? double.NaN : _lines.First(l => l.Cluster == c).Level)];
        return RowPlan.Of([.. _lines.Select(l => l.Net)], rows, levels, [.. _parts, .. _wires]);
    }

    private readonly record struct Line(int Net, double Level, int Cluster, int Shift)
    {
        public bool HasLeft { get; init; }

        public bool HasRight { get; init; }
    }
}
