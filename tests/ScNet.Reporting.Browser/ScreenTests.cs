using System.Text.Json;
using PuppeteerSharp;

namespace ScNet.Reporting.Browser;

/// <summary>Reports on screens of several widths, on light and dark ground, by pointer and keyboard.</summary>
[Collection(nameof(Browser))]
public sealed class ScreenTests(Browser browser)
{
    private const string Text = "e => e.textContent";

    [Theory]
    [MemberData(nameof(Reports.All), MemberType = typeof(Reports))]
    public async Task Console_is_empty_and_nothing_else_is_loaded(string report)
    {
        await using OpenReport open = await browser.OpenAsync(report);
        Assert.Empty(open.Said);
        Assert.All(open.Requests, url => Assert.True(url.StartsWith("file:", StringComparison.Ordinal) || url.StartsWith("data:", StringComparison.Ordinal), url));
        Assert.Single(open.Requests, url => url.StartsWith("file:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Console_is_not_empty_where_the_policy_is_broken()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        await open.Page.EvaluateExpressionAsync("document.body.insertAdjacentHTML('beforeend', '<p style=\"color:red\">x</p><img src=\"https://example.invalid/x.png\">')");
        await open.Page.EvaluateExpressionAsync("new Promise(r => setTimeout(r, 50))");
        Assert.Contains(open.Said, s => s.Contains("policy: style-src", StringComparison.Ordinal));
        Assert.Contains(open.Said, s => s.Contains("policy: img-src", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Names_stay_text()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        Assert.Equal(Reports.Evil, await open.Page.GetTitleAsync());
        Assert.Equal(Reports.Evil, await open.Page.QuerySelectorAsync("h1").EvaluateFunctionAsync<string>(Text));
        Assert.Equal(1, await open.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('script').length"));
        Assert.Equal(0, await open.Page.EvaluateExpressionAsync<int>("document.querySelectorAll('img').length"));
    }

    [Theory]
    [MemberData(nameof(Reports.All), MemberType = typeof(Reports))]
    public async Task Nothing_reaches_beyond_the_page_at_any_width(string report)
    {
        await using OpenReport open = await browser.OpenAsync(report);
        foreach (int width in (int[])[400, 900, 1100, 1600])
        {
            await open.Page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });
            Assert.Empty(await open.Page.EvaluateExpressionAsync<string[]>("measure.overflow()"));
        }
    }

    [Fact]
    public async Task What_reaches_beyond_the_page_is_found()
    {
        await using OpenReport open = await browser.OpenAsync("evil", width: 400);
        await open.Page.EvaluateExpressionAsync("document.querySelector('main p').textContent = 'x'.repeat(40) + '\\u00a0'.repeat(90)");
        await open.Page.EvaluateExpressionAsync("document.querySelector('main p').setAttribute('class', 'figures')");
        await open.Page.EvaluateExpressionAsync("{ const b = document.createElement('canvas'); b.width = 2000; document.querySelector('main').append(b); }");
        Assert.NotEmpty(await open.Page.EvaluateExpressionAsync<string[]>("measure.overflow()"));
    }

    [Theory]
    [MemberData(nameof(Reports.All), MemberType = typeof(Reports))]
    public async Task Every_text_stands_out_from_its_ground_in_both_schemes(string report)
    {
        foreach (bool isDark in (bool[])[false, true])
        {
            await using OpenReport open = await browser.OpenAsync(report, isDark: isDark);
            Contrast found = await open.Page.EvaluateExpressionAsync<Contrast>("measure.contrast()");
            Assert.True(found.Count > 100, $"{found.Count} texts were measured.");
            Assert.Empty(found.Faults);
        }
    }

    [Fact]
    public async Task Text_that_does_not_stand_out_is_found()
    {
        await using OpenReport open = await browser.OpenAsync("evil");
        await open.Page.EvaluateExpressionAsync("{ const s = new CSSStyleSheet(); s.replaceSync('h2 { color: #999 }'); document.adoptedStyleSheets = [s]; }");
        Assert.NotEmpty((await open.Page.EvaluateExpressionAsync<Contrast>("measure.contrast()")).Faults);
    }

    [Fact]
    public async Task Dark_ground_is_dark_and_light_ground_is_light()
    {
        foreach ((bool isDark, string ground) in new[] { (false, "rgb(255, 255, 255)"), (true, "rgb(22, 24, 28)") })
        {
            await using OpenReport open = await browser.OpenAsync("evil", isDark: isDark);
            Assert.Equal(ground, await open.Page.EvaluateExpressionAsync<string>("getComputedStyle(document.body).backgroundColor"));
        }
    }

    [Theory]
    [MemberData(nameof(Reports.All), MemberType = typeof(Reports))]
    public async Task Rules_of_accessibility_are_kept_in_both_schemes(string report)
    {
        foreach (bool isDark in (bool[])[false, true])
        {
            await using OpenReport open = await browser.OpenAsync(report, isDark: isDark);
            await open.Page.EvaluateExpressionAsync(new Deque.AxeCore.Commons.BundledAxeScriptProvider().GetScript());
            string found = await open.Page.EvaluateExpressionAsync<string>(
                "axe.run(document, { resultTypes: ['violations'] }).then(r => JSON.stringify(r.violations.map(v => v.id + ': ' + v.help + ' ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(' | '))))");
            Assert.Empty(JsonSerializer.Deserialize<string[]>(found)!);
        }
    }

    private sealed record Contrast(int Count, string[] Faults);
}
