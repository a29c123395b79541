using System.Xml.Linq;
using ScNet.Results.Pages;

namespace ScNet.Tests.Results.Pages;

public sealed class PageTests
{
    private static readonly Page s_page = new("Half <b>", [
        new PageFigures([new("Ideal ratio", "1/2"), new("Fast limit", "4 Ω")]),
        new PageHeading("Elements"),
        new PageTable("per volt", [new("name", IsFigure: false), new("charge", IsFigure: true, Meaning: "per unit & period")], [["fly\n2", new PageCell("1/2", 0.5)], ["s", "-1"]]),
        new PageRemarks(["mind <script>"], isCaution: true),
    ]);

    [Fact]
    public void Text_is_aligned_and_has_no_blanks_at_the_ends_of_lines() => Assert.Equal(
        """
        Half <b>
        Ideal ratio  1/2
        Fast limit   4 Ω

        Elements
          per volt
          name        charge
          fly\u000A2     1/2
          s               -1

          mind <script>

        """.ReplaceLineEndings("\n"),
        s_page.ToText());

    [Fact]
    public void Html_keeps_names_as_text_and_can_be_read_as_xml()
    {
        XElement section = XElement.Parse(s_page.ToHtml());
        Assert.Equal("Half <b>", section.Element("h2")!.Value);
        Assert.Equal(["1/2", "-1"], section.Descendants("td").Where(d => d.Ancestors("table").First().Attribute("class")!.Value == "rows").Select(d => d.Value));
        Assert.Equal(["fly\\u000A2", "s"], section.Descendants("th").Where(h => h.Attribute("scope")!.Value == "row" && h.Ancestors("table").First().Attribute("class")!.Value == "rows").Select(h => h.Value));
        Assert.Equal("0.5", section.Descendants("td").Single(d => d.Attribute("data-order") is not null).Attribute("data-order")!.Value);
        Assert.Equal("per unit & period", section.Descendants("th").Single(h => h.Attribute("title") is not null).Attribute("title")!.Value);
        Assert.Empty(section.Descendants("script"));
    }

    [Fact]
    public void Every_table_with_the_column_stands_in_its_order_and_others_stay()
    {
        PageTable first = new("first", [new("name", IsFigure: false, "name"), new("size", IsFigure: true, "size")], [["a", new("2 V", 2)], ["b", "?"], ["c", new("30 mV", 0.03)]]);
        PageTable other = new("other", [new("name", IsFigure: false)], [["z"], ["y"]]);
        Page page = new("page", [first, other], isComplete: false);
        string Names(Page p) => string.Concat(p.Blocks.OfType<PageTable>().SelectMany(t => t.Rows).Select(r => r[0].Text));
        Assert.Equal("cabzy", Names(page.Sorted("size")));
        Assert.Equal("acbzy", Names(page.Sorted("size", isDescending: true)));
        Assert.Equal("cbazy", Names(page.Sorted("name", isDescending: true)));
        Assert.Equal("abczy", Names(page.Sorted("none")));
        Assert.False(page.Sorted("size").IsComplete);
    }
}
