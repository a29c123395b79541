namespace ScNet.Cli.Tests.Commands;

public sealed class WorkingCommandTests : IDisposable
{
    private static readonly string s_third = RepositoryFiles.PathOf("docs", "examples", "series-parallel-3.toml");

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("markdown", "series-parallel-3.md")]
    [InlineData("latex", "series-parallel-3.tex")]
    public void The_worked_example_is_what_the_tool_prints(string format, string file)
    {
        ToolRun run = ToolRun.Of("working", s_third, "--format", format);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "worked", file)).ReplaceLineEndings("\n"), run.Output);
    }

    [Fact]
    public void Several_modes_follow_one_another_in_markdown_and_are_refused_in_latex()
    {
        string markdown = ToolRun.Of("working", "--family", "recursive 2").Output;
        Assert.Equal(3, markdown.Split("# Worked solution: ").Length - 1);
        ToolRun latex = ToolRun.Of("working", "--family", "recursive 2", "--format", "latex");
        Assert.Equal((1, string.Empty), (latex.Code, latex.Output));
        Assert.Equal("scnet: Expected one converter and mode for a document in LaTeX, but got 3. Name the mode: --mode \"1/4\".\n", latex.Error);
        Assert.Equal(0, ToolRun.Of("working", "--family", "recursive 2", "--format", "latex", "--mode", "1/4").Code);
    }

    [Fact]
    public void Two_files_of_one_mode_each_are_refused_in_latex()
    {
        ToolRun latex = ToolRun.Of("working", s_third, s_third, "--format", "latex");
        Assert.Equal((1, "scnet: Expected one converter and mode for a document in LaTeX, but got 2. Give one file.\n"), (latex.Code, latex.Error));
    }

    [Fact]
    public void A_mode_without_result_is_worked_to_where_it_fails_and_exits_with_1()
    {
        ToolRun run = ToolRun.Of("working", _folder.Write("two.toml", NetlistFolder.TwoWays), "--mode", "shorted");
        Assert.Equal(1, run.Code);
        Assert.Contains("Where it fails", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_converter_with_inductors_is_refused()
    {
        ToolRun run = ToolRun.Of("working", "--family", "inductive 1 3");
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal("inductive 1 3: Expected, for a worked solution, a converter of switches and capacitors, but it has inductors.\n", run.Error);
    }
}
