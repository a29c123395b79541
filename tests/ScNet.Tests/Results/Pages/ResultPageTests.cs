using System.Reflection;
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
    public void Every_page_that_needs_nothing_but_its_result_is_the_one_that_shows_it()
    {
        IEnumerable<Type> withPage =
            from type in typeof(Page).Assembly.GetExportedTypes()
            where type is { Namespace: "ScNet.Results.Pages", IsAbstract: true, IsSealed: true } && type != typeof(ResultPage)
            from method in type.GetMethods(BindingFlags.Public | BindingFlags.Static)
            let parameters = method.GetParameters()
            where method.Name == "Of" && method.ReturnType == typeof(Page) && parameters.Length > 0 && parameters.Skip(1).All(p => p.IsOptional || p.IsDefined(typeof(ParamCollectionAttribute)) || p.IsDefined(typeof(ParamArrayAttribute)))
            select parameters[0].ParameterType;
        Assert.Empty(withPage.Except(ResultPage.TypesWithPage));
    }
}
