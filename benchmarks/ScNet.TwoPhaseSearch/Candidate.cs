using Fractions;
using ScNet.Analysis;

namespace ScNet.TwoPhaseSearch;

/// <summary>
/// A pair of wirings made of wires and switches: what is joined in both phases is one node; in each phase
/// the nodes of a block are switched to the port among them, or to the first one where there is none.
/// </summary>
internal sealed class Candidate
{
    private static readonly string[] s_ports = [Converter.ReferenceNode, "vin", "vout"];

    private readonly (string First, string Second)[] _capacitors;
    private readonly (string First, string Second, int Phase)[] _switches;
    private readonly ModeOutcome _outcome;

    private Candidate(WiringPair pair)
    {
        string[] nodes = Nodes(pair);
        int count = pair.First.CapacitorCount;
        _capacitors = [.. Enumerable.Range(0, count).Select(c => (nodes[Wiring.PortCount + (2 * c)], nodes[Wiring.PortCount + (2 * c) + 1]))];
        _switches = [.. Switches(pair.First, nodes, 1), .. Switches(pair.Second, nodes, 2)];
        ConverterBuilder builder = Converter.Create("candidate").Input(s_ports[1]).Output(s_ports[2]);
        for (int c = 0; c < count; c++)
        {
            builder.Capacitor($"fly{c + 1}", _capacitors[c].First, _capacitors[c].Second);
        }

        for (int s = 0; s < _switches.Length; s++)
        {
            builder.Switch($"s{s + 1}", _switches[s].First, _switches[s].Second, _switches[s].Phase);
        }

        Converter converter = builder.Build();
        _outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
    }

    private ModeAnalysis Analysis => _outcome.Require();

    /// <summary>Σ |charge · blocked voltage| over the switches, per unit of output charge and volt of input.</summary>
    public Fraction SwitchProduct => Sum(_switches.Length, s =>
        Analysis.ChargeFlow.Switches[s][_switches[s].Phase].ToFraction() * Analysis.BlockingVoltages.Peaks[s].ToFraction());

    /// <summary>Σ |charge · voltage| over the capacitors, per unit of output charge and volt of input.</summary>
    public Fraction CapacitorProduct => Sum(_capacitors.Length, c =>
        Analysis.ChargeFlow.Capacitors[c][1].ToFraction() * Analysis.IdealPoint.CapacitorVoltages[c].ToFraction());

    /// <summary>
    /// The capacitors, the switches of phase 1 and those of phase 2, each as two nodes: the positive plate
    /// first, and of a switch the node of the higher potential while it is open. Phase 1 is the one that
    /// draws more from the input; plates are "p1", "n1", "p2", … where they are not on a port.
    /// </summary>
    public override string ToString()
    {
        (string, string)[] capacitors = [.. _capacitors.Select((c, i) =>
            Ordered(c.First, c.Second, Analysis.IdealPoint.CapacitorVoltages[i]))];
        Dictionary<string, string> names = s_ports.ToDictionary(port => port);
        for (int c = 0; c < capacitors.Length; c++)
        {
            names.TryAdd(capacitors[c].Item1, $"p{c + 1}");
            names.TryAdd(capacitors[c].Item2, $"n{c + 1}");
        }

        PhaseValues input = Analysis.ChargeFlow.Input;
        int first = input[1].ToFraction().Abs() < input[2].ToFraction().Abs() ? 2 : 1;
        return string.Join(" | ", Text(capacitors), Text(SwitchesOf(first)), Text(SwitchesOf(3 - first)));

        string Text(IEnumerable<(string First, string Second)> elements) =>
            string.Join(", ", elements.Select(e => $"{names[e.First]} {names[e.Second]}"));
    }

    /// <summary>
    /// The best network of the fewest capacitors and, among those, the fewest switches: the lowest
    /// <see cref="SwitchProduct"/>, then the lowest <see cref="CapacitorProduct"/>, then the first.
    /// </summary>
    public static Candidate Best(IEnumerable<WiringPair> pairs) =>
        pairs.Select(p => new Candidate(p)).Where(c => c.IsSound)
            .OrderBy(c => c.SwitchProduct).ThenBy(c => c.CapacitorProduct).First();

    // Every element has its values, and each capacitor moves charge: else a smaller network does the same.
    private bool IsSound => _outcome.HasResult && _outcome.Diagnostics.Count == 0
        && Analysis.BlockingVoltages.Peaks.All(p => p.IsExact)
        && Analysis.ChargeFlow.Capacitors.All(c => c[1] != Quantity.Zero);

    private IEnumerable<(string First, string Second)> SwitchesOf(int phase) => _switches
        .Select((s, i) => (s.Phase, Nodes: Ordered(s.First, s.Second, Analysis.BlockingVoltages.Peaks[i])))
        .Where(s => s.Phase == phase).Select(s => s.Nodes);

    private static (string First, string Second) Ordered(string first, string second, Quantity voltage) =>
        voltage.ToFraction().IsNegative ? (second, first) : (first, second);

    private static Fraction Sum(int count, Func<int, Fraction> product) =>
        Enumerable.Range(0, count).Select(product).Aggregate(Fraction.Zero, (sum, p) => sum + p.Abs()).Reduce();

    private static string[] Nodes(WiringPair pair)
    {
        Dictionary<(int, int), string> names = [];
        return [.. pair.First.Blocks.Zip(pair.Second.Blocks).Select((blocks, place) =>
        {
            int plate = place - Wiring.PortCount;
            names.TryAdd(blocks, plate < 0 ? s_ports[place] : $"{(plate % 2 == 0 ? "p" : "n")}{(plate / 2) + 1}");
            return names[blocks];
        })];
    }

    private static IEnumerable<(string First, string Second, int Phase)> Switches(Wiring wiring, string[] nodes, int phase) =>
        from block in wiring.Blocks.Zip(nodes, (number, node) => (number, node)).Distinct().GroupBy(p => p.number, p => p.node)
        from node in block.Skip(1)
        select (block.First(), node, phase);
}
