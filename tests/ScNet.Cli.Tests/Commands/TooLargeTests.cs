using System.Text.Json.Nodes;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Cli.Tests.Commands;

/// <summary>A mode whose steady state is too large is an error of that mode; other modes and files are still done.</summary>
public sealed class TooLargeTests : IDisposable
{
    private const string Code = "steady-state-too-large";

    private readonly NetlistFolder _folder = new();
    private readonly string _large;
    private readonly string _half;

    public TooLargeTests()
    {
        // a current load holds all loops together
        _large = _folder.Write("large.toml", NetlistWriter.ToToml(Ladder.StepDown(1200, load: LoadKind.Current)));
        _half = _folder.Write("half.toml", NetlistFolder.Half);
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("sweep", "--frequency", "1e6")]
    [InlineData("sweep", "--frequency", "1e6", "--format", "json")]
    [InlineData("operate", "--frequency", "1e6", "--input-voltage", "2", "--load-current", "1")]
    [InlineData("operate", "--frequency", "1e6", "--input-voltage", "2", "--load-current", "1", "--format", "json")]
    [InlineData("operate", "--frequency", "1e6", "--input-voltage", "2", "--load-current", "1", "--format", "csv")]
    public void A_mode_too_large_is_an_error_and_the_other_file_is_done(string command, params string[] options)
    {
        ToolRun run = ToolRun.Of([command, _large, _half, .. options]);
        Assert.Equal(Tool.Failure, run.Code);
        string line = Assert.Single(run.ErrorLines);
        Assert.StartsWith($"{_large}: mode 'default': error {Code}: ", line, StringComparison.Ordinal);
        Assert.Contains("Half", run.Output, StringComparison.Ordinal);
        Assert.Equal(Tool.Success, ToolRun.Of([command, _half, .. options]).Code);
    }

    [Theory]
    [InlineData("sweep", "--frequency", "1e6")]
    [InlineData("operate", "--frequency", "1e6", "--input-voltage", "2", "--load-current", "1")]
    public void Rows_for_programs_carry_the_error_in_their_place(string command, params string[] options)
    {
        JsonArray rows = JsonNode.Parse(ToolRun.Of([command, _large, _half, .. options, "--format", "json"]).Output)!["rows"]!.AsArray();
        Assert.Equal(["error", "ok"], rows.Select(r => (string?)r!["status"]));
        Assert.Equal(Code, (string?)Assert.Single(rows[0]!["diagnostics"]!.AsArray())!["code"]);
    }

    [Fact]
    public void An_operating_point_for_people_says_in_its_place_that_it_is_refused()
    {
        string output = ToolRun.Of("operate", _large, _half, "--frequency", "1e6", "--input-voltage", "2", "--load-current", "1").Output;
        Assert.Contains("No result", output, StringComparison.Ordinal);
        Assert.Contains(Code, output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_analysis_keeps_its_other_results_and_says_in_the_place_of_the_impedance_that_it_is_refused()
    {
        ToolRun run = ToolRun.Of("analyze", _large, _half, "--frequency", "1e6");
        Assert.Equal(Tool.Failure, run.Code);
        Assert.Contains("Output impedance  no result", run.Output, StringComparison.Ordinal);
        Assert.Contains(Code, run.Output, StringComparison.Ordinal);
        Assert.Contains("1/1200", run.Output, StringComparison.Ordinal);
        Assert.Contains("250 Ω", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_document_of_an_analysis_has_an_error_and_no_impedance_beside_its_other_results()
    {
        ToolRun run = ToolRun.Of("analyze", _large, _half, "--frequency", "1e6", "--format", "json");
        Assert.Equal(Tool.Failure, run.Code);
        JsonNode[] modes = [.. JsonNode.Parse(run.Output)!.AsArray().Select(d => d!["modes"]![0]!)];
        Assert.Equal(["error", "ok"], modes.Select(m => (string?)m["status"]));
        Assert.Equal(Code, (string?)Assert.Single(modes[0]["diagnostics"]!.AsArray())!["code"]);
        Assert.Null(modes[0]["outputImpedance"]);
        Assert.Equal("1/1200", (string?)modes[0]["ratio"]);
        Assert.Equal(1e6, (double)modes[1]["outputImpedance"]![0]!["hertz"]!);
        Assert.Equal(Tool.Success, ToolRun.Of("analyze", _large, "--format", "json").Code);
    }
}
