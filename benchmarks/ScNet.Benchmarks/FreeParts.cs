using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// One analysis of converters in which component values share charge among parts that lie side by side;
/// the last column shows how its time grows with the number of parts.
/// </summary>
[GrowthColumn]
public class FreeParts
{
    private Converter? _cells;
    private Converter? _interleaved;
    private Converter? _phases;
    private Converter? _ladder;
    private Converter? _capacitors;

    /// <summary>The number of cells, phases, levels or capacitors.</summary>
    [Params(20, 100, 500)]
    public int Size { get; set; }

    /// <summary>Builds the converters.</summary>
    [GlobalSetup]
    public void Build()
    {
        _cells = Halves(Size, 2, _ => 0);
        _interleaved = Halves(Size, 4, k => k % 4);
        _phases = Halves(1, Size, _ => 0);
        _ladder = Doubled(Ladder.StepDown(Size));
        _capacitors = SideBySide(Size);
    }

    /// <summary>Cells that halve the voltage, between the same input and output.</summary>
    [Benchmark]
    public ModeAnalysis Cells() => Analyse(_cells!);

    /// <summary>Such cells in four phases, each a phase behind the one before.</summary>
    [Benchmark]
    public ModeAnalysis InterleavedCells() => Analyse(_interleaved!);

    /// <summary>One such cell that takes the two positions in turn through many phases.</summary>
    [Benchmark]
    public ModeAnalysis Phases() => Analyse(_phases!);

    /// <summary>A ladder with two switches in the place of each.</summary>
    [Benchmark]
    public ModeAnalysis DoubledLadder() => Analyse(_ladder!);

    /// <summary>Capacitors side by side, each with a switch of its own that stays closed.</summary>
    [Benchmark]
    public ModeAnalysis Capacitors() => Analyse(_capacitors!);

    private static ModeAnalysis Analyse(Converter converter) => ModeAnalysis.Of(converter, converter.Modes[0]);

    private static Converter Halves(int cells, int phases, Func<int, int> delay)
    {
        ConverterBuilder builder = Converter.Create("Halves").Input("vin").Output("vout").Phases(phases);
        for (int k = 0; k < cells; k++)
        {
            builder.Capacitor($"fly{k}", $"p{k}", $"n{k}", farads: 1e-6 * (1 + (k % 7)));
            Switches(builder, k, phases, delay(k));
        }

        return builder.Build();
    }

    private static Converter SideBySide(int count)
    {
        ConverterBuilder builder = Converter.Create("Side by side").Input("vin").Output("vout").Phases(2);
        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"side{k}", $"q{k}", "n0", farads: 1e-6 * (1 + (k % 7))).Switch($"t{k}", "p0", $"q{k}", on: [1, 2], ohms: 0.1);
        }

        Switches(builder, 0, 2, 0);
        return builder.Build();
    }

    private static void Switches(ConverterBuilder builder, int k, int phases, int delay)
    {
        PhaseSet On(int position) => [.. Enumerable.Range(1, phases).Where(j => (j + delay) % 2 == position)];
        builder
            .Switch($"a{k}", "vin", $"p{k}", On(1), 0.1).Switch($"b{k}", $"n{k}", "vout", On(1), 0.1)
            .Switch($"c{k}", $"p{k}", "vout", On(0), 0.1).Switch($"d{k}", $"n{k}", "gnd", On(0), 0.1);
    }

    private static Converter Doubled(Converter ladder)
    {
        ConverterBuilder builder = Converter.Create("Doubled").Input(ladder.InputNode).Output(ladder.OutputNode).Phases(ladder.Phases.Count);
        foreach (Capacitor c in ladder.Capacitors)
        {
            builder.Capacitor(c.Name, c.PositiveNode, c.BottomNode, c.Farads);
        }

        for (int s = 0; s < ladder.Switches.Count; s++)
        {
            Switch own = ladder.Switches[s];
            PhaseSet on = ladder.Modes[0].ClosedPhases[s];
            builder.Switch(own.Name, own.FirstNode, own.SecondNode, on, 0.1).Switch($"{own.Name}x", own.FirstNode, own.SecondNode, on, 0.2);
        }

        return builder.Build();
    }
}
