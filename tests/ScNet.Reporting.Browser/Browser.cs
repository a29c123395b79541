using PuppeteerSharp;

namespace ScNet.Reporting.Browser;

/// <summary>One browser for all tests: the machine's Chromium, or the program that the variable CHROMIUM names.</summary>
public sealed class Browser : IAsyncLifetime
{
    private static readonly string s_script = File.ReadAllText(RepositoryFiles.PathOf("tests/ScNet.Reporting.Browser/measure.js"));

    private IBrowser? _browser;

    public async Task InitializeAsync() => _browser = await Puppeteer.LaunchAsync(new LaunchOptions
    {
        Headless = true,
        ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") is { Length: > 0 } path ? path : "/usr/bin/chromium",

        // in a container everybody is root, and the browser's own walls cannot be built
        Args = ["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu", "--hide-scrollbars", "--force-color-profile=srgb"],
    });

    public Task DisposeAsync() => _browser?.CloseAsync() ?? Task.CompletedTask;

    /// <summary>Opens a report as a file from disk, as a reader does.</summary>
    internal async Task<OpenReport> OpenAsync(string report, int width = 1200, bool isDark = false, bool isPrint = false)
    {
        IPage page = await _browser!.NewPageAsync();
        OpenReport open = new(page);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = 900 });

        // both at once: either by itself takes the other back
        await page.Client.SendAsync("Emulation.setEmulatedMedia", new
        {
            media = isPrint ? "print" : "screen",
            features = new[] { new { name = "prefers-color-scheme", value = isDark ? "dark" : "light" } },
        });
        await page.EvaluateExpressionOnNewDocumentAsync("addEventListener('securitypolicyviolation', e => console.error('policy: ' + e.violatedDirective + ' ' + e.blockedURI))");
        await page.GoToAsync(new Uri(Reports.PathOf(report)).AbsoluteUri, WaitUntilNavigation.Load);
        await page.EvaluateExpressionAsync("document.fonts.ready.then(() => true)");
        await page.EvaluateExpressionAsync(s_script);
        return open;
    }
}

/// <summary>A report in the browser, and what it said in the console.</summary>
internal sealed class OpenReport : IAsyncDisposable
{
    private readonly List<string> _said = [];

    public OpenReport(IPage page)
    {
        Page = page;
        page.Console += (_, e) => _said.Add($"{e.Message.Type}: {e.Message.Text}");
        page.PageError += (_, e) => _said.Add($"error: {e.Message}");
        page.RequestFailed += (_, e) => _said.Add($"failed: {e.Request.Url[..Math.Min(80, e.Request.Url.Length)]}");
        page.Request += (_, e) => Requests.Add(e.Request.Url);
    }

    public IPage Page { get; }

    public IReadOnlyList<string> Said => _said;

    public List<string> Requests { get; } = [];

    public async ValueTask DisposeAsync() => await Page.CloseAsync();
}

[CollectionDefinition(nameof(Browser))]
public sealed class BrowserGroup : ICollectionFixture<Browser>;
