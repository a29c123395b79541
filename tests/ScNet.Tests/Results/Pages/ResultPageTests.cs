using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Requirements;
using ScNet.Reconfiguration;
using ScNet.Results.Pages;
using ScNet.Topologies;

namespace ScNet.Tests.Results.Pages;

/// <summary>What a notebook shows of a result.</summary>
public sealed class ResultPageTests
{
    private static readonly ModeAnalysis s_half = ModeAnalysis.Of(SeriesParallel.StepDown(2));

    [Fact]
    public void A_list_shows_an_entry_in_a_row()
    {
        string text = ResultPage.Of(SeriesParallel.StepDown(3).Capacitors)!.ToText();
        Assert.Contains("2 entries", text, StringComparison.Ordinal);
        Assert.Contains("fly1", text, StringComparison.Ordinal);
        Assert.Contains("fly2", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_without_words_of_its_own_shows_value_by_value_with_units()
    {
        LoadShare sleep = new("sleep", 2e-5, 0.96, 0.5);
        Assert.Equal("Load share\n  Name       sleep\n  Amperes    20 µA\n  Share       0.96\n  Output    500 mV\n".Replace(" ", string.Empty, StringComparison.Ordinal), ResultPage.Of(sleep)!.ToText().Replace(" ", string.Empty, StringComparison.Ordinal));
        string table = ResultPage.Of(new[] { sleep, sleep with { Name = "active" } })!.ToText();
        Assert.Contains("active", table, StringComparison.Ordinal);
        Assert.DoesNotContain("LoadShare {", table, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("capacitors", "Name  Positive node  Bottom node")]
    [InlineData("switches", "Name  First node  Second node")]
    [InlineData("charges", "Capacitor  Charge")]
    [InlineData("voltages", "Capacitor  Value")]
    [InlineData("phases", "Capacitor  phase 1  phase 2")]
    [InlineData("findings", "Severity  Code")]
    public void Lists_of_elements_values_and_findings_are_tables_with_their_headings(string list, string headings)
    {
        Converter third = SeriesParallel.StepDown(3);
        ModeAnalysis analysis = ModeAnalysis.Of(third);
        object items = list switch
        {
            "capacitors" => third.Capacitors,
            "switches" => third.Switches,
            "charges" => analysis.Capacitors,
            "voltages" => analysis.IdealPoint.CapacitorVoltages,
            "phases" => analysis.ChargeFlow.Capacitors,
            _ => ShownResults.Findings(),
        };
        string text = ResultPage.Of(items)!.ToText();
        Assert.Contains(headings, System.Text.RegularExpressions.Regex.Replace(text, " {2,}", "  "), StringComparison.Ordinal);
        Assert.DoesNotContain("Position", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Results_with_pages_stand_one_below_the_other_and_comparisons_side_by_side()
    {
        ModeAnalysis third = ModeAnalysis.Of(SeriesParallel.StepDown(3));
        string two = ResultPage.Of(new[] { s_half, third })!.ToText();
        Assert.All(new[] { s_half, third }, a => Assert.Contains(AnalysisPage.Of(a).Title, two, StringComparison.Ordinal));
        ModeComparison[] compared = [ModeComparison.Of(s_half, new(3.6, 0.9)), ModeComparison.Of(third, new(3.6, 0.9))];
        Assert.Equal(ComparisonPage.Of(compared).ToText(), ResultPage.Of(compared)!.ToText());
    }

    [Fact]
    public void Numbers_have_the_units_that_their_names_say()
    {
        Assert.Contains("At 1 Hz  250 mΩ", System.Text.RegularExpressions.Regex.Replace(ResultPage.Of(s_half.SlowSwitchingLimit)!.ToText(), " {2,}", "  "), StringComparison.Ordinal);
        Assert.Equal(("Area", "m²"), PropertyWords.Split("AreaSquareMetres"));
        Assert.Equal("1 mm", PropertyWords.Number(1000, PropertyWords.Split("WidthOfEachMicrometres").Unit).Text);
        Assert.Equal(("Farads per square metre", null), PropertyWords.Split("FaradsPerSquareMetre"));
    }

    [Fact]
    public void A_long_list_says_how_much_of_it_is_left_out()
    {
        string text = ResultPage.Of(Enumerable.Range(0, 250).Select(k => new LoadShare($"state {k}", 1, 1)).ToArray())!.ToText();
        Assert.Contains("250 entries", text, StringComparison.Ordinal);
        Assert.Contains("and 50 more", text, StringComparison.Ordinal);
    }

    /// <summary>No type is told by a row of its properties in braces, or by the name of a type.</summary>
    [Fact]
    public void Every_type_of_result_and_every_list_of_it_shows_as_a_page()
    {
        IReadOnlyDictionary<Type, List<object>> found = ShownTypes.Reached(ShownResults.All(), typeof(Converter).Assembly);
        // a builder has nothing to show yet, a method of overlay shows as its overlays, and a page is what others show as
        Type[] others = [typeof(ConverterBuilder), typeof(OverlayHeuristic), typeof(Page)];
        Assert.Empty(ShownTypes.ThatShouldShow(typeof(Converter).Assembly).Except(found.Keys).Except(others));
        string faults = string.Join('\n', found.Where(f => ShownTypes.ThatShouldShow(f.Key.Assembly).Contains(f.Key)).SelectMany(f => ShownTypes.Faults(f.Key, f.Value[0])));
        Assert.True(faults.Length == 0, faults);
    }

    [Fact]
    public void What_shows_as_text_or_in_braces_is_found() => Assert.All(
        new object[] { "a text", new { System = "System.Object" }, new Braces() }, value => Assert.NotEmpty(ShownTypes.Faults(value.GetType(), value)));

    [Fact]
    public void A_page_shows_as_itself()
    {
        Page page = new("Mine", []);
        Assert.Same(page, ResultPage.Of(page));
    }

    [Fact]
    public void What_has_no_page_shows_as_its_text_with_names_escaped()
    {
        Assert.Null(ResultPage.Of(s_half.Ratio));
        Assert.Contains("<pre>1/2</pre>", ResultPage.ToHtml(s_half.Ratio), StringComparison.Ordinal);
        Converter named = Converter.Create("<script>").Input("vin").Output("vout").Capacitor("fly", "vin", "gnd").Switch("s", "vin", "vout", on: 1).Build();
        Assert.DoesNotContain("<script>", ResultPage.ToHtml(named), StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", ResultPage.ToHtml(named), StringComparison.Ordinal);
    }

    [Fact]
    public void Lines_of_a_text_stay_lines_and_nothing_else_breaks_them() =>
        Assert.Contains("<pre>one\ntwo\\u0007</pre>", ResultPage.ToHtml("one\r\ntwo\a\n"), StringComparison.Ordinal);

    [Fact]
    public void Every_type_of_the_library_and_every_list_of_them_is_shown_so()
    {
        Type[] types = [.. ResultPage.TypesOf(typeof(Converter).Assembly)];
        Assert.All(
            typeof(Converter).Assembly.GetExportedTypes().Where(t => t is { IsClass: true, IsAbstract: false, IsGenericType: false }),
            t => Assert.True(types.Contains(t) && types.Contains(typeof(IEnumerable<>).MakeGenericType(t))));
        Assert.DoesNotContain(types, t => t is { IsAbstract: true, IsSealed: true } || t.IsByRefLike);
    }

    /// <summary>A page made of one result alone is the page of that result everywhere.</summary>
    [Fact]
    public void What_has_a_page_shows_as_it()
    {
        Type[] types = [.. ResultPage.FactoriesOf(typeof(Converter).Assembly).Keys];
        Assert.Contains(typeof(ModeAnalysis), types);
        Assert.Contains(typeof(ConverterAnalysis), types);
        Assert.Equal(AnalysisPage.Of(s_half).ToText(), ResultPage.Of(s_half)!.ToText());
        ConverterAnalysis whole = ConverterAnalysis.Of(s_half.Converter);
        Assert.Equal(AnalysisPage.Of(whole).ToText(), ResultPage.Of(whole)!.ToText());
    }

    private sealed class Braces
    {
        public string Text { get; } = "Braces { Text = }";
    }
}
