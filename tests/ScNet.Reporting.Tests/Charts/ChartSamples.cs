using System.Collections.Concurrent;
using Fractions;
using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reporting.Charts;
using ScNet.SteadyState;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>Results to draw, of the invented examples of the documentation, and every kind of chart of them.</summary>
internal static class ChartSamples
{
    private static readonly Lazy<OperatingMap> s_map = new(() => OperatingMap.Of(
        Modes,
        [.. Enumerable.Range(0, 15).Select(k => 2.8 + (0.1 * k))],
        [.. Enumerable.Range(0, 7).Select(k => 0.8 + (0.2 * k))],
        [.. Enumerable.Range(0, 7).Select(k => 1e-5 * Math.Pow(10, k / 1.5))]));

    private static readonly ConcurrentDictionary<(string Name, Appearance Appearance), Lazy<Picture>> s_pictures = [];

    private static readonly Lazy<TradeOffCurve> s_curve = new(MakeCurve);

    private static readonly Lazy<RankedChoice> s_choice = new(() =>
    {
        Requirement core = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")).GetRequirement();
        Candidate[] some = [.. Candidates.Of(core, directory: RepositoryFiles.PathOf("docs", "examples")).All.Where(c => c.Kind is CandidateKind.Linear or CandidateKind.Inductive)];
        return RankedChoice.Of(core, some);
    });

    public static ModeAnalysis Half => ModeAnalysis.Of(Read("half"));

    /// <summary>Of a converter whose plates move its ratio.</summary>
    public static ModeAnalysis Plated => ModeAnalysis.Of(Converter.Create("Half, on a chip").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9, plates: new CapacitorPlates(BottomFarads: 3e-11))
        .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
        .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2)
        .Build());

    public static PeriodicSteadyState Rippling => PeriodicSteadyState.Of(
        ModeAnalysis.Of(Converter.Create("Half with output capacitor")
            .Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("fly", "p", "n", farads: 4e-9)
            .Capacitor("out", "vout", "gnd", farads: 10e-9, esrOhms: 0.05)
            .Switch("s1", "vin", "p", on: 1, ohms: 2).Switch("s2", "n", "vout", on: 1, ohms: 2)
            .Switch("s3", "p", "vout", on: 2, ohms: 2).Switch("s4", "n", "gnd", on: 2, ohms: 2)
            .Build().WithDeadTime(new Fraction(1, 50))),
        new OperatingPoint(3.6, 0.02, 2e7));

    public static PeriodicSteadyState Stage => PeriodicSteadyState.Of(ModeAnalysis.Of(Read("four-level-stage")), new OperatingPoint(3.6, 0.1, 2e6));

    public static ConverterRatings Ratings => ConverterRatings.Of(
        ConverterStress.Of(ConverterAnalysis.Of(Read("memory-gears")), new Interval<double>(2.8, 4.2)),
        new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Plate3V6, MaximumSwitchesInSeries = 2 });

    public static ConverterRatings LadderRatings => ConverterRatings.Of(
        ConverterStress.Of(ConverterAnalysis.Of(Read("ladder-4")), new Interval<double>(2.8, 4.2)),
        new RatingLimits { Switch = DemoDevices.NType1V2, Capacitor = DemoDevices.Plate3V6 });

    /// <summary>Of more modes than there can be bars: 15 gears of one set of switches.</summary>
    public static ConverterStress ManyStress => ConverterStress.Of(ConverterAnalysis.Of(BinaryConverter.Reconfigurable(4)), new Interval<double>(2.8, 4.2));

    public static ConverterRatings ManyRatings => ConverterRatings.Of(ManyStress, new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Plate3V6, MaximumSwitchesInSeries = 3 });

    public static IReadOnlyList<(string Name, LossBudget Budget)> Budgets
    {
        get
        {
            Process process = new()
            {
                Name = "invented",
                Switches = [DemoDevices.NType1V2, DemoDevices.NType1V8],
                Capacitors = [DemoDevices.Plate3V6],
                GateRailEfficiency = 0.8,
                Control = new ControlOverhead { FixedWatts = 20e-6 },
            };
            Converter half = Read("half");
            LossModel model = LossModel.Of(NetlistSizes.Of(ConverterStress.Of(ConverterAnalysis.Of(half), new Interval<double>(2.8, 3.6)), process), ModeAnalysis.Of(half));
            return [.. new[] { 1e6, 5e6, 25e6 }.Select(f => ($"{f / 1e6} MHz", model.At(new OperatingPoint(3.3, 0.01, f))))];
        }
    }

    public static IReadOnlyList<RegulatedMode> Modes
    {
        get
        {
            Converter gears = Read("memory-gears");
            Process process = new() { Name = "invented", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Plate3V6] };
            SizedConverter sized = new(
                gears,
                [.. gears.Switches.Select(s => new StackedSwitch(DemoDevices.NType1V8, 2, s.Ohms))],
                [.. gears.Capacitors.Select(c => new StackedCapacitor(DemoDevices.Plate3V6, 1, c.Farads))],
                null,
                process);
            return [.. ConverterAnalysis.Of(gears).Results.Select(a => RegulatedModes.OfFrequency(LossModel.Of(sized, a), new(1e5, 5e7)))];
        }
    }

    public static OperatingMap Map => s_map.Value;

    public static TradeOffCurve Curve => s_curve.Value;

    public static RankedChoice Choice => s_choice.Value;

    /// <summary>Every kind of chart, by name.</summary>
    public static IReadOnlyDictionary<string, Func<Appearance, Picture>> All { get; } = new Dictionary<string, Func<Appearance, Picture>>
    {
        ["impedance"] = a => ImpedanceChart.Of(Half, null, a),
        ["impedance-with-plates"] = a => ImpedanceChart.Of(Plated, null, a),
        ["impedance-with-inductor"] = a => ImpedanceChart.Of(ModeAnalysis.Of(Read("four-level-stage")), new Interval<double>(1e5, 1e8), a),
        ["impedance-of-gear"] = a => ImpedanceChart.Of(ModeAnalysis.Of(Read("memory-gears"), "1/3"), new Interval<double>(3e6, 4e7), a),
        ["waveforms"] = a => WaveformChart.Of(Rippling, ["vout", "p", "n"], a),
        ["waveforms-with-inductor"] = a => WaveformChart.Of(Stage, null, a),
        ["stress"] = a => StressChart.Of(Ratings, a),
        ["stress-of-many-modes"] = a => StressChart.Of(ManyStress, a),
        ["ratings-of-many-modes"] = a => StressChart.Of(ManyRatings, a),
        ["stress-without-ratings"] = a => StressChart.Of(Ratings.Stress, a),
        ["stress-of-one-mode"] = a => StressChart.Of(LadderRatings, a),
        ["loss"] = a => LossChart.Of(Budgets[1].Budget, a),
        ["losses"] = a => LossChart.Of(Budgets, "Losses of Half", a),
        ["losses-of-choice"] = a => LossChart.Of(Choice, a),
        ["losses-of-candidate"] = a => LossChart.Of(Choice.Ranked[0], a),
        ["efficiency"] = a => EfficiencyChart.Of(Modes, new Interval<double>(2.8, 4.2), 1.2, 10e-3, a),
        ["efficiency-with-linear"] = a => EfficiencyChart.Of([.. Modes, RegulatedModes.Linear(ControlOverhead.None)], new Interval<double>(2.2, 4.2), 1.5, 10e-3, a),
        ["map-of-loads"] = a => MapChart.OfLoads(Map, 2, a),
        ["map-of-outputs"] = a => MapChart.OfOutputs(Map, 4, a),
        ["trade-off"] = a => TradeOffChart.Of(Curve, a),
        ["trade-offs"] = a => TradeOffChart.Of([("Core gears", Curve), ("Core gears again", Curve)], a),
        ["tolerance"] = a => ToleranceChart.Of(Half, new ComponentTolerances(capacitance: 0.2, onResistance: 0.3), sampleCount: 40, appearance: a),
    };

    /// <summary>A chart, drawn once for all that look at it.</summary>
    public static Picture Picture(string name, Appearance appearance) => s_pictures.GetOrAdd((name, appearance), key => new(() => All[key.Name](key.Appearance))).Value;

    public static TheoryData<string, Appearance> Names
    {
        get
        {
            TheoryData<string, Appearance> names = [];
            foreach (string name in All.Keys)
            {
                names.Add(name, Appearance.Light);
                names.Add(name, Appearance.Dark);
            }

            return names;
        }
    }

    public static Converter Read(string name) => NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", $"{name}.toml")).GetConverter();

    private static TradeOffCurve MakeCurve()
    {
        Process process = new()
        {
            Name = "invented",
            Switches = [DemoDevices.NType1V2, DemoDevices.NType1V8],
            Capacitors = [DemoDevices.Dense1V2, DemoDevices.Plate3V6],
            Control = new() { FixedWatts = 1e-6 },
        };
        SizingPoint[] points = [new("1/3", 2.8, 0.8, 20e-3, 0.1), new("1/4", 3.8, 0.8, 100e-6, 0.9)];
        return TradeOffCurve.Of(ConverterAnalysis.Of(Read("core-gears")), process, points, [new(0.25e-6), new(0.5e-6), new(1e-6)], new(100e3, 200e6));
    }
}
