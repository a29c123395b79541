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
    public void Without_a_gate_voltage_there_is_nothing_to_drive_and_the_message_says_what_to_give() =>
        Assert.Equal(
            (2, "scnet: A gate lies above its source by the voltage that turns the switch on: expected --gate-voltage V, such as --gate-voltage 1.8, or --requirement FILE, whose process tells it.\nFor the options, run: scnet gates --help\n"),
            Usage(ToolRun.Of("gates", s_gears, "--input-voltage", "4")));

    // the source lies at the share of the input that the charge flow gives; an n-type gate above it, a p-type one below; stacks of 1.8 V
    [Fact]
    public void A_gate_voltage_and_a_rating_are_enough()
    {
        string[] arguments = ["gates", s_gears, "--input-voltage", "2.8..4.2", "--gate-voltage", "1.5"];
        JsonNode[] rows = Rows([.. arguments, "--rating", "1.8", "--p-type", "s1,s4"]), plain = Rows(arguments);
        Assert.Equal(22, rows.Length);
        foreach (JsonNode row in rows)
        {
            string[] source = ((string)row["source"]!["maximumPerVoltOfInput"]!).Split('/');
            double share = double.Parse(source[0], CultureInfo.InvariantCulture) / (source.Length > 1 ? double.Parse(source[1], CultureInfo.InvariantCulture) : 1);
            bool isP = (string?)row["switch"] is "s1" or "s4";
            Assert.Equal(isP ? "p-type" : "n-type", (string?)row["device"]);
            Assert.Equal((share * 4.2) + (isP ? -1.5 : 1.5), (double)row["gate"]!["maximumVolts"]!, 12);
            Assert.Equal((share * 2.8) + (isP ? -1.5 : 1.5), (double)row["gate"]!["minimumVolts"]!, 12);
        }

        // s5 lies between gnd and n1 = 2/3 of the input in phase 1 of the mode 1/3, and has three devices for the changes between modes
        JsonNode off = rows.First(r => (string?)r["switch"] == "s5")["offPhases"]![0]!;
        Assert.Equal([0, 4.2 * 2 / 9, 4.2 * 4 / 9], off["maximumVolts"]!.AsArray().Select(v => (double)v!), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.All(plain, r => Assert.Equal((1, 0), ((int)r["inSeries"]!, r["offPhases"]!.AsArray().Count)));

        // a gate that withstands less is served by fewer nodes
        Assert.True(Rows([.. arguments, "--gate-rating", "1.6"]).Sum(Supplies) < plain.Sum(Supplies));
        static int Supplies(JsonNode row) => row["supplies"]!.AsArray().Count;
        static JsonNode[] Rows(string[] arguments) => [.. JsonNode.Parse(ToolRun.Of([.. arguments, "--format", "json"]).Output)!["rows"]!.AsArray().Select(r => r!)];
    }

    [Theory]
    [InlineData("Expected --gate-voltage or --requirement, but got both.", "--gate-voltage", "1", "--requirement", "a.toml")]
    [InlineData("--rating, --gate-rating and --p-type belong to --gate-voltage: ", "--p-type", "s1", "--requirement", "a.toml")]
    [InlineData("Expected a --gate-rating of at least the --gate-voltage: ", "--gate-voltage", "1", "--gate-rating", "0.9")]
    public void Options_that_do_not_fit_are_refused_with_the_reason(string message, params string[] more)
    {
        ToolRun run = ToolRun.Of(["gates", s_gears, "--input-voltage", "4", .. more]);
        Assert.Equal(2, run.Code);
        Assert.Contains($"scnet: {message}", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_p_type_switch_that_is_not_there_is_named()
    {
        ToolRun run = ToolRun.Of("gates", "--family", "ladder 2", "--input-voltage", "4", "--gate-voltage", "1", "--p-type", "s1,top");
        Assert.Equal((1, "ladder 2: Expected names of switches after --p-type, but 'Ladder 2:1' has no switch 'top'. Its switches: s1, s2, s3, s4.\n"), (run.Code, run.Error));
    }

    [Fact]
    public void A_converter_that_no_kind_makes_fails_with_the_reason()
    {
        ToolRun run = ToolRun.Of("gates", s_gears, "--input-voltage", "400", "--requirement", s_requirement);
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Contains("error device-rating-exceeded: ", run.Error, StringComparison.Ordinal);
    }

    private static (int, string) Usage(ToolRun run) => (run.Code, run.Error);
}
