using System.Globalization;
using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class GatesCommandTests
{
    private static readonly string s_requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
    private static readonly string s_gears = RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml");

    [Fact]
    public void A_gate_level_is_the_source_and_the_drive_over_the_input_range()
    {
        ToolRun run = ToolRun.Of("gates", s_gears, "--input-voltage", "2.8..4.2", "--requirement", s_requirement, "--format", "json");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        JsonArray rows = JsonNode.Parse(run.Output)!["rows"]!.AsArray();
        Assert.Equal(22, rows.Count);
        foreach (JsonNode? row in rows.Where(r => (string?)r!["device"] == "n 1.2 V"))
        {
            // the invented kind is on at 1 V between gate and source, of either range end
            string[] source = ((string)row!["source"]!["maximumPerVoltOfInput"]!).Split('/');
            double share = double.Parse(source[0], CultureInfo.InvariantCulture) / (source.Length > 1 ? double.Parse(source[1], CultureInfo.InvariantCulture) : 1);
            Assert.Equal((share * 4.2) + 1, (double)row["gate"]!["maximumVolts"]!, 12);
            Assert.Equal((share * 2.8) + 1, (double)row["gate"]!["minimumVolts"]!, 12);
        }

        JsonNode s5 = rows.First(r => (string?)r!["switch"] == "s5")!;
        Assert.True((bool)s5["hasSupply"]!);
        Assert.Equal("vin", (string)s5["supplies"]![0]!["node"]!);
    }

    [Fact]
    public void A_mode_shows_its_phases_alone_and_csv_has_a_line_for_each()
    {
        string[] arguments = ["gates", s_gears, "--input-voltage", "4", "--requirement", s_requirement, "--mode", "1/3"];
        string text = ToolRun.Of(new ToolSession { Width = 300 }, arguments).Output;
        Assert.Contains("mode 1/3: gate drive at 4 V of input\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("1/2", text, StringComparison.Ordinal);
        string[] lines = ToolRun.Of([.. arguments, "--format", "csv"]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(8, lines.Length);
        Assert.All(lines[1..], l => Assert.Contains(",1/3,ok,s", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_process_there_is_nothing_to_drive() =>
        Assert.Equal((2, "scnet: Option '--requirement' is required.\nFor the options, run: scnet gates --help\n"), Usage(ToolRun.Of("gates", s_gears, "--input-voltage", "4")));

    [Fact]
    public void A_converter_that_no_kind_makes_fails_with_the_reason()
    {
        ToolRun run = ToolRun.Of("gates", s_gears, "--input-voltage", "400", "--requirement", s_requirement);
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Contains("error device-rating-exceeded: ", run.Error, StringComparison.Ordinal);
    }

    private static (int, string) Usage(ToolRun run) => (run.Code, run.Error);
}
