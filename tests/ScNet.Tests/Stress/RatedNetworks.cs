using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Stress;

namespace ScNet.Tests.Stress;

/// <summary>What the tests of ratings share.</summary>
internal static class RatedNetworks
{
    public static Interval<double> OneVolt { get; } = new(1, 1);

    /// <summary>A converter of the examples in docs/examples.</summary>
    public static Converter Example(string name)
    {
        string path = RepositoryFiles.PathOf("docs", "examples", name + ".toml");
        NetlistReading reading = NetlistReader.Read(File.ReadAllText(path), path);
        Assert.True(reading.HasResult);
        return reading.Converter!;
    }

    public static ConverterStress Stress(Converter converter, Interval<double>? input = null, bool openSwitchesLeak = true) =>
        ConverterStress.Of(ConverterAnalysis.Of(converter), input ?? OneVolt, openSwitchesLeak);

    public static ModeStress First(Converter converter, bool openSwitchesLeak = true) =>
        ModeStress.Of(ModeAnalysis.Of(converter, converter.Modes[0]), OneVolt, openSwitchesLeak);

    public static ModeStress First(NetworkSketch sketch, bool openSwitchesLeak = true) =>
        First(sketch.Build(), openSwitchesLeak);

    /// <summary>The spans as text, one per phase: "0; 1/3".</summary>
    public static string Text(SwitchStress stress) => string.Join("; ", stress.Phases);

    /// <summary>A halver of one capacitor.</summary>
    public static ConverterBuilder Half() => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p", 1, 2).Switch("s2", "n", "vout", 1, 2)
        .Switch("s3", "p", "vout", 2, 2).Switch("s4", "n", "gnd", 2, 2);

    /// <summary>The same halver without phases, for modes that hold <see cref="HalfSwitching"/>.</summary>
    public static ConverterBuilder HalfOfModes() => Converter.Create("Half").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9)
        .Switch("s1", "vin", "p").Switch("s2", "n", "vout").Switch("s3", "p", "vout").Switch("s4", "n", "gnd");

    /// <summary>How the halver switches.</summary>
    public static (string Switch, PhaseSet On)[] HalfSwitching => [("s1", 1), ("s2", 1), ("s3", 2), ("s4", 2)];

    /// <summary>
    /// The halver with spare capacitors c0, c1, … from x0, x1, … to the reference: in mode "half" the switches half0, … put them on
    /// the output, in mode "full" full0, … on the input, and mode "rest" leaves them alone, with 1/2 or 1.
    /// </summary>
    public static ConverterBuilder Spares(int count)
    {
        ConverterBuilder builder = HalfOfModes();
        int[] spares = [.. Enumerable.Range(0, count)];
        foreach (int k in spares)
        {
            builder.Capacitor($"c{k}", $"x{k}", "gnd").Switch($"half{k}", $"x{k}", "vout").Switch($"full{k}", "vin", $"x{k}");
        }

        return builder.Mode("half", [.. HalfSwitching, .. spares.Select(k => ($"half{k}", PhaseSet.Of(1, 2)))])
            .Mode("full", [.. HalfSwitching, .. spares.Select(k => ($"full{k}", PhaseSet.Of(1, 2)))]).Mode("rest", HalfSwitching);
    }

    /// <summary>The halver with c from x to the reference, on the output in mode "half" and on the input in mode "full".</summary>
    public static ConverterBuilder HalfAndFull() => HalfOfModes().Capacitor("c", "x", "gnd").Switch("half", "x", "vout").Switch("full", "vin", "x")
        .Mode("half", [.. HalfSwitching, ("half", [1, 2])]).Mode("full", [.. HalfSwitching, ("full", [1, 2])]);

    /// <summary>The memory gears with a fourth mode "without", a halver that leaves fly2 idle, and with more elements as lines of the document.</summary>
    public static Converter GearsWithIdle(string capacitor = "", string @switch = "")
    {
        string text = File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml"))
            .Replace("[switches]", $"{capacitor}\n[switches]\n{@switch}", StringComparison.Ordinal);
        NetlistReading reading = NetlistReader.Read($"{text}\n[modes.without]\ns1 = [1]\ns8 = [1]\ns4 = [2]\ns5 = [2]\n");
        Assert.True(reading.HasResult);
        return reading.Converter!;
    }

    /// <summary>The sketch with its own switching as mode "a" and another as mode "b".</summary>
    public static Converter TwoModes(NetworkSketch sketch, int[] phasesOfB)
    {
        ConverterBuilder builder = Converter.Create("two").Input("vin").Output("vout", sketch.Load).Duties([.. sketch.Duties]);
        for (int c = 0; c < sketch.Capacitors.Count; c++)
        {
            SketchCapacitor capacitor = sketch.Capacitors[c];
            builder.Capacitor($"c{c}", Name(capacitor.Positive), Name(capacitor.Bottom), capacitor.Farads, capacitor.EsrOhms);
        }

        List<(string, PhaseSet)> a = [], b = [];
        for (int s = 0; s < sketch.Switches.Count; s++)
        {
            builder.Switch($"s{s}", Name(sketch.Switches[s].First), Name(sketch.Switches[s].Second), ohms: sketch.Switches[s].Ohms);
            a.Add(($"s{s}", Phases(sketch.Switches[s].Phases, sketch.PhaseCount)));
            b.Add(($"s{s}", Phases(phasesOfB[s], sketch.PhaseCount)));
        }

        builder.Switch("port1", "vin", "vin").Switch("port2", "vout", "vout");
        return builder.Mode("a", [.. a]).Mode("b", [.. b]).Build();
    }

    private static PhaseSet Phases(int bits, int count) => PhaseSet.Of([.. Enumerable.Range(1, count).Where(p => ((bits >> (p - 1)) & 1) == 1)]);

    private static string Name(int node) => node switch
    {
        NetworkSketch.Reference => Converter.ReferenceNode,
        NetworkSketch.Input => "vin",
        NetworkSketch.Output => "vout",
        _ => $"x{node}",
    };
}
