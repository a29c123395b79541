using ScNet.Kernel;
using ScNet.Numerics;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>A circuit written down element by element, nodes by name.</summary>
internal sealed class Circuit(LoadKind load, params double[] duties)
{
    private readonly List<string> _nodes = [Converter.ReferenceNode, "vin", "vout"];

    public List<(int First, int Second, double Ohms, int[] Phases)> Resistors { get; } = [];

    public List<(int First, int Second, double Farads)> Capacitors { get; } = [];

    public List<(int First, int Second, double Henries, double Ohms)> Inductors { get; } = [];

    public double[] Duties { get; } = duties;

    public LoadKind Load { get; } = load;

    public int NodeCount => _nodes.Count;

    public Circuit Switch(string first, string second, double ohms, params int[] phases)
    {
        Resistors.Add((Node(first), Node(second), ohms, phases));
        return this;
    }

    /// <summary>A resistor that always conducts.</summary>
    public Circuit Resistor(string first, string second, double ohms) =>
        Switch(first, second, ohms, [.. Enumerable.Range(1, Duties.Length)]);

    public Circuit Capacitor(string first, string second, double farads)
    {
        Capacitors.Add((Node(first), Node(second), farads));
        return this;
    }

    public Circuit Inductor(string first, string second, double henries, double ohms = 0)
    {
        Inductors.Add((Node(first), Node(second), henries, ohms));
        return this;
    }

    /// <summary>The same circuit with its phases in the opposite order.</summary>
    public Circuit Reversed()
    {
        Circuit reversed = new(Load, [.. Duties.Reverse()]);
        reversed._nodes.Clear();
        reversed._nodes.AddRange(_nodes);
        reversed.Resistors.AddRange(Resistors.Select(r => r with { Phases = [.. r.Phases.Select(p => Duties.Length + 1 - p)] }));
        reversed.Capacitors.AddRange(Capacitors);
        reversed.Inductors.AddRange(Inductors);
        return reversed;
    }

    public SwitchedLinearNetwork Network() => new()
    {
        NodeCount = _nodes.Count,
        Resistors = [.. Resistors.Select(r => new NodePair(r.First, r.Second))],
        Capacitors = [.. Capacitors.Select(c => new NodePair(c.First, c.Second))],
        Inductors = [.. Inductors.Select(l => new NodePair(l.First, l.Second))],
        HasWinding = [.. Inductors.Select(l => l.Ohms > 0)],
        InputNode = 1,
        OutputNode = 2,
        IsStiff = Load == LoadKind.Stiff,
        Closed = [.. Enumerable.Range(1, Duties.Length).Select(j => (bool[])[.. Resistors.Select(r => r.Phases.Contains(j))])],
    };

    public NetworkValues<DoubleDouble> Values() => new(
        [.. Resistors.Select(r => DoubleDouble.Of(r.Ohms))],
        [.. Capacitors.Select(c => DoubleDouble.Of(c.Farads))],
        [.. Inductors.Select(l => DoubleDouble.Of(l.Henries))],
        [.. Inductors.Select(l => DoubleDouble.Of(l.Ohms))],
        [.. Duties.Select(DoubleDouble.Of)]);

    public NetworkStructure Structure() => NetworkStructure.Of(
        Network(), [.. Capacitors.Select(c => c.Farads)], [.. Inductors.Select(l => l.Henries)]);

    public override string ToString() => $"{Load} load, duties {string.Join(", ", Duties.Select(d => d.ToString("R", System.Globalization.CultureInfo.InvariantCulture)))}\n"
        + string.Concat(Resistors.Select(r => $"R {_nodes[r.First]} {_nodes[r.Second]} {r.Ohms:R} in {string.Join(",", r.Phases)}\n"))
        + string.Concat(Capacitors.Select(c => $"C {_nodes[c.First]} {_nodes[c.Second]} {c.Farads:R}\n"))
        + string.Concat(Inductors.Select(l => $"L {_nodes[l.First]} {_nodes[l.Second]} {l.Henries:R} {l.Ohms:R}\n"));

    private int Node(string name)
    {
        int node = _nodes.IndexOf(name);
        if (node < 0)
        {
            node = _nodes.Count;
            _nodes.Add(name);
        }

        return node;
    }
}
