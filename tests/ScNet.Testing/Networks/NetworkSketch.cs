using Fractions;

namespace ScNet.Testing.Networks;

internal sealed record SketchCapacitor(int Positive, int Bottom, double Farads, double EsrOhms);

/// <summary>A switch with one flag per phase in which it is closed, phase 1 in the lowest bit.</summary>
internal sealed record SketchSwitch(int First, int Second, int Phases, double Ohms);

/// <summary>
/// A converter as plain numbers, for drawing and changing it: node 0 is the reference, node 1 the input,
/// node 2 the output. Elements are named by position: "c0", "c1", …, "s0", "s1", ….
/// </summary>
internal sealed record NetworkSketch(
    int NodeCount,
    IReadOnlyList<Fraction> Duties,
    IReadOnlyList<SketchCapacitor> Capacitors,
    IReadOnlyList<SketchSwitch> Switches,
    LoadKind Load = LoadKind.Stiff)
{
    public const int Reference = 0;
    public const int Input = 1;
    public const int Output = 2;

    public int PhaseCount => Duties.Count;

    /// <summary>The sketch of a converter's first mode.</summary>
    public static NetworkSketch Of(Converter converter)
    {
        Dictionary<string, int> index = converter.Nodes.Select((node, i) => (node, i)).ToDictionary(n => n.node, n => n.i);
        return new NetworkSketch(
            converter.Nodes.Count,
            [.. converter.Phases.Select(p => p.Duty)],
            [.. converter.Capacitors.Select(c => new SketchCapacitor(index[c.PositiveNode], index[c.BottomNode], c.Farads, c.EsrOhms))],
            [.. converter.Switches.Select((s, i) => new SketchSwitch(
                index[s.FirstNode], index[s.SecondNode], converter.Modes[0].ClosedPhases[i].Sum(p => 1 << (p - 1)), s.Ohms))],
            converter.Load);
    }

    /// <summary>
    /// The converter. A port that nothing touches gets a switch from itself to itself, so that every
    /// sketch whose capacitors have two nodes can be built.
    /// </summary>
    public Converter Build()
    {
        ConverterBuilder builder = Converter.Create("sketch").Input(Name(Input)).Output(Name(Output), Load).Duties([.. Duties]);
        for (int c = 0; c < Capacitors.Count; c++)
        {
            SketchCapacitor capacitor = Capacitors[c];
            builder.Capacitor($"c{c}", Name(capacitor.Positive), Name(capacitor.Bottom), capacitor.Farads, capacitor.EsrOhms);
        }

        for (int s = 0; s < Switches.Count; s++)
        {
            builder.Switch($"s{s}", Name(Switches[s].First), Name(Switches[s].Second), PhasesOf(Switches[s]), Switches[s].Ohms);
        }

        foreach (int port in new[] { Input, Output }.Where(port => !Touched(port)))
        {
            builder.Switch($"loop{port}", Name(port), Name(port), on: 1);
        }

        return builder.Build();
    }

    public override string ToString() => string.Join(
        Environment.NewLine,
        [
            $"{NodeCount} nodes, duties {string.Join(" ", Duties)}, {Load}",
            .. Capacitors.Select((c, i) => $"c{i}: {Name(c.Positive)} {Name(c.Bottom)} {c.Farads:R} F {c.EsrOhms:R} ohm"),
            .. Switches.Select((s, i) => $"s{i}: {Name(s.First)} {Name(s.Second)} {PhasesOf(s)} {s.Ohms:R} ohm"),
        ]);

    private static string Name(int node) => node switch
    {
        Reference => Converter.ReferenceNode,
        Input => "vin",
        Output => "vout",
        _ => $"x{node}",
    };

    private PhaseSet PhasesOf(SketchSwitch @switch) =>
        PhaseSet.Of([.. Enumerable.Range(1, PhaseCount).Where(p => ((@switch.Phases >> (p - 1)) & 1) == 1)]);

    private bool Touched(int node) =>
        Capacitors.Any(c => c.Positive == node || c.Bottom == node) || Switches.Any(s => s.First == node || s.Second == node);
}
