using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Search.Pages;

namespace ScNet.Cli.Tests.Commands;

public sealed class FindCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    [InlineData("fa-IR")]
    public void The_text_is_the_same_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun found = ToolRun.Of("find", "--ratio", "1/3", "--capacitors", "2"), inverted = ToolRun.Of("find", "--ratio", "-1/2", "--capacitors", "2", "--switch-voltage", "0.75");
        Assert.Equal((0, string.Empty), (found.Code, found.Error));
        Assert.Equal((1, string.Empty), (inverted.Code, inverted.Error));
        GoldenFile.Is(found.Output + inverted.Output, "tests", "ScNet.Cli.Tests", "Commands", "find.expected.txt");
        Assert.All(found.Output.Split('\n'), line => Assert.True(line.Length <= 100, line));
    }

    [Fact]
    public void None_ends_with_code_1_and_says_why_in_every_form()
    {
        string[] none = ["find", "--ratio", "3/7"];
        ToolRun text = ToolRun.Of(none), json = ToolRun.Of([.. none, "--format", "json"]), csv = ToolRun.Of([.. none, "--format", "csv"]), toml = ToolRun.Of([.. none, "--format", "toml"]);
        Assert.Equal([1, 1, 1, 1], new[] { text, json, csv, toml }.Select(r => r.Code));
        const string statement = "No two-phase network of up to 3 flying capacitors makes 3/7.";
        Assert.Contains(statement, text.Output, StringComparison.Ordinal);
        JsonNode conditions = JsonNode.Parse(json.Output)!["conditions"]!;
        Assert.Equal(statement, (string?)conditions["statement"]);
        Assert.Equal("The nearest that is made: 2/5 below, 1/2 above.", (string?)conditions["reasons"]![1]);
        Assert.Equal(string.Join(',', FindTable.Columns) + "\n", csv.Output);
        Assert.Equal(string.Empty, toml.Output);
        Assert.Contains(statement, toml.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_phases_are_found_beside_two_where_they_are_asked_for()
    {
        Assert.Equal(1, ToolRun.Of("find", "--ratio", "1/4", "--capacitors", "2").Code);
        ToolRun three = ToolRun.Of("find", "--ratio", "1/4", "--capacitors", "2", "--phases", "3", "--format", "json");
        JsonNode document = JsonNode.Parse(three.Output)!, network = Assert.Single(document["rows"]!.AsArray())!;
        Assert.Equal((0, 3, 3), (three.Code, (int)document["conditions"]!["phaseCount"]!, (int)network["phaseCount"]!));
        Assert.Equal(3, network["phases"]!.AsArray().Count);
        Assert.Single(document["conditions"]!["unproved"]!.AsArray());
        ToolRun both = ToolRun.Of("find", "--ratio", "1/3", "--capacitors", "2", "--phases", "3");
        Assert.Matches(@"1-3-c2-s6-\w+ +1/3  2  3  6(.|\n)*1-3-c2-s7-\w+ +1/3  2  2  7", ToolRun.Of("find", "--ratio", "1/3", "--capacitors", "2", "--phases", "3", "--objective", "switches").Output);
        Assert.Contains("phase 3", both.Output, StringComparison.Ordinal);
        ToolRun large = ToolRun.Of("find", "--ratio", "1/4", "--capacitors", "5", "--phases", "3");
        Assert.NotEqual(0, large.Code);
        Assert.Contains("Expected at most 4 after --capacitors with --phases 3, but got 5.", large.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_holds_exact_measures_the_wirings_and_every_switch()
    {
        JsonNode document = JsonNode.Parse(ToolRun.Of("find", "--ratio", "1/3", "--capacitors", "2", "--objective", "capacitor-product", "--format", "json").Output)!;
        JsonNode conditions = document["conditions"]!, best = document["rows"]![0]!;
        Assert.Equal(("1/3", "1/3", 2, 2), ((string?)conditions["lowestRatio"], (string?)conditions["highestRatio"], (int)conditions["capacitorCount"]!, (int)conditions["foundCount"]!));
        Assert.Null(conditions["mostSwitches"]);
        Assert.Equal("2/3", (string?)best["capacitorChargeVoltage"]);
        Assert.Equal("series-parallel 3", (string?)best["families"]![0]);
        Assert.Equal(2, best["phases"]!.AsArray().Count);
        Assert.Equal((int)best["switchCount"]!, best["switches"]!.AsArray().Count);
    }

    [Fact]
    public void Rows_stand_in_the_order_asked_for_and_only_so_many_are_listed()
    {
        string[] arguments = ["find", "--ratio", "1/3..1/2", "--format", "csv"];
        string[] all = ToolRun.Of([.. arguments, "--list", "100"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.True(all.Length > 4);
        Assert.Equal(all[..4], ToolRun.Of([.. arguments, "--list", "3"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        string[] sorted = [.. ToolRun.Of([.. arguments, "--list", "100", "--sort", "swing", "--descending"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)];
        int swing = FindTable.Columns.ToList().IndexOf("plateSwing");
        double[] swings = [.. sorted.Select(l => double.Parse(l.Split(',')[swing], System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal(swings.OrderDescending(), swings);
        Assert.Equal(all.Skip(1).Order(), sorted.Order());
    }

    [Fact]
    public void Netlists_are_written_under_the_names_listed_and_read_again()
    {
        string folder = _folder.PathOf("found");
        ToolRun run = ToolRun.Of("find", "--ratio", "2/5", "--netlists", folder, "--farads", "2e-9", "--format", "csv");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        string[] names = [.. run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(',')[0])];
        Assert.Equal(names.Order(StringComparer.Ordinal), Directory.GetFiles(folder).Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal));
        Assert.All(names, name =>
        {
            Converter converter = NetlistReader.ReadFile(Path.Combine(folder, $"{name}.toml")).GetConverter();
            Assert.Equal("2/5", $"{ModeAnalysis.Of(converter).Ratio}");
            Assert.All(converter.Capacitors, c => Assert.Equal(2e-9, c.Farads));
        });
        Assert.Equal(File.ReadAllText(Path.Combine(folder, $"{names[0]}.toml")), ToolRun.Of("find", "--ratio", "0.4", "--farads", "2e-9", "--format", "toml").Output);
    }

    /// <summary>docs/guide/finding-networks.md shows commands and below them what they print.</summary>
    [Fact]
    public void The_guide_shows_what_the_tool_prints()
    {
        string[] blocks = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "finding-networks.md")).ReplaceLineEndings("\n").Split("```\n");
        int shown = 0;
        for (int b = 0; b + 2 < blocks.Length; b++)
        {
            if (blocks[b].StartsWith("scnet find ", StringComparison.Ordinal) && blocks[b + 1] == "\n")
            {
                shown++;
                Assert.Equal(ToolRun.Of([.. blocks[b].TrimEnd('\n').Split(' ').Skip(1)]).Output, blocks[b + 2]);
            }
        }

        Assert.Equal(3, shown);
    }

    [Theory]
    [InlineData("Expected a ratio after --ratio, such as 2/5 or 0.4, or a rising range such as 1/3..1/2, but got '1/2..1/3'.", "--ratio", "1/2..1/3")]
    [InlineData("Expected a ratio after --ratio, such as 2/5 or 0.4, or a rising range such as 1/3..1/2, but got '1/0'.", "--ratio", "1/0")]
    [InlineData("Expected a positive share after --switch-voltage, such as 2/5 or 0.4, but got '0'.", "--ratio", "1/2", "--switch-voltage", "0")]
    [InlineData("Expected a whole number from 1 to 8 after --capacitors, but got '9'.", "--ratio", "1/2", "--capacitors", "9")]
    [InlineData("Expected one of switch-product, capacitor-product, switches, switch-voltage, capacitor-voltage, swing, slow-limit, fast-limit after --objective, but got 'size'.", "--ratio", "1/2", "--objective", "size")]
    public void What_is_wrong_with_the_options_is_told(string message, params string[] options)
    {
        ToolRun run = ToolRun.Of(["find", .. options]);
        Assert.Equal((2, string.Empty, $"scnet: {message}"), (run.Code, run.Output, run.ErrorLines[0]));
    }

    [Fact]
    public void A_long_search_says_on_a_terminal_how_far_it_is()
    {
        ToolRun run = ToolRun.Of(new ToolSession { ShowsProgress = true }, "find", "--ratio", "1/2", "--capacitors", "2");
        Assert.Equal(0, run.Code);
        Assert.Contains("100 % searched", run.Error, StringComparison.Ordinal);
    }
}
