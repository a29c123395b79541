using System.Xml.Linq;
using ScNet.Analysis;
using ScNet.Results.Pages;
using ScNet.Topologies;

namespace ScNet.Tests.Results.Pages;

public sealed class AnalysisPageTests
{
    private static readonly ConverterAnalysis s_ladder = ConverterAnalysis.Of(FamilyCatalogue.Named("ladder")[0].Build([4]));

    [Fact]
    public void A_mode_and_its_converter_give_the_same_page() =>
        Assert.Equal(AnalysisPage.Of(s_ladder, 1e6).ToText(), AnalysisPage.Of(s_ladder.Results.Single(), 1e6).ToText());

    [Fact]
    public void Rows_are_sorted_by_number_not_by_the_text_of_fractions()
    {
        PageTable capacitors = AnalysisPage.Of(s_ladder).Blocks.OfType<PageTable>().First();
        int column = capacitors.Columns.Select((c, i) => (c, i)).Single(c => c.c.Heading == "charge 1").i;
        Assert.Equal(["3/4", "1/2", "1/4", "-1/2", "-1/4"], capacitors.Rows.Select(r => r[column].Text));
        Assert.Equal([0.75, 0.5, 0.25, -0.5, -0.25], capacitors.Rows.Select(r => r[column].SortValue));
    }

    [Fact]
    public void Html_has_the_number_the_key_and_the_meaning_of_each_figure()
    {
        XElement section = XElement.Parse(AnalysisPage.Of(s_ladder).ToHtml());
        XElement heading = section.Descendants("th").Single(h => h.Value == "peak");
        Assert.Equal("blockingVoltages", heading.Attribute("data-key")!.Value);
        Assert.Equal("the blocking voltage of the largest magnitude", heading.Attribute("title")!.Value);
        Assert.Contains(section.Descendants("td"), d => d.Value == "1/4" && d.Attribute("data-order")!.Value == "0.25");
    }

    [Fact]
    public void A_page_without_a_result_is_not_complete_and_says_so()
    {
        Converter open = Converter.Create("Shorted").Input("vin").Output("vout").Capacitor("c", "vout", "gnd").Switch("s", "vin", "gnd", 1).Switch("t", "vin", "vout", 2).Build();
        Page page = AnalysisPage.Of(ConverterAnalysis.Of(open));
        Assert.False(page.IsComplete);
        Assert.Contains("  No result:\n", page.ToText(), StringComparison.Ordinal);
        Assert.True(AnalysisPage.Of(s_ladder).IsComplete);
    }

    [Fact]
    public void Colour_marks_headings_and_cautions_and_changes_nothing_else()
    {
        Page page = new("Title", [new PageHeading("Part"), new PageRemarks(["plain"]), new PageRemarks(["mind"], isCaution: true)]);
        Assert.Equal("\u001b[1mTitle\u001b[0m\n\n\u001b[1mPart\u001b[0m\n  plain\n  \u001b[33mmind\u001b[0m\n", page.ToText(hasColour: true));
        Assert.DoesNotContain('\u001b', page.ToText());
    }
}
