using PuppeteerSharp;
using UglyToad.PdfPig;
using Paged = UglyToad.PdfPig.Content.Page;

namespace ScNet.Reporting.Browser;

/// <summary>Reports on paper: nothing cut, nothing parted that belongs together.</summary>
[Collection(nameof(Browser))]
public sealed class PaperTests(Browser browser)
{
    // A4 less the margins of the style sheet, in points of 1/72 inch and in pixels of 1/96 inch
    private const double LeftPoints = 13 / 25.4 * 72, RightPoints = (210 - 13) / 25.4 * 72;
    private const int PaperPixels = (int)((210 - 26) / 25.4 * 96);

    [Theory]
    [MemberData(nameof(Reports.All), MemberType = typeof(Reports))]
    public async Task No_row_picture_or_heading_is_cut(string report)
    {
        await using OpenReport open = await browser.OpenAsync(report, width: PaperPixels, isDark: true, isPrint: true);
        Assert.Empty(await open.Page.EvaluateExpressionAsync<string[]>($"measure.wide({PaperPixels})"));
        Paper paper = await open.Page.EvaluateExpressionAsync<Paper>("measure.paper()");
        using PdfDocument document = PdfDocument.Open(await open.Page.PdfDataAsync(new PdfOptions { PreferCSSPageSize = true, PrintBackground = true }));
        string[] pages = [.. document.GetPages().Select(TextOf)];

        Assert.All(document.GetPages().SelectMany(p => p.Letters), l => Assert.InRange(l.BoundingBox.Left, LeftPoints - 2, RightPoints));
        Assert.All(document.GetPages().SelectMany(p => p.Letters), l => Assert.InRange(l.BoundingBox.Right, LeftPoints - 2, RightPoints + 2));
        foreach (TableOnPaper table in paper.Tables)
        {
            Assert.All(table.Rows, row => Assert.True(pages.Any(p => p.Contains(row, StringComparison.Ordinal)), $"The row '{row}' is on no page as a whole."));
            if (table.Head.Length > 0)
            {
                // where a table goes on, its headings stand above again
                Assert.All(
                    table.Rows.Select(row => Array.FindIndex(pages, p => p.Contains(row, StringComparison.Ordinal))).Distinct(),
                    p => Assert.Contains(table.Head, pages[p], StringComparison.Ordinal));
            }
        }

        foreach (FigureOnPaper figure in paper.Figures)
        {
            Assert.Contains(pages, p => figure.Texts.All(t => p.Contains(t, StringComparison.Ordinal)));
        }

        Assert.All(paper.Headings, heading => Assert.Contains(pages, p => p.IndexOf(heading, StringComparison.Ordinal) is var at and >= 0 && at + heading.Length < p.Length - 20));
    }

    [Fact]
    public async Task Paper_is_light_whatever_the_screen_is()
    {
        await using OpenReport open = await browser.OpenAsync("evil", isDark: true, isPrint: true);
        Assert.Equal("rgb(26, 26, 26)", await open.Page.EvaluateExpressionAsync<string>("getComputedStyle(document.body).color"));
    }

    [Fact]
    public async Task What_was_searched_for_does_not_shorten_the_paper()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        await open.Page.FocusAsync("#find");
        await open.Page.Keyboard.TypeAsync("nowhere to be found");
        await open.Page.EvaluateExpressionAsync("dispatchEvent(new Event('beforeprint'))");
        Assert.Equal(0, await open.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('main [hidden]').length"));
    }

    private static string TextOf(Paged page) => string.Concat(page.Letters.Select(l => l.Value).Where(v => !string.IsNullOrWhiteSpace(v)));

    private sealed record TableOnPaper(string Head, string[] Rows);

    private sealed record FigureOnPaper(string[] Texts);

    private sealed record Paper(TableOnPaper[] Tables, FigureOnPaper[] Figures, string[] Headings);
}
