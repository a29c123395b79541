namespace ScNet.Cli.Tests.Commands;

public sealed class ReportCommandTests : IDisposable
{
    private static readonly string s_half = RepositoryFiles.PathOf("docs/examples/half.toml");
    private static readonly string s_requirement = RepositoryFiles.PathOf("docs/examples/core-requirement.toml");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scnet-report-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void One_netlist_gives_a_report_of_the_converter_with_what_is_asked_for()
    {
        string file = Path.Combine(_folder.FullName, "report.html");
        ToolRun run = ToolRun.Of("report", s_half, "--requirement", s_requirement, "--load-current", "0.005", "--frequency", "5e6", "--date", "2031-05-04", "--output", file);
        Assert.Equal((0, string.Empty, string.Empty), (run.Code, run.Output, run.Error));
        string html = File.ReadAllText(file);
        Assert.All(
            ["<h1>Half</h1>", "2031-05-04", ">Stress</h2>", ">At an operating point</h2>", "Loss: gate drive"],
            text => Assert.Contains(text, html, StringComparison.Ordinal));
    }

    [Fact]
    public void Several_netlists_and_families_give_a_comparison_on_standard_output_too()
    {
        ToolRun run = ToolRun.Of("report", s_half, "--family", "ladder 3", "--input-voltage", "3.6", "--rating", "1.2", "--output", "-");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("<!DOCTYPE html>\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("Report of a comparison", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Netlist_comes_from_standard_input_too()
    {
        ToolRun run = ToolRun.WithInput(File.ReadAllText(s_half), "report", "-", "--output", "-");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("<h1>Half</h1>", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Expected at least one FILE or --family, or --requirement for the report of a design.", "--output", "-")]
    [InlineData("An operating point needs --input-voltage, --load-current and --frequency.", "x.toml", "--load-current", "1", "--output", "-")]
    [InlineData("A comparison needs --input-voltage and --rating.", "x.toml", "y.toml", "--output", "-")]
    [InlineData("--sensitivity belongs to the report of a design, of a requirement alone.", "x.toml", "--sensitivity", "--output", "-")]
    [InlineData("Expected a day after --date, such as 2031-05-04, but got 'today'.", "x.toml", "--date", "today", "--output", "-")]
    [InlineData("Option '--output' is required.", "x.toml")]
    public void Wrong_usage_is_told(string message, params string[] arguments)
    {
        ToolRun run = ToolRun.Of(["report", .. arguments]);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void File_that_cannot_be_read_gives_no_report()
    {
        string file = Path.Combine(_folder.FullName, "report.html");
        ToolRun run = ToolRun.Of("report", Path.Combine(_folder.FullName, "missing.toml"), "--output", file);
        Assert.Equal(1, run.Code);
        Assert.Single(run.ErrorLines);
        Assert.False(File.Exists(file));
    }
}
