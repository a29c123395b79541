using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class CheckCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public CheckCommandTests() => _folder.Write("third.toml", NetlistFolder.Third);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_right_derivation_exits_with_0()
    {
        ToolRun run = ToolRun.Of("check", Document("ratio = \"1/3\"\n[charges]\nc1 = [\"1/3\", \"-1/3\"]"));
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal("Third (@/mine.toml): right, 3 statements\n", _folder.Relative(run.Output));
    }

    [Fact]
    public void A_wrong_one_exits_with_1_and_says_what_it_breaks()
    {
        ToolRun run = ToolRun.Of("check", Document("[charges]\nc1 = [\"1/3\", \"-1/6\"]"));
        Assert.Equal((1, string.Empty), (run.Code, run.Error));
        Assert.Equal(
            """
            Third (@/mine.toml): wrong, 1 of 2 statements

              charge of c1 in phase 2
                stated     -1/6
                derived    -1/3
                breaks     balance of c1: 1/3 + (-1/6) leaves 1/6
                conflicts  with charge of c1 in phase 1 = 1/3
                slip       too small by a factor of 2

            """.ReplaceLineEndings("\n"),
            _folder.Relative(run.Output));
    }

    [Fact]
    public void A_wrong_formula_is_told_term_by_term()
    {
        ToolRun run = ToolRun.Of("check", Document("[formulas]\nslow_switching_limit = \"1/(9*C_c1*f)\"\nfast_switching_limit = \"7/9*R\""));
        Assert.Equal(1, run.Code);
        Assert.Contains("    missing  1/(9·C_c2·f)\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("    slip     not divided by the duties, or too small by a factor of 2\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_and_csv_have_a_row_per_statement()
    {
        string path = Document("ratio = \"1/2\"\n[formulas]\noutput_voltage = \"V_in/3\"");
        JsonArray rows = JsonNode.Parse(ToolRun.Of("check", path, "--format", "json").Output)!["rows"]!.AsArray();
        Assert.Equal(["wrong", "right"], rows.Select(r => (string?)r!["verdict"]));
        Assert.Equal(("1/2", "1/3"), ((string)rows[0]!["stated"]!, (string)rows[0]!["derived"]!));
        Assert.Equal("1/3·V_in", (string)rows[1]!["derived"]!);
        Assert.Equal(3, ToolRun.Of("check", path, "--format", "csv").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public void Another_netlist_can_be_put_in_the_place_of_the_named_one()
    {
        string path = Document("ratio = \"1/2\"");
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        Assert.Equal(1, ToolRun.Of("check", path).Code);
        Assert.Equal(0, ToolRun.Of("check", path, "--netlist", half).Code);
    }

    [Fact]
    public void What_cannot_be_read_is_told_with_its_line_and_the_others_are_checked()
    {
        string wrong = _folder.Write("wrong.toml", "format = 1\nnetlist = \"third.toml\"\n[charges]\nc9 = [1, 2]\n");
        ToolRun run = ToolRun.Of("check", wrong, Document("ratio = \"1/3\""), "--format", "json");
        Assert.Equal(1, run.Code);
        Assert.Equal("@/wrong.toml(4,1): error wrong-value: There is no capacitor or switch 'c9' for [charges]. Did you mean 'c1'?\n", _folder.Relative(run.Error));
        JsonArray rows = JsonNode.Parse(run.Output)!["rows"]!.AsArray();
        Assert.Equal(["error", "ok"], rows.Select(r => (string?)r!["status"]));
        Assert.Equal(4, (int)rows[0]!["diagnostics"]![0]!["line"]!);
    }

    [Fact]
    public void A_derivation_may_come_from_standard_input()
    {
        ToolRun run = ToolRun.WithInput("format = 1\nratio = \"1/3\"\n", "check", "-", "--netlist", _folder.PathOf("third.toml"));
        Assert.Equal((0, "Third (standard input): right, 1 statement\n", string.Empty), (run.Code, run.Output, run.Error));
    }

    private string Document(string statements) => _folder.Write("mine.toml", $"format = 1\nnetlist = \"third.toml\"\n{statements}\n");
}
