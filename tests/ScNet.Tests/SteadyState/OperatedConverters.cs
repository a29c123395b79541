using ScNet.Netlists;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>Converters whose waveforms are compared, by what is special about each.</summary>
internal static class OperatedConverters
{
    public static IReadOnlyDictionary<string, Func<Converter>> All { get; } = new Dictionary<string, Func<Converter>>
    {
        ["series-parallel 3:1"] = () => Spread(SeriesParallel.StepDown(3)),
        ["ladder 1:3 with parallel capacitor paths"] = () => Spread(Ladder.StepUp(3)),
        ["Dickson 4:1"] = () => Spread(Dickson.StepDown(4)),
        ["Fibonacci step-up of two stages"] = () => Spread(Fibonacci.StepUp(2)),
        ["doubler step-down of two stages"] = () => Spread(Doubler.StepDown(2)),
        ["three phases"] = ThreePhases,
        ["series resistances"] = () => WithEsr(Ladder.StepDown(3)),
        ["current load on an output capacitor"] = () => Loaded(esrOhms: 0),
        ["current load, output capacitor with series resistance"] = () => Loaded(esrOhms: 0.3),
        ["parallel flying capacitors, unequal duties"] = Parallel,
        ["dead time"] = () => Loaded(esrOhms: 0.3).WithDeadTime(new Fractions.Fraction(1, 20)),
        ["a node that is connected to resistors only"] = () => Divider(),
    };

    public static Converter ThreePhases() =>
        NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "three-phase-4.toml")).GetConverter()
            .WithValues([1, 0.6], [1, 0.5, 0.7, 1.1, 0.4, 0.9, 0.6]);

    /// <summary>The 2:1 divider of two equal phases, one flying capacitor and four switches.</summary>
    public static ConverterBuilder Half(LoadKind load = LoadKind.Stiff, double farads = 1, double ohms = 1) => Converter.Create("half")
        .Input("vin").Output("vout", load)
        .Capacitor("fly", "p", "n", farads)
        .Switch("s1", "vin", "p", on: 1, ohms).Switch("s2", "n", "vout", on: 1, ohms)
        .Switch("s3", "p", "vout", on: 2, ohms).Switch("s4", "n", Converter.ReferenceNode, on: 2, ohms);

    public static Converter Loaded(double esrOhms) => Half(LoadKind.Current, farads: 2)
        .Capacitor("out", "vout", Converter.ReferenceNode, 0.5, esrOhms).Build();

    /// <summary>What the capacitors gain together lifts the output in one phase and lowers it in the other: it has an average, but no potential.</summary>
    public static Converter SeeSaw() => Converter.Create("see-saw").Input("vin").Output("vout", LoadKind.Current).Duties(new Fractions.Fraction(1, 3), new Fractions.Fraction(2, 3))
        .Capacitor("c0", "x3", "x6").Capacitor("c1", "x4", "x3").Capacitor("c2", "x5", "vout")
        .Switch("s0", "x6", "gnd", on: 2).Switch("s1", "vout", "x6", on: 1).Switch("s2", "x3", "vout", on: 2)
        .Switch("s3", "x5", "x3", on: 1).Switch("s4", "x4", "x5", on: 2).Switch("s5", "vin", "x4", on: 1)
        .Build();

    /// <summary>What the elements lose, one by one.</summary>
    public static double ElementDissipationWatts(PeriodicSteadyState steady) =>
        steady.Switches.Sum(s => s.DissipationWatts) + steady.Capacitors.Sum(c => c.DissipationWatts) + steady.Inductors.Sum(l => l.DissipationWatts);

    private static Converter Spread(Converter converter) => converter.WithValues(
        [.. converter.Capacitors.Select((_, i) => 1 + (0.7 * i))],
        [.. converter.Switches.Select((_, i) => 1 + (0.3 * (i % 4)))]);

    private static Converter WithEsr(Converter converter) =>
        Spread(converter).WithValues(esrOhms: [.. converter.Capacitors.Select((_, i) => 0.2 + (0.1 * i))]);

    private static Converter Parallel() => Converter.Create("two halves").Input("vin").Output("vout").Duties(0.3, 0.7)
        .Capacitor("fly1", "p", "n", 2).Capacitor("fly2", "p", "n", 0.7, 0.2).Capacitor("fly3", "q", "m", 1)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1, ohms: 2)
        .Switch("s3", "p", "vout", on: 2).Switch("s4", "n", Converter.ReferenceNode, on: 2)
        .Switch("s5", "vin", "q", on: 2, ohms: 3).Switch("s6", "m", "n", on: 1)
        .Switch("s7", "q", "p", on: 1).Switch("s8", "m", "vout", on: 2).Build();

    // "x" touches resistors only, in phase 2 two capacitors are connected to one that reaches the reference over resistors
    private static Converter Divider() => Converter.Create("three switches in a row").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("fly", "p", "n", 1.5, 0.1).Capacitor("out", "vout", Converter.ReferenceNode, 0.8)
        .Switch("s1", "vin", "x", on: 1).Switch("s1b", "x", "p", on: 1, ohms: 0.6).Switch("s2", "n", "vout", on: 1)
        .Switch("s3", "p", "y", on: 2, ohms: 0.7).Switch("s3b", "y", "vout", on: [1, 2], ohms: 1.2)
        .Switch("s4", "n", Converter.ReferenceNode, on: 2).Build();
}
