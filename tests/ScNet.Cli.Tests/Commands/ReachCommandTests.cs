using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class ReachCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_text_is_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("reach", Bridge(), "--patterns");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(File.ReadAllText("Commands/reach.expected.txt").ReplaceLineEndings("\n"), _folder.Relative(run.Output));
    }

    [Fact]
    public void Without_patterns_only_the_ratios_are_shown()
    {
        string[] with = ToolRun.Of("reach", Bridge(), "--patterns").Output.Split('\n'), without = ToolRun.Of("reach", Bridge()).Output.Split('\n');
        Assert.Equal(with[..8], without[..8]);
        Assert.DoesNotContain(without, line => line.Contains("s1", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    public void The_csv_has_a_line_per_ratio(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("reach", Bridge(), "--format", "csv", "--patterns");
        string[] lines = _folder.Relative(run.Output).Split('\n');
        Assert.Equal(
            "file,converter,ratio,patternCount" + string.Concat(new[] { "bestBySlowLimit", "bestByFastLimit", "bestByStress" }.Select(best =>
                $",{best}.slowSwitchingLimit.ohmsAtOneHertz,{best}.fastSwitchingLimit.ohms,{best}.peakBlocking,{best}.undeterminedSwitchCount,{best}.pattern")),
            lines[0]);
        Assert.Equal(6, lines.Length);
        Assert.StartsWith("@/bridge.toml,Bridge,0.5,4,", lines[2], StringComparison.Ordinal);
        Assert.Equal(3, lines[2].Split(",1,0,\"s1 [2], s2 [1], s5 [2], s6 [1]\"").Length - 1);
        Assert.DoesNotContain("pattern,", ToolRun.Of("reach", Bridge(), "--format", "csv").Output.Split('\n')[0], StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_holds_exact_ratios_and_the_phases_of_each_switch()
    {
        JsonNode document = JsonNode.Parse(ToolRun.Of("reach", Bridge(), "--format", "json", "--patterns").Output)!;
        JsonNode rows = document["rows"]!;
        Assert.Equal((6, 4096), ((int)document["conditions"]!["switchCount"]!, (int)document["conditions"]!["patternCount"]!));
        Assert.All(rows.AsArray(), r => Assert.Equal("Bridge", (string?)r!["converter"]));
        Assert.Equal(["-1", "1/2", "1", "2"], rows.AsArray().Select(r => (string?)r!["ratio"]));
        JsonNode half = rows[1]!["bestByStress"]!;
        Assert.Equal("1", ((string?)half["peakBlocking"])!.TrimStart('-'));
        Assert.Equal(2.0, (double)half["fastSwitchingLimit"]!["ohms"]!, 12);
        Assert.True(JsonNode.DeepEquals(
            JsonNode.Parse("""{ "s1": [2], "s2": [1], "s3": [], "s4": [], "s5": [2], "s6": [1] }"""), half["on"]));
        JsonNode plain = JsonNode.Parse(ToolRun.Of("reach", Bridge(), "--format", "json").Output)!;
        Assert.False(plain["rows"]![1]!["bestByStress"]!.AsObject().ContainsKey("on"));
    }

    [Fact]
    public void A_converter_that_cannot_be_searched_fails_with_every_reason()
    {
        string switches = string.Concat(Enumerable.Range(7, 11).Select(i => $"\ns{i} = {{ between = [\"p\", \"gnd\"], on = 3 }}"));
        string path = _folder.Write("large.toml", "load = \"current\"\nphases.count = 3\n" + NetlistFolder.Bridge + switches);
        ToolRun run = ToolRun.Of("reach", path);
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal(
            [
                "@/large.toml: Expected, for the search of reachable ratios, a converter of two phases, but it has 3.",
                "@/large.toml: Expected, for the search of reachable ratios, a converter of a stiff load, but it has a current load.",
                "@/large.toml: Expected, for the search of reachable ratios, a converter of at most 16 switches, but it has 17.",
            ],
            run.ErrorLines.Select(_folder.Relative));
    }

    [Fact]
    public void A_file_that_cannot_be_read_fails()
    {
        ToolRun run = ToolRun.Of("reach", _folder.PathOf("missing.toml"));
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Contains("error file-unreadable: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void Switches_that_reach_no_ratio_are_said_to()
    {
        string path = _folder.Write("none.toml", "name = \"None\"\ninput = \"vin\"\noutput = \"vout\"\n[switches]\na = { between = [\"vin\", \"x\"], on = 1 }\nb = { between = [\"vout\", \"y\"], on = 1 }\n");
        ToolRun run = ToolRun.Of("reach", path);
        Assert.Equal((0, "None (@/none.toml)\n2 switches, 16 gate patterns in two phases, 0 ratios\n"), (run.Code, _folder.Relative(run.Output)));
    }

    [Fact]
    public void Progress_goes_to_a_terminal_only_and_is_wiped()
    {
        using StringWriter output = new(), error = new();
        Assert.Equal(0, Tool.Run(["reach", Bridge()], new ToolSession { Output = output, Error = error, ShowsProgress = true }));
        // which part is done first is for the threads to decide
        Assert.Matches(@"^\r *\d+ % searched", error.ToString());
        Assert.Matches("\r100 % searched *\r *\r$", error.ToString());
    }

    [Fact]
    public void Progress_never_goes_back()
    {
        using StringWriter terminal = new();
        using (ProgressLine progress = new(terminal))
        {
            foreach (double value in new[] { 0.5, 0.2, 0.505, 0.51 })
            {
                progress.Report(value);
            }
        }

        Assert.Equal("\r 50 % searched\r 51 % searched\r              \r", terminal.ToString());
    }

    private string Bridge() => _folder.Write("bridge.toml", NetlistFolder.Bridge);
}
