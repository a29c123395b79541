using PuppeteerSharp;

namespace ScNet.Reporting.Browser;

/// <summary>Tables put in order, words searched for, everything reached by keyboard.</summary>
[Collection(nameof(Browser))]
public sealed class UseTests(Browser browser)
{
    // the first table with figures, and the column of its figures that has most values
    private const string Column = """
        (() => {
          const table = [...document.querySelectorAll('main table.rows')].filter(t => t.querySelector('thead button') && t.querySelector('td[data-order]')).sort((a, b) => b.tBodies[0].rows.length - a.tBodies[0].rows.length)[0];
          const heads = [...table.querySelectorAll('thead th')];
          const values = heads.map((_, c) => new Set([...table.tBodies[0].rows].map(r => r.cells[c].dataset.order)).size);
          const column = values.indexOf(Math.max(...values));
          heads[column].querySelector('button').id = 'the-button';
          table.id = 'the-table';
          return column;
        })()
        """;

    [Fact]
    public async Task Table_is_put_in_order_by_pointer_and_keyboard_in_both_directions()
    {
        await using OpenReport open = await browser.OpenAsync("gears");
        int column = await open.Page.EvaluateExpressionAsync<int>(Column);
        string[] rows = await Rows(open.Page);
        double?[] before = await Orders(open.Page, column);
        Assert.NotEqual(Ascending(before), before);

        await open.Page.ClickAsync("#the-button");
        Assert.Equal(Ascending(before), await Orders(open.Page, column));
        Assert.Equal("ascending", await Sorted(open.Page));
        await open.Page.ClickAsync("#the-button");
        Assert.Equal(Descending(before), await Orders(open.Page, column));
        Assert.Equal("descending", await Sorted(open.Page));

        await open.Page.FocusAsync("#the-button");
        await open.Page.Keyboard.PressAsync("Enter");
        Assert.Equal(Ascending(before), await Orders(open.Page, column));
        await open.Page.Keyboard.PressAsync("Space");
        Assert.Equal(Descending(before), await Orders(open.Page, column));
        Assert.Contains("descending", await open.Page.EvaluateExpressionAsync<string>("document.getElementById('said').textContent"), StringComparison.Ordinal);
        Assert.Equal(rows.Order(StringComparer.Ordinal), (await Rows(open.Page)).Order(StringComparer.Ordinal));
        Assert.Empty(open.Said);
    }

    [Fact]
    public async Task Search_shows_what_holds_the_words_and_takes_nothing_away_for_good()
    {
        await using OpenReport open = await browser.OpenAsync("gears");
        string before = await open.Page.EvaluateExpressionAsync<string>("document.querySelector('main').innerText");
        await open.Page.FocusAsync("#find");
        await open.Page.Keyboard.TypeAsync("corner FREQ");
        string[] marked = await open.Page.EvaluateExpressionAsync<string[]>("[...document.querySelectorAll('main mark')].map(m => m.textContent.toLowerCase())");
        Assert.NotEmpty(marked);
        Assert.All(marked, m => Assert.Equal("corner freq", m));
        Assert.Empty(await open.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('main section')].filter(s => s.getClientRects().length > 0 && !s.textContent.toLowerCase().includes('corner freq')).map(s => s.id)"));
        Assert.True(await open.Page.EvaluateExpressionAsync<int>("[...document.querySelectorAll('main > section')].filter(s => s.hidden).length") > 0);
        Assert.Matches("^[1-9][0-9]* place", await open.Page.EvaluateExpressionAsync<string>("document.getElementById('found').textContent"));

        await open.Page.Keyboard.PressAsync("Enter");
        Assert.Equal(1, await open.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('mark.here').length"));
        await open.Page.Keyboard.PressAsync("Escape");
        Assert.Equal(before, await open.Page.EvaluateExpressionAsync<string>("document.querySelector('main').innerText"));
        Assert.Equal(0, await open.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('mark').length"));

        await open.Page.Keyboard.TypeAsync("<b>nowhere</b>");
        Assert.Equal("Nothing found", await open.Page.EvaluateExpressionAsync<string>("document.getElementById('found').textContent"));
        Assert.Empty(open.Said);
    }

    [Fact]
    public async Task Everything_is_reached_by_keyboard_and_shows_where_the_focus_is()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        int wanted = await open.Page.EvaluateExpressionAsync<int>("[...document.querySelectorAll('a, button, input, [tabindex=\"0\"]')].filter(e => e.getClientRects().length > 0).length");
        List<string> reached = [];
        for (int i = 0; i < wanted; i++)
        {
            await open.Page.Keyboard.PressAsync("Tab");
            reached.Add(await open.Page.EvaluateExpressionAsync<string>("""
                (() => {
                  const e = document.activeElement, all = [...document.querySelectorAll('*')], style = getComputedStyle(e), box = e.getBoundingClientRect();
                  return e === document.body ? 'nothing' : style.outlineStyle === 'none' || parseFloat(style.outlineWidth) < 2 ? 'no outline: ' + e.outerHTML.slice(0, 80)
                    : box.width === 0 || box.right <= 0 ? 'not seen: ' + e.outerHTML.slice(0, 80) : String(all.indexOf(e));
                })()
                """));
        }

        Assert.All(reached, r => Assert.True(int.TryParse(r, out _), r));
        Assert.Equal(wanted, reached.Distinct().Count());
    }

    [Fact]
    public async Task First_key_leads_past_the_contents_to_the_text()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        await open.Page.Keyboard.PressAsync("Tab");
        await open.Page.Keyboard.PressAsync("Enter");
        Assert.Equal("text", await open.Page.EvaluateExpressionAsync<string>("document.activeElement.id"));
    }

    private static Task<string?> Sorted(IPage page) => page.EvaluateExpressionAsync<string?>("document.getElementById('the-button').closest('th').getAttribute('aria-sort')")!;

    private static Task<string[]> Rows(IPage page) => page.EvaluateExpressionAsync<string[]>("[...document.getElementById('the-table').tBodies[0].rows].map(r => r.textContent)");

    private static async Task<double?[]> Orders(IPage page, int column) =>
        [.. (await page.EvaluateExpressionAsync<string[]>($"[...document.getElementById('the-table').tBodies[0].rows].map(r => r.cells[{column}].dataset.order ?? '')"))
            .Select(t => t.Length == 0 ? (double?)null : double.Parse(t, System.Globalization.CultureInfo.InvariantCulture))];

    // what has no value stands last either way
    private static double?[] Ascending(double?[] values) => [.. values.OrderBy(v => v is null).ThenBy(v => v)];

    private static double?[] Descending(double?[] values) => [.. values.OrderBy(v => v is null).ThenByDescending(v => v)];
}
