using ScNet.Analysis;
using ScNet.Devices;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Results.Pages;

/// <summary>Pages of stress, gate drive, tolerances and overlays: their headings are those of the tables for programs.</summary>
public sealed class StressPageTests
{
    private static readonly Interval<double> s_cell = new(2.8, 4.2);

    private static readonly ConverterStress s_gears = ConverterStress.Of(
        ConverterAnalysis.Of(ScNet.Netlists.NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml")).GetConverter()), s_cell);

    private static readonly RatingLimits s_limits = new() { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Plate3V6 };

    [Fact]
    public void A_figure_of_a_page_has_the_key_of_the_table_for_programs()
    {
        ConverterRatings ratings = ConverterRatings.Of(s_gears, s_limits);
        GateNeeds needs = GateNeeds.Of("gears.toml", ConverterGateDrive.Of(ratings));
        ResultRow<ToleratedMode> tolerated = Tolerated();
        ComponentTolerances tolerances = new(capacitance: 0.2);
        Overlay overlay = Overlay.Of("Gears", [SeriesParallel.StepDown(3), SeriesParallel.StepDown(2)]);
        (Page Page, string Json)[] pairs =
        [
            (StressPage.Of(RatedStress.Of(null, ratings)), ResultTable.OfStress(s_cell, [RatedStress.Of(null, ratings)], hasRatings: true).ToJson()),
            (StressPage.Of(RatedStress.Of(null, s_gears, s_gears.Modes[0].Mode)), ResultTable.OfStress(s_cell, [RatedStress.Of(null, s_gears)]).ToJson()),
            (GatePage.Of(needs), ResultTable.OfGates(s_cell, [needs]).ToJson()),
            (TolerancePage.Of(tolerances, [tolerated]), ResultTable.OfTolerances(tolerances, 1, [tolerated]).ToJson()),
            (OverlayPage.Of(overlay), ResultTable.OfOverlay(overlay).ToJson()),
        ];
        foreach ((Page page, string json) in pairs)
        {
            string[] keys = [.. page.Blocks.OfType<PageTable>().SelectMany(t => t.Columns).Select(c => c.Key).OfType<string>()];
            Assert.NotEmpty(keys);
            Assert.All(keys, key => Assert.All(key.Split('.'), part => Assert.Contains($"\"{part}\":", json, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void A_row_that_blocks_most_says_where_and_its_order_is_that_of_the_volts()
    {
        PageTable switches = StressPage.Of(RatedStress.Of(null, s_gears)).Blocks.OfType<PageTable>().First();
        IReadOnlyList<PageCell> s1 = switches.Rows.Single(r => r[0].Text == "s1");
        Assert.Equal(("2.8 V", 2.8, "mode 1/3, phase 2"), (s1[1].Text, s1[1].SortValue!.Value, s1[2].Text));
        Assert.Equal(("-", (double?)null), (s1[3].Text, s1[3].SortValue));
    }

    [Fact]
    public void What_nothing_bounds_is_said_with_its_reason()
    {
        Converter loose = Converter.Create("Loose").Input("vin").Output("vout")
            .Capacitor("fly", "p", "n").Capacitor("idle", "x", "y")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
            .Switch("s5", "x", "vin", on: 1).Switch("s6", "y", "gnd", on: default)
            .Build();
        string text = StressPage.Of(RatedStress.Of("loose.toml", ConverterStress.Of(ConverterAnalysis.Of(loose), s_cell))).ToText();
        Assert.Contains("idle: nothing bounds its voltage in mode default", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_verdict_counts_the_devices_and_names_what_is_not_withstood()
    {
        string text = StressPage.Of(RatedStress.Of(null, ConverterRatings.Of(s_gears, new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Plate3V6, MaximumSwitchesInSeries = 2 }))).ToText();
        Assert.Contains("Not withstood, or not known to be so: s3, s4, s5, s9\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("not allowed", StressPage.Of(RatedStress.Of(null, ConverterRatings.Of(s_gears, s_limits))).ToText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Names_are_escaped_in_html()
    {
        Converter named = Converter.Create("<b>").Input("vin").Output("vout").Capacitor("f<i>", "p", "n")
            .Switch("s&1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        string html = StressPage.Of(RatedStress.Of("<x>.toml", ConverterStress.Of(ConverterAnalysis.Of(named), s_cell))).ToHtml();
        Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<i>", html, StringComparison.Ordinal);
        Assert.Contains("s&amp;1", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Pages_of_nothing_are_misuse()
    {
        Assert.Throws<ArgumentException>(() => StressPage.Of(RatedStress.Unreadable("x.toml", [])));
        Assert.Throws<ArgumentException>(() => GatePage.Of(GateNeeds.Unreadable("x.toml", [])));
        Assert.Throws<ArgumentException>(() => TolerancePage.Of(new ComponentTolerances(0.1), []));
    }

    private static ResultRow<ToleratedMode> Tolerated()
    {
        ModeAnalysis half = ModeAnalysis.Of(SeriesParallel.StepDown(2));
        ComponentTolerances tolerances = new(capacitance: 0.2);
        return ResultRow.Of("half.toml", half.Outcome, new ToleratedMode(1, ImpedanceTolerance.WorstCase(half, 1, tolerances), ImpedanceTolerance.MonteCarlo(half, 1, tolerances, 20, 1)));
    }
}
