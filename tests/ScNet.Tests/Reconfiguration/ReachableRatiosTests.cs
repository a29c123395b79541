using Fractions;
using ScNet.Analysis;
using ScNet.Reconfiguration;

namespace ScNet.Tests.Reconfiguration;

/// <summary>The search by classes against the definition: every gate pattern analysed by itself.</summary>
public sealed class ReachableRatiosTests
{
    private static Converter OneCapacitorBridge() => Converter.Create("Bridge").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 2e-9)
        .Switch("s1", "vin", "p", ohms: 1).Switch("s2", "p", "vout", ohms: 2).Switch("s3", "p", "gnd", ohms: 3)
        .Switch("s4", "vin", "n", ohms: 4).Switch("s5", "n", "vout", ohms: 5).Switch("s6", "n", "gnd", ohms: 6)
        .Build();

    private static Converter TwoCapacitors() => Converter.Create("Two").Input("vin").Output("vout").Duties(0.3, 0.7)
        .Capacitor("a", "p", "n", farads: 1e-9).Capacitor("b", "q", "m", farads: 3e-9)
        .Switch("s1", "vin", "p", ohms: 1).Switch("s2", "n", "q", ohms: 2).Switch("s3", "m", "vout", ohms: 3)
        .Switch("s4", "p", "vout", ohms: 4).Switch("s5", "n", "gnd", ohms: 5).Switch("s6", "q", "vout", ohms: 6)
        .Switch("s7", "m", "gnd", ohms: 7)
        .Build();

    private static Converter SeriesResistance() => Converter.Create("Resistive").Input("vin").Output("vout")
        .Capacitor("a", "p", "n", farads: 1e-9, esrOhms: 0.5).Capacitor("b", "p", "m", farads: 2e-9, esrOhms: 0.25)
        .Switch("s1", "vin", "p", ohms: 1).Switch("s2", "p", "vout", ohms: 2).Switch("s3", "n", "m", ohms: 3)
        .Switch("s4", "n", "gnd", ohms: 4).Switch("s5", "m", "gnd", ohms: 5).Switch("s6", "n", "vout", ohms: 6)
        .Build();

    private static Converter OutputCapacitor() => Converter.Create("Buffered").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9).Capacitor("out", "vout", "gnd", farads: 4e-9)
        .Switch("s1", "vin", "p", ohms: 1).Switch("s2", "p", "vout", ohms: 2).Switch("s3", "n", "gnd", ohms: 3)
        .Switch("s4", "n", "vout", ohms: 4).Switch("s5", "vin", "n", ohms: 5)
        .Build();

    private static Converter NineSwitches() => Converter.Create("Nine").Input("vin").Output("vout")
        .Capacitor("fly1", "p", "n").Capacitor("fly2", "q", "m")
        .Switch("s1", "vin", "p").Switch("s2", "p", "vout").Switch("s3", "n", "vout").Switch("s4", "n", "gnd").Switch("s5", "n", "q")
        .Switch("s6", "vin", "q").Switch("s7", "q", "vout").Switch("s8", "m", "vout").Switch("s9", "m", "gnd")
        .Build();

    private static Converter Network(string which) => which switch
    {
        "bridge" => OneCapacitorBridge(),
        "two" => TwoCapacitors(),
        "resistive" => SeriesResistance(),
        _ => OutputCapacitor(),
    };

    public static TheoryData<string> Networks => ["bridge", "two", "resistive", "buffered"];

    [Theory]
    [MemberData(nameof(Networks))]
    public void Ratios_counts_and_best_patterns_are_those_of_trying_every_pattern(string which)
    {
        Converter converter = Network(which);
        Dictionary<Fraction, List<ModeAnalysis>> every = TryEveryPattern(converter);

        ReachableRatios found = ReachableRatios.Of(converter);

        Assert.Equal(1L << (2 * converter.Switches.Count), found.PatternCount);
        Assert.Equal(every.Keys.Order(), found.Ratios.Select(r => r.Ratio));
        foreach (ReachableRatio ratio in found.Ratios)
        {
            List<ModeAnalysis> own = every[ratio.Ratio];
            Assert.Equal(own.Count, ratio.PatternCount);
            Near(own.Min(a => a.SlowSwitchingLimit.OhmsAtOneHertz), ratio.BestBySlowLimit.SlowOhmsAtOneHertz);
            Near(own.Min(a => a.FastSwitchingLimit.Ohms), ratio.BestByFastLimit.FastOhms);
            Assert.Equal(own.Min(Stress), Stress(ratio.BestByStress.Analysis));
        }
    }

    [Fact]
    public void The_ratios_of_one_capacitor_between_all_ports_are_those_of_hand_derivation()
    {
        // One capacitor holds its voltage, so two loops p·vin + q·vout decide: -1, 1/2, 1 and 2 (derived by hand).
        Assert.Equal(
            [new Fraction(-1), new Fraction(1, 2), new Fraction(1), new Fraction(2)],
            ReachableRatios.Of(OneCapacitorBridge()).Ratios.Select(r => r.Ratio));
    }

    [Fact]
    public void A_pattern_can_be_made_a_mode_of_the_converter()
    {
        Converter converter = TwoCapacitors();
        ReachableRatios found = ReachableRatios.Of(converter);
        Converter reconfigurable = converter.WithModes(
            [.. found.Ratios.Select(r => ($"{r.Ratio}", r.BestByFastLimit.ClosedPhases))]);
        Assert.Equal(
            found.Ratios.Select(r => r.Ratio),
            ConverterAnalysis.Of(reconfigurable).Modes.Select(m => m.Require().Ratio.ToFraction()));
    }

    [Fact]
    public void Modes_need_names_of_their_own_and_phases_that_exist()
    {
        Converter converter = OneCapacitorBridge();
        PhaseSet[] open = new PhaseSet[converter.Switches.Count];
        PhaseSet[] late = [PhaseSet.Of(3), .. open[1..]];
        Assert.Throws<ArgumentException>(() => converter.WithModes());
        Assert.Throws<ArgumentException>(() => converter.WithModes((string.Empty, open)));
        Assert.Throws<ArgumentException>(() => converter.WithModes(("a", open), ("a", open)));
        Assert.Throws<ArgumentException>(() => converter.WithModes(("a", open[1..])));
        Assert.Throws<ArgumentException>(() => converter.WithModes(("a", late)));
    }

    [Fact]
    public void The_result_does_not_depend_on_threads_or_runs()
    {
        Converter converter = TwoCapacitors();
        string[] Texts() => [.. ReachableRatios.Of(converter).Ratios.Select(r => $"{r} {r.BestBySlowLimit} {r.BestByFastLimit} {r.BestByStress}")];
        string[] first = Texts();
        for (int run = 0; run < 5; run++)
        {
            Assert.Equal(first, Texts());
        }
    }

    [Fact]
    public void Memory_is_for_classes_and_winners_only()
    {
        // A full analysis of every pattern that may be best would take over 250 bytes per gate pattern.
        const double LargestBytesPerPattern = 16;
        Converter converter = NineSwitches();
        Search(converter);
        long before = GC.GetAllocatedBytesForCurrentThread();
        ReachableRatio[] ratios = Search(converter);
        double bytes = (double)(GC.GetAllocatedBytesForCurrentThread() - before) / (1L << (2 * converter.Switches.Count));
        Assert.NotEmpty(ratios);
        Assert.InRange(bytes, 0, LargestBytesPerPattern);
    }

    [Fact]
    public void Progress_ends_at_one_and_a_cancelled_search_stops()
    {
        List<double> reports = [];
        ReachableRatios.Of(OneCapacitorBridge(), new Recorder(reports));
        Assert.Equal(1, reports.Max());
        using CancellationTokenSource source = new();
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => ReachableRatios.Of(TwoCapacitors(), null, source.Token));
    }

    [Fact]
    public void More_phases_a_current_load_or_too_many_switches_are_refused()
    {
        ConverterBuilder many = Converter.Create("Many").Input("vin").Output("vout").Capacitor("fly", "p", "n");
        for (int s = 0; s <= ReachableRatios.MaximumSwitchCount; s++)
        {
            many.Switch($"s{s}", s % 2 == 0 ? "vin" : "n", s % 3 == 0 ? "p" : "vout");
        }

        Converter three = Converter.Create("Three").Input("vin").Output("vout").Phases(3)
            .Capacitor("fly", "p", "n").Switch("s1", "vin", "p", 1).Switch("s2", "n", "vout", 2).Build();
        Converter current = Converter.Create("Current").Input("vin").Output("vout", LoadKind.Current)
            .Capacitor("out", "vout", "gnd").Switch("s1", "vin", "vout", 1).Build();
        Assert.Throws<ArgumentException>(() => ReachableRatios.Of(many.Build()));
        Assert.Throws<ArgumentException>(() => ReachableRatios.Of(three));
        Assert.Throws<ArgumentException>(() => ReachableRatios.Of(current));
    }

    // the search on this thread alone, so that its memory can be counted
    private static ReachableRatio[] Search(Converter converter)
    {
        RatioCollection found = new(converter);
        ClassPairSearch search = new(converter, found, CancellationToken.None);
        List<PhaseClass> classes = PhaseClasses.Of(converter.Network, CancellationToken.None);
        for (int first = 0; first < classes.Count; first++)
        {
            for (int second = 0; second <= first; second++)
            {
                search.Try(classes[first], classes[second]);
            }
        }

        return found.ToArray();
    }

    private static Dictionary<Fraction, List<ModeAnalysis>> TryEveryPattern(Converter converter)
    {
        int switches = converter.Switches.Count;
        Dictionary<Fraction, List<ModeAnalysis>> every = [];
        for (int pattern = 0; pattern < 1 << (2 * switches); pattern++)
        {
            PhaseSet[] closed = [.. Enumerable.Range(0, switches).Select(s => ((pattern >> (2 * s)) & 3) switch
            {
                0 => PhaseSet.None,
                1 => PhaseSet.Of(1),
                2 => PhaseSet.Of(2),
                _ => PhaseSet.Of(1, 2),
            })];
            Converter own = converter.WithModes(("own", closed));
            if (ModeAnalysis.Try(own, own.Modes[0]).Analysis is { } analysis)
            {
                Fraction ratio = analysis.Ratio.ToFraction();
                every.TryAdd(ratio, []);
                every[ratio].Add(analysis);
            }
        }

        return every;
    }

    // undetermined switches first, then the highest magnitude
    private static (int, Fraction) Stress(ModeAnalysis analysis)
    {
        Quantity[] determined = [.. analysis.BlockingVoltages.Peaks.Where(p => p.IsDetermined)];
        return (analysis.BlockingVoltages.Peaks.Count - determined.Length,
            determined.Length == 0 ? Fraction.Zero : determined.Max(p => p.ToFraction().Abs()));
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-9 * Math.Abs(expected));

    private sealed class Recorder(List<double> reports) : IProgress<double>
    {
        public void Report(double value)
        {
            lock (reports)
            {
                reports.Add(value);
            }
        }
    }
}
