using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Design.Requirements;
using ScNet.Netlists;
using ScNet.Results;
using ScNet.Topologies;

namespace ScNet.Cli.Tests.Commands;

public sealed class AnalyzeCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_text_of_a_converter_with_two_modes_is_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("analyze", _folder.Write("two.toml", NetlistFolder.TwoWays));
        Assert.Equal(File.ReadAllText("Commands/analyze.expected.txt").ReplaceLineEndings("\n"), _folder.Layout(run.Output));
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void A_sound_file_exits_with_0()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("half.toml", NetlistFolder.Half));
        Assert.Equal(0, run.Code);
        Assert.Empty(run.Error);
        Assert.Contains("  Slow-switching limit  250 MΩ at 1 Hz, falling as 1/f: 250 Ω at 1 MHz\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Output);
        Assert.DoesNotContain('\r', run.Output);
    }

    [Fact]
    public void The_json_of_one_file_is_one_document_and_that_of_several_an_array()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        string expected = AnalysisDocument.ToJson(ConverterAnalysis.Of(NetlistReader.ReadFile(half).GetConverter())) + "\n";
        ToolRun one = ToolRun.Of("analyze", half, "--format", "json");
        ToolRun two = ToolRun.Of("analyze", "--format=json", half, half);
        Assert.Equal((0, 0), (one.Code, two.Code));
        Assert.Equal(expected, one.Output);
        JsonArray array = JsonNode.Parse(two.Output)!.AsArray();
        Assert.Equal(2, array.Count);
        Assert.All(array, d => Assert.True(JsonNode.DeepEquals(JsonNode.Parse(expected), d)));
    }

    [Fact]
    public void Only_the_mode_asked_for_is_analysed_and_counts_for_the_exit_code()
    {
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        ToolRun sound = ToolRun.Of("analyze", two, "--mode", "1/2");
        Assert.Equal(0, sound.Code);
        Assert.Contains("Mode 1/2\n", sound.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Mode shorted", sound.Output, StringComparison.Ordinal);
        ToolRun shorted = ToolRun.Of("analyze", two, "--mode", "shorted", "--format", "json");
        JsonNode? mode = Assert.Single(JsonNode.Parse(shorted.Output)!["modes"]!.AsArray());
        Assert.Equal(1, shorted.Code);
        Assert.Equal("error", (string?)mode!["status"]);
    }

    [Fact]
    public void A_mode_that_a_file_lacks_is_a_failure_that_names_those_it_has()
    {
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun text = ToolRun.Of("analyze", half, two, "--mode", "1/2");
        Assert.Equal(1, text.Code);
        Assert.Equal($"{half}: 'Half' has no mode '1/2'. Its modes: 'default'.", Assert.Single(text.ErrorLines));
        Assert.StartsWith("Two ways (", text.Output, StringComparison.Ordinal);
        ToolRun json = ToolRun.Of("analyze", half, "--mode", "1/2", "--format", "json");
        Assert.Equal(1, json.Code);
        Assert.Equal("Half", (string?)JsonNode.Parse(json.Output)!["converter"]);
        Assert.Empty(JsonNode.Parse(json.Output)!["modes"]!.AsArray());
    }

    [Fact]
    public void A_long_name_is_not_cut_and_a_name_of_several_lines_stays_on_one()
    {
        string longName = new('x', 500);
        string text = NetlistFolder.Half
            .Replace("s1 =", $"{longName} =", StringComparison.Ordinal)
            .Replace("s2 =", "\"two\\nlines\\u001B[31m\" =", StringComparison.Ordinal);
        ToolRun run = ToolRun.Of("analyze", _folder.Write("names.toml", text));
        Assert.Equal(0, run.Code);
        Assert.Equal(longName.Length, run.Output.Split('\n').Where(line => line.StartsWith("  xx", StringComparison.Ordinal)).Take(longName.Length / 39 + 1).Sum(line => line.Count(c => c == 'x')));
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        Assert.Contains("two\\u000Alines\\u001B[31m", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Output);
    }

    public static TheoryData<string> Families => [.. FamilyCatalogue.All.SelectMany(f => f.Name switch
    {
        "fraction" => new[] { "fraction 3 5", "fraction 5 4" },
        "inverter" => f.Usage.EndsWith('N') ? ["inverter 8"] : ["inverter 2 3"],
        "binary" or "recursive" => f.Usage.EndsWith('K') ? [$"{f.Name} 8 85"] : [$"{f.Name} 3"],
        "flying-capacitor" => ["flying-capacitor 8 3 5"],
        _ when f.Usage.EndsWith("P Q", StringComparison.Ordinal) => [$"{f.Name} 2 7"],
        _ => [$"{f.Name} 8", .. f.StepUpRatio is null ? Array.Empty<string>() : [$"{f.Name} 8 --step-up"]],
    }).Distinct()];

    [Theory]
    [MemberData(nameof(Families))]
    public void No_line_of_a_family_is_wider_than_100_columns(string family) => AssertNarrow(ToolRun.Of("analyze", "--family", family, "--frequency", "1e6"));

    [Fact]
    public void No_line_of_an_example_is_wider_than_100_columns()
    {
        string[] files = [.. Directory.GetFiles(RepositoryFiles.PathOf("docs/examples"), "*.toml").Where(f => !f.EndsWith("requirement.toml", StringComparison.Ordinal))];
        Assert.NotEmpty(files);
        AssertNarrow(ToolRun.Of(["analyze", .. files, "--frequency", "1e5..1e7:3"]));
    }

    private static void AssertNarrow(ToolRun run)
    {
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.True(run.Output.Length > 500);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void Standard_input_is_a_netlist_that_is_called_so()
    {
        ToolRun run = ToolRun.WithInput(NetlistFolder.Half, "analyze", "-");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.StartsWith("Half (standard input)\n", run.Output, StringComparison.Ordinal);
        ToolRun wrong = ToolRun.WithInput("name = 3", "analyze", "-");
        Assert.Equal((1, string.Empty), (wrong.Code, wrong.Output));
        Assert.All(wrong.ErrorLines, line => Assert.StartsWith("standard input(", line, StringComparison.Ordinal));
    }

    [Fact]
    public void Frequencies_give_the_output_impedance_in_both_forms()
    {
        using CultureScope scope = new("de-DE");
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        string[] arguments = ["analyze", two, "--frequency", "1e6,2.5e8"];
        ToolRun text = ToolRun.Of(arguments);
        Assert.Contains(File.ReadAllText("Commands/impedance.expected.txt").ReplaceLineEndings("\n"), text.Output, StringComparison.Ordinal);
        JsonArray modes = JsonNode.Parse(ToolRun.Of([.. arguments, "--format", "json"]).Output)!["modes"]!.AsArray();
        Assert.Equal([1e6, 2.5e8], modes[0]!["outputImpedance"]!.AsArray().Select(p => (double)p!["hertz"]!));
        Assert.True(modes[1]!.AsObject().ContainsKey("outputImpedance"));
        Assert.Null(modes[1]!["outputImpedance"]);
    }

    [Fact]
    public void The_schema_is_that_of_the_library()
    {
        foreach ((string[] arguments, string schema) in new[]
        {
            (new[] { "schema" }, NetlistReader.JsonSchema), (["schema", "netlist"], NetlistReader.JsonSchema), (["schema", "requirement"], RequirementReader.JsonSchema),
        })
        {
            ToolRun run = ToolRun.Of(arguments);
            Assert.Equal(0, run.Code);
            Assert.True(JsonNode.DeepEquals(JsonNode.Parse(schema), JsonNode.Parse(run.Output)));
        }
    }
}
