using CsCheck;
using Fractions;
using ScNet.Topologies;

namespace ScNet.Testing.Networks;

/// <summary>
/// Random networks: multigraphs of two to four phases with parallel branches, switches from a node to
/// itself, duplicate elements, empty phases, floating nodes, and both kinds of load.
/// </summary>
internal static class RandomNetworks
{
    private const int MaximumPhases = 4;

    private static readonly Gen<double> s_farads = Gen.Double[0.5, 4];
    private static readonly Gen<double> s_ohms = Gen.Double[0.5, 4];
    private static readonly Gen<double> s_esrOhms = Gen.Frequency((3, Gen.Const(0.0)), (1, Gen.Double[0.1, 1]));
    private static readonly Gen<int> s_phases = Gen.Int[0, (1 << MaximumPhases) - 1];

    private static readonly NetworkSketch[] s_families =
    [
        .. new[]
        {
            SeriesParallel.StepDown(2), SeriesParallel.StepDown(3), SeriesParallel.StepUp(3), SeriesParallel.StepDown(4),
            Ladder.StepDown(3), Ladder.StepUp(3), Ladder.StepDown(4), Dickson.StepDown(3), Dickson.StepUp(4),
            Fibonacci.StepUp(2), Fibonacci.StepDown(3), Doubler.StepUp(2), Doubler.StepDown(2),
            Ladder.StepDown(3, load: LoadKind.Current), Fibonacci.StepUp(2, load: LoadKind.Current),
        }.Select(NetworkSketch.Of),
    ];

    /// <summary>Elements between any nodes: mostly without a meaningful result.</summary>
    public static Gen<NetworkSketch> Scattered { get; } =
        from nodes in Gen.Int[3, 8]
        from duties in Duties(Gen.Int[2, MaximumPhases])
        from capacitors in Capacitor(nodes).Array[0, 4]
        from switches in Switch(nodes).Array[1, 12]
        from current in Gen.Bool
        select new NetworkSketch(nodes, duties, capacitors, switches, current ? LoadKind.Current : LoadKind.Stiff);

    /// <summary>
    /// Flying capacitors that are put between two of five places in each phase: the reference, the input,
    /// the output and two inner nodes.
    /// </summary>
    public static Gen<NetworkSketch> Placed { get; } =
        from duties in Duties(Gen.Frequency((3, Gen.Const(2)), (1, Gen.Const(3))))
        from count in Gen.Int[1, 3]
        from places in Gen.Int[0, 4].Array[2 * count * duties.Length]
        from farads in s_farads.Array[count]
        from ohms in s_ohms.Array[places.Length]
        select Place(places, duties, farads, ohms);

    /// <summary>Members of the families with new values, phases repeated or empty, and up to two changes.</summary>
    public static Gen<NetworkSketch> Mutated { get; } =
        from family in Gen.Int[0, s_families.Length - 1].Select(i => s_families[i])
        from order in Gen.OneOf(Gen.Const(new[] { 1, 2 }), Gen.Shuffle(new[] { 1, 2, 0 }), Gen.Int[0, 2].Array[2, MaximumPhases])
        from duties in Duties(Gen.Const(order.Length))
        from farads in s_farads.Array[family.Capacitors.Count]
        from esr in s_esrOhms.Array[family.Capacitors.Count]
        from ohms in s_ohms.Array[family.Switches.Count]
        from changes in Gen.Select(Gen.Int[0, 9], Gen.Int[0, 99], Gen.Int[0, 99], s_phases, s_ohms).Array[0, 2]
        select changes.Aggregate(Revalue(family, order, duties, farads, esr, ohms), Change);

    /// <summary>A mixture of all; about two in five have a result.</summary>
    public static Gen<NetworkSketch> Any { get; } = Gen.Frequency((1, Scattered), (2, Placed), (6, Mutated));

    /// <summary>
    /// Capacitors with their terminals switched to places, listed as phase by phase, capacitor by
    /// capacitor, positive plate then bottom plate.
    /// </summary>
    public static NetworkSketch Place(int[] places, Fraction[] duties, double[] farads, double[] ohms)
    {
        int count = farads.Length;
        List<SketchSwitch> switches = [];
        for (int t = 0; t < places.Length; t++)
        {
            switches.Add(new SketchSwitch(5 + (t % (2 * count)), places[t], 1 << (t / (2 * count)), ohms[t]));
        }

        return new NetworkSketch(
            5 + (2 * count), duties, [.. farads.Select((f, c) => new SketchCapacitor(5 + (2 * c), 6 + (2 * c), f, 0))], switches);
    }

    private static Gen<Fraction[]> Duties(Gen<int> count) =>
        from n in count
        from parts in Gen.Int[1, 9].Array[n]
        select parts.Select(part => new Fraction(part, parts.Sum())).ToArray();

    private static Gen<SketchCapacitor> Capacitor(int nodes) =>
        from positive in Gen.Int[0, nodes - 1]
        from step in Gen.Int[1, nodes - 1]
        from farads in s_farads
        from esr in s_esrOhms
        select new SketchCapacitor(positive, (positive + step) % nodes, farads, esr);

    private static Gen<SketchSwitch> Switch(int nodes) =>
        Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], s_phases, s_ohms, (a, b, phases, ohms) => new SketchSwitch(a, b, phases, ohms));

    private static NetworkSketch Revalue(
        NetworkSketch sketch, int[] order, Fraction[] duties, double[] farads, double[] esr, double[] ohms) => sketch with
        {
            Duties = duties,
            Capacitors = [.. sketch.Capacitors.Select((c, i) => c with { Farads = farads[i], EsrOhms = esr[i] })],
            Switches = [.. sketch.Switches.Select((s, i) => s with { Phases = Reorder(s.Phases, order), Ohms = ohms[i] })],
        };

    // order[j] is the old phase that takes place in the new phase j + 1, or 0 for an empty one
    private static int Reorder(int phases, int[] order) =>
        order.Select((old, j) => old > 0 && ((phases >> (old - 1)) & 1) == 1 ? 1 << j : 0).Sum();

    private static NetworkSketch Change(NetworkSketch sketch, (int Kind, int A, int B, int Phases, double Value) change)
    {
        (int kind, int a, int b, int phases, double value) = change;
        int nodeA = a % sketch.NodeCount;
        int nodeB = b % sketch.NodeCount;
        List<SketchCapacitor> capacitors = [.. sketch.Capacitors];
        List<SketchSwitch> switches = [.. sketch.Switches];
        int nodeCount = sketch.NodeCount;
        LoadKind load = sketch.Load;
        switch (kind)
        {
            case 0 when switches.Count > 0:
                switches.RemoveAt(a % switches.Count);
                break;
            case 1:
                switches.Add(new SketchSwitch(nodeA, nodeB, phases, value));
                break;
            case 2 when capacitors.Count > 0:
                capacitors.Add(capacitors[a % capacitors.Count] with { Farads = value });
                break;
            case 3 when nodeA != nodeB:
                capacitors.Add(new SketchCapacitor(nodeA, nodeB, value, 0));
                break;
            case 4 when switches.Count > 0:
                switches[a % switches.Count] = switches[a % switches.Count] with { Phases = phases };
                break;
            case 5:
                capacitors.Add(new SketchCapacitor(nodeCount++, nodeA, value, 0));
                break;
            case 6 when switches.Count > 0:
                switches.Add(switches[a % switches.Count] with { Ohms = value });
                break;
            case 7:
                switches.Add(new SketchSwitch(nodeA, nodeA, phases, value));
                break;
            case 8:
                load = LoadKind.Current;
                capacitors.Add(new SketchCapacitor(NetworkSketch.Output, NetworkSketch.Reference, value, 0));
                break;
            case 9 when capacitors.Count > 0:
                capacitors.RemoveAt(a % capacitors.Count);
                break;
        }

        return new NetworkSketch(nodeCount, sketch.Duties, capacitors, switches, load);
    }
}
