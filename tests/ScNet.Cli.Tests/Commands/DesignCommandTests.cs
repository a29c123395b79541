using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class DesignCommandTests : IDisposable
{
    // two candidates, so that it is quick
    private const string Few =
        """

        [[candidates]]
        family = "linear"

        [[candidates]]
        family = "ladder-fed"
        sizes  = 2

        [[candidates]]
        family = "series-parallel"
        sizes  = 4
        """;

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    // .ci/run holds the text alone, printed by the README's command
    [Fact]
    [Trait("Length", "Long")]
    public void The_result_of_the_example_is_the_one_that_stands_beside_it()
    {
        string netlist = _folder.PathOf("winner.toml");
        ToolRun text = ToolRun.Of("design", Example, "--netlist", netlist);
        Assert.Equal((0, string.Empty), (text.Code, text.Error));
        Assert.Equal(Result("result.txt"), text.Output);
        Assert.Equal(Result("winner.toml"), File.ReadAllText(netlist));
        Assert.Equal(Result("result.json"), ToolRun.Of("design", Example, "--format", "json", "--threads", "1").Output);
        Assert.Equal(Result("result.csv"), ToolRun.Of("design", Example, "--format", "csv", "--threads", "5").Output);
    }

    [Fact]
    public void The_example_ranks_at_least_15_candidates_of_all_classes()
    {
        JsonNode[] rows = [.. JsonNode.Parse(Result("result.json"))!["rows"]!.AsArray().Select(r => r!)];
        Assert.True(rows.Length >= 15);
        Assert.Equal(
            ["hybrid", "inductive", "linear", "switchedCapacitor"],
            rows.Where(r => (string?)r["status"] == "ranked").Select(r => (string)r["kind"]!).Distinct().Order());
    }

    [Fact]
    public void The_netlist_of_any_ranked_candidate_is_written_and_reads_back()
    {
        string netlist = _folder.PathOf("fed.toml");
        ToolRun run = ToolRun.Of("design", Short(), "--netlist", netlist, "--candidate", "Ladder 2:1 before an inductor");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(0, ToolRun.Of("analyze", netlist).Code);
        ToolRun none = ToolRun.Of("design", Short(), "--netlist", netlist, "--candidate", "Series-parallel 4:1");
        Assert.Equal(1, none.Code);
        Assert.StartsWith("There is no ranked candidate 'Series-parallel 4:1'.", none.Error, StringComparison.Ordinal);
        Assert.Equal("'Linear regulator' has no netlist.\n", ToolRun.Of("design", Short(), "--netlist", netlist, "--candidate", "Linear regulator").Error);
    }

    [Fact]
    public void Areas_of_some_square_micrometres_are_shown_in_these()
    {
        string[] lines = ToolRun.Of("design", OnlyOf("[[candidates]]\nfamily = \"dickson\"\nsizes = 3\n")).Output.Split('\n');
        string[] sizes = [.. lines.Where(l => l.Contains("µm wide", StringComparison.Ordinal))];
        Assert.NotEmpty(sizes);
        Assert.All(sizes, l => Assert.Matches(@"  ([1-9]\d* µm²|0\.00[1-9]\d mm²|0\.0[1-9]\d\d mm²)$", l));
        Assert.Contains(sizes, l => l.EndsWith(" µm²", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_not_worked_out_when_it_was_stopped_is_named()
    {
        using CancellationTokenSource stop = new();
        stop.Cancel();
        using StringWriter output = new(), error = new();
        Assert.Equal(1, Tool.Run(["design", Short()], new ToolSession { Output = output, Error = error, CancellationToken = stop.Token }));
        Assert.Contains("Stopped before these were worked out\n  Linear regulator; Ladder 2:1 before an inductor; Series-parallel 4:1\n", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Which_assumption_would_change_the_winner_is_told_on_request()
    {
        string[] lines = ToolRun.Of("design", OnlyOf("[[candidates]]\nfamilies = [\"linear\", \"inductive\"]\n"), "--sensitivity").Output.Split('\n');
        string[] table = lines[Array.FindIndex(lines, l => l.StartsWith("What would change the winner", StringComparison.Ordinal))..];
        Assert.Contains(table, l => l.StartsWith("  gate charge", StringComparison.Ordinal) && l.EndsWith("the same", StringComparison.Ordinal));
        Assert.Contains(table, l => l.StartsWith("  time in sleep", StringComparison.Ordinal));
    }

    [Fact]
    public void Mistakes_of_the_requirement_and_of_its_candidates_are_told()
    {
        ToolRun missing = ToolRun.Of("design", _folder.PathOf("missing.toml"));
        Assert.Equal((1, string.Empty), (missing.Code, missing.Output));
        Assert.Contains("file-unreadable", missing.Error, StringComparison.Ordinal);
        ToolRun unknown = ToolRun.Of("design", Short("\n[[candidates]]\nfamily = \"laddre\"\n"));
        Assert.Equal(1, unknown.Code);
        Assert.Contains("laddre", unknown.Error, StringComparison.Ordinal);
        Assert.Contains("1  Ladder 2:1 before an inductor", unknown.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Progress_says_how_long_it_may_still_take()
    {
        using StringWriter terminal = new();
        SteppedTime time = new();
        using (ProgressLine line = new(terminal, "worked out", time))
        {
            time.Seconds = 10;
            line.Report(0.25);
            time.Seconds = 300;
            line.Report(0.5);
            line.Report(1);
        }

        Assert.Equal(
            "\r 25 % worked out, about 30 s left\r 50 % worked out, about 5 min left\r100 % worked out                  \r" + new string(' ', 34) + "\r",
            terminal.ToString());
    }

    private static string Example => RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");

    private static string Result(string file) => File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "core-design", file)).ReplaceLineEndings("\n");

    private string Short(string more = "") => OnlyOf(Few + more);

    // the example with other candidates
    private string OnlyOf(string candidates)
    {
        string text = File.ReadAllText(Example).ReplaceLineEndings("\n");
        return _folder.Write("short.toml", text[..text.IndexOf("# every sort", StringComparison.Ordinal)] + candidates);
    }

    private sealed class SteppedTime : TimeProvider
    {
        public long Seconds { get; set; }

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Seconds;
    }
}
