using System.Xml.Linq;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.Topologies;

namespace ScNet.Tests.Results.Pages;

public sealed class ComparisonPageTests
{
    private static readonly ModeComparison[] s_modes =
        [.. new[] { Ladder.StepDown(4), SeriesParallel.StepDown(4), Dickson.StepDown(4) }.Select(c => ModeComparison.Of(ModeAnalysis.Of(c, c.Modes[0]), new ComparisonConditions(4, 1.2)))];

    [Fact]
    public void Cells_are_sorted_by_the_same_numbers_as_the_csv_output()
    {
        ResultTable table = ResultTable.OfComparisons(s_modes[0].Conditions, s_modes.Select(m => ResultRow.Of(null, m.Analysis.Outcome, new ComparedMode(m))));
        PageTable page = ComparisonPage.Of(s_modes).Blocks.OfType<PageTable>().Single();
        for (int c = 2; c < page.Columns.Count; c++)
        {
            int[] byCell = [.. page.Rows.Select((r, i) => (r, i)).OrderBy(r => r.r[c].SortValue is null).ThenBy(r => r.r[c].SortValue).Select(r => r.i)];
            Assert.Equal(table.Order(page.Columns[c].Key!), byCell);
        }
    }

    [Fact]
    public void The_legend_tells_every_heading_of_a_figure_in_text_and_html()
    {
        Page page = ComparisonPage.Of(s_modes);
        PageTable table = page.Blocks.OfType<PageTable>().Single();
        Assert.All(table.Columns.Skip(2), c => Assert.Contains(table.Legend, l => l.Name.Split(", ").Contains(c.Heading)));
        Assert.Equal(table.Legend.Select(l => l.Name), XElement.Parse(page.ToHtml()).Descendants("dt").Select(d => d.Value));
        Assert.All(page.ToText().Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void Order_puts_what_has_no_value_last_in_either_direction_and_keeps_ties()
    {
        object?[] values = [2.0, null, "b", 1, Quantity.Exact(1, 2), "a", Quantity.Undetermined, 1.0];
        Assert.Equal([4, 3, 7, 0, 5, 2, 1, 6], RowOrder.Of(values, isDescending: false));
        Assert.Equal([0, 3, 7, 4, 2, 5, 1, 6], RowOrder.Of(values, isDescending: true));
    }
}
