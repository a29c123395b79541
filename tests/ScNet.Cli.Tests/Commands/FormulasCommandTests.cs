using System.Text.Json.Nodes;
using System.Xml.Linq;
using ScNet.Derivations.Expressions;

namespace ScNet.Cli.Tests.Commands;

public sealed class FormulasCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Json_has_every_formula_as_text_latex_and_mathml()
    {
        ToolRun run = ToolRun.Of("formulas", _folder.Write("third.toml", NetlistFolder.Third), "--equal", "--format", "json");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        JsonArray rows = JsonNode.Parse(run.Output)!["rows"]!.AsArray();
        JsonNode slow = rows.Single(r => (string?)r!["quantity"] == "R_SSL")!;

        // (n-1)/n² per C and f for n : 1 in series and parallel: Seeman and Sanders, IEEE Trans. Power Electron. 23(2), 2008, from memory
        Assert.Equal(Expression.Parse("2/(9*C*f)"), Expression.Parse((string)slow["text"]!));
        Assert.Equal("R_{\\mathrm{SSL}} = \\frac{2}{9\\,C\\,f}", (string)slow["latex"]!);
        Assert.All(rows, r => Assert.Equal("math", XElement.Parse((string)r!["mathml"]!).Name.LocalName));
        Assert.Equal(15, rows.Count);
    }

    [Fact]
    public void Latex_is_a_display_for_each_mode_and_mathml_an_element_on_each_line()
    {
        string gears = RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml");
        string latex = ToolRun.Of("formulas", gears, "--format", "latex").Output;
        Assert.Equal(3, latex.Split("\\begin{gather*}\n").Length - 1);
        Assert.Equal(3, latex.Split("\n\\end{gather*}\n").Length - 1);
        Assert.DoesNotContain("\\\\\n\\end", latex, StringComparison.Ordinal);
        string[] lines = ToolRun.Of("formulas", gears, "--format", "mathml", "--mode", "1/3").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(17, lines.Length);
        Assert.All(lines, l => Assert.Equal("math", XElement.Parse(l).Name.LocalName));
    }

    [Fact]
    public void What_depends_on_the_duties_is_added_where_asked_for()
    {
        string[] arguments = ["formulas", "--family", "inductive-up 1 3"];
        Assert.DoesNotContain("D2", ToolRun.Of(arguments).Output, StringComparison.Ordinal);
        Assert.Contains("  Functions of the duties\n    M       1/D2\n    i_coil  I_out/D2\n", ToolRun.Of([.. arguments, "--duties"]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_has_no_closed_form_is_told_with_its_reason()
    {
        string two = NetlistFolder.Half.Replace("fly =", "other = { between = [\"p\", \"n\"], farads = 3e-9 }\nfly =", StringComparison.Ordinal);
        string path = _folder.Write("two.toml", two);
        ToolRun run = ToolRun.Of(new ToolSession { Width = 300 }, "formulas", path);
        Assert.Equal(0, run.Code);
        Assert.Contains("Component values decide the charge of 'other', 'fly': no closed form with fractions exists for R_SSL.\n", run.Output, StringComparison.Ordinal);
        string csv = ToolRun.Of("formulas", path, "--format", "csv").Output;
        Assert.Contains(",closed-form,R_SSL,,\"Component values decide", csv, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mode_without_result_and_an_unreadable_file_fail_and_the_rest_is_shown()
    {
        ToolRun run = ToolRun.Of("formulas", _folder.Write("two.toml", NetlistFolder.TwoWays), _folder.PathOf("missing.toml"), "--format", "json");
        Assert.Equal(1, run.Code);
        JsonArray rows = JsonNode.Parse(run.Output)!["rows"]!.AsArray();
        Assert.Contains(rows, r => (string?)r!["mode"] == "1/2" && (string?)r["quantity"] == "M" && (string?)r["text"] == "1/2");
        Assert.Equal(2, rows.Count(r => (string?)r!["status"] == "error"));
    }
}
