using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Sizes that are asked of a divider by two whose every cost is known by hand: an idle capacitor "in" first, then "fly", then four switches.</summary>
/// <remarks>
/// At the input voltage V each open switch blocks V/2, fly holds V/2 and each of its plates swings by V/2 in each half of the period; "in" holds V and swings
/// not at all. Charge: the slow limit is 1/(4 C f), the fast one half of the four resistances and fly's series resistance.
/// </remarks>
internal static class HalfTasks
{
    public const double LeastCapacitorSquareMetres = 1e-9, WiringOhms = 0.5, FixedWatts = 1e-9, CoulombsPerCycle = 3e-13, TopFarads = 1e-12, Floor = 1e4, Ceiling = 1e8;

    /// <summary>Per farad: 100 m², 25 mF at the bottom, a leak of 0.5 S; 0.1 ns of series resistance times capacitance.</summary>
    public static CapacitorDevice Metal { get; } = new()
    {
        Name = "metal",
        Source = "invented",
        RatedVolts = 10,
        FaradsPerSquareMetre = 1e-2,
        BottomPlateFraction = 0.025,
        LeakageAmperesPerSquareMetre = 0.05,
        EsrOhmSquareMetres = 1e-8,
    };

    /// <summary>Per farad: 50 m², 100 mF at the bottom, 20 mF at the top, a leak of 1 S; 0.8 ns.</summary>
    public static CapacitorDevice Dense { get; } = new()
    {
        Name = "dense",
        Source = "invented",
        RatedVolts = 10,
        FaradsPerSquareMetre = 2e-2,
        BottomPlateFraction = 0.1,
        TopPlateFraction = 0.02,
        LeakageAmperesPerSquareMetre = 0.2,
        EsrOhmSquareMetres = 4e-8,
    };

    /// <summary>Per siemens: 1 mm wide, 1e-9 m², 3 pJ of the gate, 0.5 pF of the junction, 1 µA of leakage.</summary>
    public static SwitchDevice Long { get; } = new()
    {
        Name = "long",
        Source = "invented",
        RatedVolts = 10,
        GateDriveVolts = 1.5,
        GateRatedVolts = 2,
        OnResistanceOhmMicrometres = 1000,
        GateChargeCoulombsPerMicrometre = 2e-15,
        JunctionChargeCoulombsPerMicrometre = 5e-15,
        AreaSquareMetresPerMicrometre = 1e-12,
        LeakageAmperesPerMicrometre = 1e-9,
    };

    /// <summary>Per siemens: 0.5 mm wide, 1.5e-9 m², 4.5 pJ of the gate, 0.5 pF of the junction, 2 µA of leakage.</summary>
    public static SwitchDevice Short { get; } = new()
    {
        Name = "short",
        Source = "invented",
        RatedVolts = 10,
        GateDriveVolts = 1.5,
        GateRatedVolts = 2,
        OnResistanceOhmMicrometres = 500,
        GateChargeCoulombsPerMicrometre = 6e-15,
        JunctionChargeCoulombsPerMicrometre = 10e-15,
        AreaSquareMetresPerMicrometre = 3e-12,
        LeakageAmperesPerMicrometre = 4e-9,
    };

    public static Converter Half { get; } = Converter.Create("half").Input("vin").Output("vout")
        .Capacitor("in", "vin", "gnd").Capacitor("fly", "p", "n", plates: new CapacitorPlates(TopFarads: TopFarads))
        .Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 1).Switch("s3", "p", "vout", 2).Switch("s4", "n", "gnd", 2).Build();

    /// <summary>Input and output tied in both phases, with a capacitor that no charge has to pass.</summary>
    public static Converter Through { get; } = Converter.Create("through").Input("vin").Output("vout")
        .Capacitor("in", "vin", "gnd").Switch("s1", "vin", "q", [1, 2]).Switch("s2", "q", "vout", [1, 2]).Build();

    /// <summary>A single switch.</summary>
    public static Converter Alone { get; } = Converter.Create("alone").Input("vin").Output("vout").Switch("s1", "vin", "vout", [1, 2]).Build();

    public static SizingPoint Held(double volts, double ohms, double amperes, double weight = 1) => new(Mode.DefaultName, volts, (volts / 2) - (ohms * amperes), amperes, weight);

    public static SizingPoint Free(double volts, double amperes, double weight = 1) => new(Mode.DefaultName, volts, null, amperes, weight);

    public static SizingTask Of(SizingPoint[] points, AreaBudget area, Converter? converter = null, double floor = Floor, double ceiling = Ceiling, Process? process = null)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(converter ?? Half);
        process ??= Process([Long], [Metal]);
        ElementOptions options = ElementOptions.Of(ConverterStress.Of(analysis, new Interval<double>(1, 3)), process);
        return new SizingTask(analysis, process, points, area, new(floor, ceiling), new() { Grid = new SizeGrid(0.1, LeastCapacitorSquareMetres) }, options);
    }

    public static Process Process(SwitchDevice[] switches, CapacitorDevice[] capacitors) => new()
    {
        Name = "by hand",
        Switches = switches,
        Capacitors = capacitors,
        WiringOhms = WiringOhms,
        Control = new() { FixedWatts = FixedWatts, CoulombsPerCycle = CoulombsPerCycle },
    };

    /// <summary>The modes of a task at some sizes.</summary>
    public static SizedMode[] ModesOf(SizingTask task, double[] values) =>
        [.. task.Modes.Select(m => SizedMode.Of(m, At(task, values), task.FrequencyHz, WiringOhms))];

    public static SizingProgram Program(SizingTask task) => new(task, task.Points, ModesOf(task, [.. Enumerable.Repeat(1.0, task.ElementCount)]), new int[task.ElementCount]);

    private static Converter At(SizingTask task, double[] values) => task.Converter.WithValues(
        values[..task.CapacitorCount],
        [.. values[task.CapacitorCount..].Select(g => (1 / g) + WiringOhms)],
        [.. values[..task.CapacitorCount].Select((c, e) => task.EsrSeconds(e, 0) / c)]);
}
