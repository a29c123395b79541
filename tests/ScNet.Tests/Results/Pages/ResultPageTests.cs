using System.Runtime.CompilerServices;
using ScNet.Analysis;
using ScNet.Design.Requirements;
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

    /// <summary>What a type has no words for is told in a table, never in braces.</summary>
    [Fact]
    public void No_type_of_the_library_shows_as_a_row_of_its_properties()
    {
        Type[] silent = [.. ResultPage.TypesOf(typeof(Converter).Assembly).Where(t => !t.ContainsGenericParameters && RecordPage.Shows(t))];
        Assert.NotEmpty(silent);
        Assert.All(silent, t => Assert.DoesNotContain(" { ", ResultPage.Of(RuntimeHelpers.GetUninitializedObject(t))!.ToText(), StringComparison.Ordinal));
    }

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
}
