using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>The nodes of a converter, those behind series resistances included, what is held at them, and what joins them.</summary>
internal sealed class PreciseGraph
{
    // what capacitors join to held nodes
    private const int Grounded = -1;

    private readonly Converter _converter;
    private readonly Mode _mode;
    private readonly Dictionary<string, int> _node;
    private readonly int[] _inner;
    private readonly int[] _group;

    public PreciseGraph(Converter converter, Mode mode)
    {
        _converter = converter;
        _mode = mode;
        _node = converter.Nodes.Select((name, i) => (name, i)).ToDictionary(n => n.name, n => n.i);
        int nodes = converter.Nodes.Count, inputs = 2 + converter.FurtherOutputs.Count;
        _inner = [.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? nodes++ : this[c.PositiveNode])];
        NodeCount = nodes;
        bool isStiff = converter.Load == LoadKind.Stiff;
        int[] held = [this[Converter.ReferenceNode], this[converter.InputNode], .. isStiff ? new[] { this[converter.OutputNode] } : []];
        Held = new BigMatrix(nodes, inputs);
        Held[this[converter.InputNode], 0] = BigReal.One;
        Loads = new BigMatrix(nodes, inputs);
        (isStiff ? Held : Loads)[this[converter.OutputNode], 1] = BigReal.One;
        for (int k = 2; k < inputs; k++)
        {
            Loads[this[converter.FurtherOutputs[k - 2].Node], k] += BigReal.One;
            Loads[this[converter.FurtherOutputs[k - 2].ReturnNode], k] -= BigReal.One;
        }

        Inductors = new BigMatrix(nodes, converter.Inductors.Count);
        for (int l = 0; l < Inductors.Columns; l++)
        {
            Inductors[this[converter.Inductors[l].FirstNode], l] += BigReal.One;
            Inductors[this[converter.Inductors[l].SecondNode], l] -= BigReal.One;
        }

        _group = [.. Enumerable.Range(0, nodes).Select(n => held.Contains(n) ? Grounded : n)];
        Join(_group, Capacitances(PreciseValues.Of(converter)).Select(c => (c.First, c.Second)));
        States = Columns([.. Enumerable.Range(0, nodes).Where(n => !held.Contains(n) && _group[n] != n)], (n, state) => n == state);
    }

    public int NodeCount { get; }

    /// <summary>The potentials that sources hold, a column per input.</summary>
    public BigMatrix Held { get; }

    /// <summary>What load currents draw from the nodes, a column per input.</summary>
    public BigMatrix Loads { get; }

    /// <summary>What the current of each inductor, from its first node to its second, draws from the nodes.</summary>
    public BigMatrix Inductors { get; }

    /// <summary>The potentials of nodes against the first node of their group, a column per state.</summary>
    public BigMatrix States { get; }

    public int[] JoinedInAnyPhase => Joined(s => _mode.ClosedPhases[s].Count > 0);

    public int this[string node] => _node[node];

    public bool IsClosed(int @switch, int phase) => _mode.ClosedPhases[@switch].Contains(phase + 1);

    /// <summary>Per node the least node of all that capacitors and conducting resistors join it to; -1 where one is held.</summary>
    public int[] JoinedIn(int phase) => Joined(s => IsClosed(s, phase));

    /// <summary>The nodes of every part without a held node, a column per part.</summary>
    public BigMatrix Floating(int[] joined) => Columns([.. Enumerable.Range(0, NodeCount).Where(n => joined[n] == n)], (n, part) => joined[n] == part);

    /// <summary>The nodes of every group that is not the first of its part, nor held, a column per group.</summary>
    public BigMatrix Following(int[] joined) =>
        Columns([.. Enumerable.Range(0, NodeCount).Where(n => _group[n] == n && joined[n] != n)], (n, group) => _group[n] == group);

    /// <summary>The voltages of all capacitors from rows of potentials.</summary>
    public BigMatrix Across(BigMatrix potentials)
    {
        BigMatrix across = new(_inner.Length, potentials.Columns);
        for (int c = 0; c < across.Rows; c++)
        {
            for (int k = 0; k < across.Columns; k++)
            {
                across[c, k] = potentials[_inner[c], k] - potentials[this[_converter.Capacitors[c].BottomNode], k];
            }
        }

        return across;
    }

    public IEnumerable<(int First, int Second, BigReal Farads)> Capacitances(PreciseValues values) =>
    [
        .. _converter.Capacitors.Select((c, i) => (_inner[i], this[c.BottomNode], values.Farads[i])),
        .. _converter.Capacitors.Index().Where(c => c.Item.Plates.BottomFarads > 0)
            .Select(c => (this[c.Item.BottomNode], this[c.Item.Plates.BodyNode], values.BottomFarads[c.Index])),
        .. _converter.Capacitors.Index().Where(c => c.Item.Plates.TopFarads > 0)
            .Select(c => (this[c.Item.PositiveNode], this[c.Item.Plates.BodyNode], values.TopFarads[c.Index])),
        .. _converter.Parasitics.Select((p, k) => (this[p.FirstNode], this[p.SecondNode], values.ParasiticFarads[k])),
    ];

    public IEnumerable<(int First, int Second, BigReal Ohms)> Resistors(int phase, PreciseValues values) =>
    [
        .. _converter.Switches.Index().Where(s => IsClosed(s.Index, phase)).Select(s => (this[s.Item.FirstNode], this[s.Item.SecondNode], values.OnOhms[s.Index])),
        .. _converter.Capacitors.Index().Where(c => c.Item.EsrOhms > 0).Select(c => (this[c.Item.PositiveNode], _inner[c.Index], values.EsrOhms[c.Index])),
    ];

    private int[] Joined(Func<int, bool> isClosed)
    {
        int[] joined = [.. _group];
        Join(joined, _converter.Switches.Index().Where(s => isClosed(s.Index)).Select(s => (this[s.Item.FirstNode], this[s.Item.SecondNode])));
        Join(joined, _converter.Capacitors.Select((c, i) => (this[c.PositiveNode], _inner[i])));
        return joined;
    }

    private static void Join(int[] label, IEnumerable<(int First, int Second)> pairs)
    {
        foreach ((int first, int second) in pairs)
        {
            (int least, int other) = (Math.Min(label[first], label[second]), Math.Max(label[first], label[second]));
            for (int n = 0; n < label.Length; n++)
            {
                label[n] = label[n] == other ? least : label[n];
            }
        }
    }

    private BigMatrix Columns(int[] columns, Func<int, int, bool> isIn)
    {
        BigMatrix matrix = new(NodeCount, columns.Length);
        for (int n = 0; n < NodeCount; n++)
        {
            for (int k = 0; k < columns.Length; k++)
            {
                matrix[n, k] = isIn(n, columns[k]) ? BigReal.One : default;
            }
        }

        return matrix;
    }
}
