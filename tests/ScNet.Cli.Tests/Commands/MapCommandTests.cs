using System.Text.Json.Nodes;
using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Tests.Commands;

public sealed class MapCommandTests
{
    private static readonly string s_requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");

    // one table for each output and load
    private static int Tables { get; } = Count(RequirementReader.ReadFile(s_requirement).GetRequirement());

    [Fact]
    public void A_map_of_the_linear_regulator_is_output_over_input()
    {
        ToolRun run = ToolRun.Of("map", s_requirement, "--candidate", Candidate.Linear.Name, "--points", "3", "--format", "csv");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        string[] lines = run.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(1 + (3 * Tables), lines.Length);
        string[] header = lines[0].Split(',');
        int linear = Array.IndexOf(header, "linearEfficiency"), ideal = Array.IndexOf(header, "idealEfficiency");
        Assert.All(lines[1..], line => Assert.Equal(line.Split(',')[linear], line.Split(',')[ideal]));
        JsonNode document = JsonNode.Parse(ToolRun.Of("map", s_requirement, "--candidate", Candidate.Linear.Name, "--points", "3", "--format", "json").Output)!;
        Assert.Equal(3 * Tables, document["rows"]!.AsArray().Count);
        Assert.Equal(1, (double)document["conditions"]!["heldShare"]!);
    }

    [Fact]
    public void The_text_has_a_table_per_output_and_load_and_what_it_comes_to()
    {
        string text = ToolRun.Of("map", s_requirement, "--candidate", Candidate.Linear.Name, "--points", "2").Output;
        Assert.Equal(Tables, text.Split('\n').Count(l => l.Contains("best mode", StringComparison.Ordinal)));
        Assert.Contains("\n800 mV at 2 mA\n", text, StringComparison.Ordinal);
        Assert.Contains("19.05 %", text, StringComparison.Ordinal); // 4.2 V to 0.8 V; common practice, no source
        Assert.Contains("\n  100.00 % of the points are held, every point is held\n", text, StringComparison.Ordinal);
        Assert.Contains("\n  over the discharge: ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_of_each_table_are_sorted_by_the_headings_shown_in_either_direction()
    {
        using NetlistFolder folder = new();
        string requirement = folder.Write("one-load.toml", OneLoad());
        int tables = Count(RequirementReader.ReadFile(requirement).GetRequirement());
        Assert.True(tables > 1 && tables < Tables, $"{tables} tables");
        string[] map = ["map", requirement, "--candidate", Candidate.Linear.Name, "--points", "3"];
        string usual = ToolRun.Of(map).Output;
        Assert.Equal(Inputs(usual), Inputs(ToolRun.Of([.. map, "--sort", "input"]).Output));

        // a linear regulator wastes least at the lowest input; common practice, no source
        Assert.Equal(Inputs(usual), Inputs(ToolRun.Of([.. map, "--sort", "linear", "--descending"]).Output));
        Assert.Equal(Inputs(usual).Chunk(3).SelectMany(table => table.Reverse()), Inputs(ToolRun.Of([.. map, "--sort", "linear"]).Output));
        Assert.Equal(3 * tables, Inputs(usual).Length);
        foreach (PageColumn column in MapPage.Columns.Where(c => c.Key is { } key && ResultTable.MapColumns.Contains(key)))
        {
            string[] csv = ToolRun.Of([.. map, "--format", "csv", "--sort", column.Heading]).Output.Split('\n');
            Assert.Equal(csv, ToolRun.Of([.. map, "--format", "csv", "--sort", column.Key!]).Output.Split('\n'));
        }
    }

    [Fact]
    public void What_is_not_there_is_named()
    {
        ToolRun none = ToolRun.Of("map", s_requirement, "--candidate", "nobody");
        Assert.Equal(1, none.Code);
        Assert.StartsWith("There is no candidate 'nobody'. The candidates: ", none.Error, StringComparison.Ordinal);
        Assert.Equal(1, ToolRun.Of("map", "missing.toml").Code);
        Assert.Contains("from 2 to 10000 after --points, but got '1'", ToolRun.Of("map", s_requirement, "--points", "1").Error, StringComparison.Ordinal);
    }

    // the example with one of its loads, so that it is quick
    private static string OneLoad()
    {
        string text = File.ReadAllText(s_requirement).ReplaceLineEndings("\n");
        int loads = text.IndexOf("[[loads]]", StringComparison.Ordinal), process = text.IndexOf("[process]", StringComparison.Ordinal);
        return $"{text[..loads]}[[loads]]\nname = \"active\"\namperes = 2e-3\nshare = 1.0\noutput_volts = 0.8\n\n{text[process..]}";
    }

    // the first cells of the rows of tables
    private static string[] Inputs(string text) => [.. text.Split('\n').Where(l => l.StartsWith("  ", StringComparison.Ordinal) && l.Contains('%', StringComparison.Ordinal) && l.Contains(" V ", StringComparison.Ordinal)).Select(l => l[..7])];

    private static int Count(Requirement requirement) =>
        requirement.OutputVolts.Concat(requirement.Loads.Select(l => l.OutputVolts).OfType<double>()).Distinct().Count() * requirement.Loads.Select(l => l.Amperes).Distinct().Count();
}
