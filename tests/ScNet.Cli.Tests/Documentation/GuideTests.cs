using System.Text.Json.Nodes;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Tests.Documentation;

/// <summary>The pages of docs/guide show what the tool prints.</summary>
public sealed class GuideTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_analysis_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("half.toml", NetlistFolder.Half));
        string output = _folder.Relative(run.Output).Replace("@/", string.Empty, StringComparison.Ordinal);
        Assert.Contains($"```\n{output}```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_comparison_of_the_command_line_page_is_what_the_tool_prints()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        string third = _folder.Write("third.toml", NetlistFolder.Third);
        ToolRun run = ToolRun.Of("compare", half, third, "--input-voltage", "3.6", "--rating", "1.8");
        string table = string.Join('\n', run.Output.Split('\n').Take(9));
        Assert.Contains($"```\n{table}\n```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_impedance_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("half.toml", NetlistFolder.Half), "--frequency", "1e7..1e9:3");
        string table = run.Output[run.Output.IndexOf("  Output impedance:", StringComparison.Ordinal)..];
        Assert.Contains($"```\n{table}```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_sweep_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of("sweep", _folder.Write("half.toml", NetlistFolder.Half), "--frequency", "1e7..1e9:3");
        string block = GuidePage("command-line.md").Split("```\n").Single(b => b.StartsWith("file,", StringComparison.Ordinal) && b.Contains(",norm254Ohms,", StringComparison.Ordinal));
        string[] expected = block.Split('\n'), actual = _folder.Relative(run.Output).Replace("@/", string.Empty, StringComparison.Ordinal).Split('\n');
        Assert.Equal(expected[0], actual[0]);
        Assert.Equal(expected.Length, actual.Length);

        // the impedances are doubles and may differ in their last digits
        foreach ((string e, string a) in expected.Zip(actual).Where(p => p.First.Length > 0).Skip(1))
        {
            Assert.Equal(e.Split(',')[..4], a.Split(',')[..4]);
            Assert.Equal(Numbers(e), Numbers(a), (x, y) => Math.Abs(x - y) <= 1e-9 * x);
        }
    }

    [Fact]
    public void The_operating_point_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of(
            "operate", _folder.Write("half.toml", NetlistFolder.Half), "--input-voltage", "3.6", "--load-current", "0.02", "--frequency", "2e7");
        string output = _folder.Relative(run.Output).Replace("@/", string.Empty, StringComparison.Ordinal);
        Assert.Contains($"```\n{output}```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_families_of_the_command_line_page_are_what_the_tool_prints() =>
        Assert.Contains($"```\n{ToolRun.Of("family").Output.Split("\n\nFor the ")[0]}\n```\n", GuidePage("command-line.md"), StringComparison.Ordinal);

    [Fact]
    public void The_comparison_at_equal_silicon_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of(
            "compare", "--family", "ladder 4", "--family", "dickson 4", "--family", "series-parallel 4", "--input-voltage", "4.2", "--rating", "1.8", "--silicon");
        string table = string.Join('\n', run.Output.Split('\n').Take(11));
        Assert.Contains($"```\n{table}\n```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_reachable_ratios_of_the_command_line_page_are_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of("reach", _folder.Write("bridge.toml", NetlistFolder.Bridge), "--patterns");
        string output = _folder.Relative(run.Output).Replace("@/", string.Empty, StringComparison.Ordinal);
        Assert.Contains($"```\n{output}```\n", GuidePage("command-line.md"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--silicon")]
    [InlineData("--sort=ratio")]
    public void The_comparison_of_all_examples_is_no_wider_than_100_columns(string option)
    {
        string[] files = [.. Directory.GetFiles(RepositoryFiles.PathOf("docs/examples"), "*.toml").Where(f => !f.EndsWith("requirement.toml", StringComparison.Ordinal))];
        Assert.NotEmpty(files);
        ToolRun run = ToolRun.Of(["compare", .. files, "--input-voltage", "4.2", "--rating", "1.8", option]);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));

        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void The_sweep_of_operating_points_of_the_command_line_page_is_what_the_tool_prints()
    {
        ToolRun run = ToolRun.Of("sweep", "--family", "inductive 1 4", "--input-voltage", "4", "--load-current", "0..0.01:2", "--duty", "0.25,0.5", "--frequency", "1e6");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        string[] expected = GuidePage("command-line.md").Split("```\n").Single(b => b.StartsWith("file,", StringComparison.Ordinal) && b.Contains(",duty,", StringComparison.Ordinal)).Split('\n');
        string[] actual = run.Output.Split('\n');
        Assert.Equal(expected[0], actual[0]);
        Assert.Equal(expected.Select(l => string.Join(',', l.Split(',').Take(8))), actual.Select(l => string.Join(',', l.Split(',').Take(8))));
    }

    [Fact]
    public void Every_heading_is_told_with_its_column_of_the_csv_output()
    {
        PageColumn[] columns =
        [
            .. ComparisonPage.Columns(), .. ComparisonPage.Columns(hasSilicon: true, hasLoad: true, hasBudgets: true).Where(c => c.Key is not null),
            .. OperationPage.Columns, .. ReachPage.Columns, .. ChoicePage.Columns, .. SweepPage.OperationColumns, .. SweepPage.ImpedanceColumns.Where(c => c.Key is not null),
        ];
        string[] told = [.. GuidePage("command-line.md").Split("| heading | in JSON and CSV |\n|---|---|\n")[1].Split('\n').TakeWhile(line => line.Length > 0)];
        Assert.Equal(told.Order(StringComparer.Ordinal), columns.Select(c => $"| {c.Heading} | `{c.Key}` |").Distinct().Order(StringComparer.Ordinal));
        Assert.Equal(told.Length, columns.Select(c => c.Heading).Distinct().Count());
        Assert.All(ReachPage.Columns, c => Assert.Contains(c.Key, ResultTable.ReachColumns));
        Assert.All(ChoicePage.Columns, c => Assert.Contains(c.Key, ResultTable.ChoiceColumns));
        Assert.All(OperationPage.Columns, c => Assert.Contains(c.Key, ResultTable.OperationColumns));
    }

    [Fact]
    public void The_documents_of_the_analysis_document_page_are_what_the_tool_prints()
    {
        string[] blocks = [.. GuidePage("analysis-document.md").Split("```json\n").Skip(1).Select(b => b.Split("```")[0])];
        ToolRun half = ToolRun.Of("analyze", _folder.Write("half.toml", NetlistFolder.Half), "--format", "json");
        ToolRun missing = ToolRun.Of("analyze", "nothing.toml", "--format", "json");
        Assert.Equal(2, blocks.Length);
        AssertSame(blocks[0], half.Output);
        Assert.Equal(blocks[1], missing.Output);
    }

    private static double[] Numbers(string line) =>
        [.. line.Split(',')[4..].Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))];

    // the impedance is a double and may differ in its last digit
    private static void AssertSame(string expected, string actual)
    {
        JsonNode[] documents = [.. new[] { expected, actual }.Select(text => JsonNode.Parse(text)!)];
        foreach (JsonNode limit in documents.Select(d => d["modes"]![0]!["slowSwitchingLimit"]!))
        {
            limit["ohmsAtOneHertz"] = Math.Round((double)limit["ohmsAtOneHertz"]!, 3);
        }

        Assert.Equal(documents[0].ToJsonString(), documents[1].ToJsonString());
    }

    private static string GuidePage(string name) => File.ReadAllText(Path.Combine(RepositoryFiles.PathOf("docs/guide"), name)).ReplaceLineEndings("\n");
}
