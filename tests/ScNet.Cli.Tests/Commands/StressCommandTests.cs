using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class StressCommandTests : IDisposable
{
    private static readonly string s_requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
    private static readonly string s_gears = RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml");

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Every_switch_of_a_ladder_blocks_a_rung()
    {
        // each switch sees 1/N: Seeman and Sanders, IEEE Trans. Power Electron. 23(2), 2008, from memory
        JsonNode rows = Rows("stress", "--family", "ladder 5", "--input-voltage", "3..5", "--format", "json");
        JsonNode[] switches = [.. rows.AsArray().Where(r => (string?)r!["kind"] == "switch" && (string?)r["scope"] == "modes").Select(r => r!)];
        Assert.Equal(10, switches.Length);
        Assert.All(switches, s => Assert.Equal(1, Math.Abs((double?)s["positive"]!["volts"] ?? (double)s["negative"]!["volts"]!), 12));
        Assert.All(switches, s => Assert.False((bool)s["blocksBothWays"]!));
    }

    [Fact]
    public void Rows_tell_modes_changes_and_each_change()
    {
        JsonNode rows = Rows("stress", s_gears, "--input-voltage", "2.8..4.2", "--rating", "1.8", "--format", "json");
        Dictionary<string, int> scopes = rows.AsArray().GroupBy(r => (string)r!["scope"]!).ToDictionary(g => g.Key, g => g.Count());
        Assert.Equal((11, 9, 33, 6), (scopes["modes"], scopes["changes"], scopes["mode"], scopes["change"]));
        JsonNode s5 = rows.AsArray().Single(r => (string?)r!["element"] == "s5" && (string?)r["scope"] == "changes")!;
        Assert.Equal(4.2, (double)s5["positive"]!["volts"]!, 12);
        Assert.Equal(("1/2", "1/3", "surge"), ((string)s5["positive"]!["from"]!, (string)s5["positive"]!["mode"]!, (string)s5["positive"]!["basis"]!));
        Assert.Equal(("needs-stack", 3), ((string)s5["rating"]!["outcome"]!, (int)s5["rating"]!["inSeries"]!));
        JsonNode phases = rows.AsArray().Single(r => (string?)r!["element"] == "s9" && (string?)r["mode"] == "1/3" && (string?)r["scope"] == "mode")!["phases"]!;
        Assert.Equal(["1/3", "2/3"], phases.AsArray().Select(p => (string?)p));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    public void Csv_has_the_same_rows_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        string[] lines = ToolRun.Of("stress", s_gears, "--input-voltage", "2.8..4.2", "--format", "csv").Output.Split('\n');
        Assert.StartsWith("file,converter,mode,status,scope,from,kind,element,positive.volts,", lines[0], StringComparison.Ordinal);
        Assert.Equal(61, lines.Length);
        Assert.Contains(",modes,,switch,s1,2.8,0.6666666666666666,1/3,,2,fixed,", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_is_shown_phase_by_phase_without_the_others()
    {
        ToolRun run = ToolRun.Of(new ToolSession { Width = 300 }, "stress", s_gears, "--input-voltage", "4.2", "--mode", "1/2");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("mode 1/2: stress at 4.2 V of input\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("switch  phase 1  phase 2\ns1            0      1/2\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("1/3", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Floating_nodes_are_marked_and_held_where_asked()
    {
        string rest = NetlistFolder.Half.Replace("[capacitors]", "[phases]\ncount = 3\n\n[capacitors]", StringComparison.Ordinal);
        string path = _folder.Write("rest.toml", rest);
        string leaking = ToolRun.Of("stress", path, "--input-voltage", "4").Output, held = ToolRun.Of("stress", path, "--input-voltage", "4", "--held").Output;
        Assert.Contains("0 to 1/2 (floating)", leaking, StringComparison.Ordinal);
        Assert.Contains("(floating): a side of the switch floats", leaking, StringComparison.Ordinal);
        Assert.DoesNotContain("0 to 1/2", held, StringComparison.Ordinal);
    }

    [Fact]
    public void Devices_of_a_process_are_named_with_their_stacks()
    {
        ToolRun run = ToolRun.Of("stress", RepositoryFiles.PathOf("docs", "examples", "half.toml"), "--input-voltage", "2.8..4.2", "--requirement", s_requirement);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("s1       n 1.2 V    2.1 V  1.2 V          2", run.Output, StringComparison.Ordinal);
        Assert.Contains("These devices withstand every voltage\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_element_that_no_kind_withstands_is_a_failure_with_the_stress_shown()
    {
        ToolRun run = ToolRun.Of("stress", RepositoryFiles.PathOf("docs", "examples", "half.toml"), "--input-voltage", "400", "--requirement", s_requirement);
        Assert.Equal(1, run.Code);
        Assert.Contains("error device-rating-exceeded: ", run.Error, StringComparison.Ordinal);
        Assert.Contains("s1         200 V  phase 2", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_without_result_and_a_missing_file_are_told_and_the_rest_is_done()
    {
        ToolRun run = ToolRun.Of("stress", _folder.Write("two.toml", NetlistFolder.TwoWays), _folder.PathOf("missing.toml"), "--input-voltage", "4", "--format", "json");
        Assert.Equal(1, run.Code);
        Assert.Contains("mode 'shorted': error input-shorted: ", run.Error, StringComparison.Ordinal);
        JsonNode rows = JsonNode.Parse(run.Output)!["rows"]!;
        Assert.Equal("error", (string)rows.AsArray()[^1]!["status"]!);
        Assert.Equal("file-unreadable", (string)rows.AsArray()[^1]!["diagnostics"]![0]!["code"]!);
        Assert.Contains(rows.AsArray(), r => (string?)r!["element"] == "s1");
    }

    [Theory]
    [InlineData("4..3")]
    [InlineData("0")]
    [InlineData("3..")]
    [InlineData("-2..4")]
    [InlineData("2,8")]
    public void A_range_that_is_none_is_wrong_usage(string range)
    {
        ToolRun run = ToolRun.Of("stress", "--family", "ladder 4", "--input-voltage", range);
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains($"after --input-voltage, such as 4.2, or a rising range such as 2.8..4.2, but got '{range}'.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_rating_and_a_process_at_once_are_wrong_usage() =>
        Assert.Equal(2, ToolRun.Of("stress", "--family", "ladder 4", "--input-voltage", "4", "--rating", "2", "--requirement", s_requirement).Code);

    [Fact]
    public void A_converter_of_very_many_modes_is_asked_for_one()
    {
        ToolRun run = ToolRun.Of("stress", "--family", "recursive 8", "--input-voltage", "4");
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal("recursive 8: Expected at most 128 modes, as every change between two is looked at, but 'Recursive 1/256 to 255/256' has 255. Ask for one with --mode, or leave some out.\n", run.Error);
    }

    private static JsonNode Rows(params string[] arguments)
    {
        ToolRun run = ToolRun.Of(arguments);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        return JsonNode.Parse(run.Output)!["rows"]!;
    }

    [Theory]
    [InlineData("stress --family=ladder_4 --input-voltage 3.6", "element", "switch")]
    [InlineData("gates --family=ladder_4 --input-voltage 3.6 --gate-voltage 1.8", "switch", "switch")]
    [InlineData("tolerances --family=ladder_4 --frequency 1e6,1e7 --capacitance 0.1", "hertz", "frequency")]
    public void Rows_are_sorted_by_a_heading_or_a_column_in_either_direction(string line, string column, string heading)
    {
        string[] command = [.. line.Split(' ').Select(word => word.Replace('_', ' '))];
        Assert.Contains($"by a heading: {heading}", System.Text.RegularExpressions.Regex.Replace(ToolRun.Of(command[0], "--help").Output, @"\s+", " "), StringComparison.Ordinal);
        string up = ToolRun.Of([.. command, "--sort", heading]).Output;
        Assert.Equal(up, ToolRun.Of([.. command, "--sort", column]).Output);
        Assert.NotEqual(up, ToolRun.Of([.. command, "--sort", heading, "--descending"]).Output);
        string[] csv = ToolRun.Of([.. command, "--sort", column, "--descending", "--format", "csv"]).Output.TrimEnd().Split('\n');
        int index = Array.IndexOf(csv[0].Split(','), column);
        string[] cells = [.. csv.Skip(1).Select(row => row.Split(',')[index]).Where(cell => cell.Length > 0)];
        Assert.True(cells.Distinct().Count() > 1);
        Assert.Equal(cells.OrderByDescending(c => c, StringComparer.Ordinal), cells);
    }
}
