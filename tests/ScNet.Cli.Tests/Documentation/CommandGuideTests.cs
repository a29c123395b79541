namespace ScNet.Cli.Tests.Documentation;

/// <summary>Where docs/guide/command-line.md shows a command and below it what is printed, the tool prints that.</summary>
public sealed class CommandGuideTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public static TheoryData<string> Shown =>
    [
        "scnet stress memory-gears.toml --input-voltage 2.8..4.2 --rating 1.8",
        "scnet gates half.toml --input-voltage 2.8..4.2 --requirement core-requirement.toml",
        "scnet tolerances half.toml --frequency 1e6..1e8:3 --capacitance 0.2 --on-resistance 0.3",
        "scnet overlay --family \"series-parallel 3\" --family \"series-parallel 2\" --name Gears --format text",
        "scnet formulas half.toml --equal",
        "scnet check derivations/series-parallel-3.toml",
        "scnet difference half.toml half-new.toml",
    ];

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Shown))]
    public void What_is_shown_is_what_the_tool_prints(string command)
    {
        string half = File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "half.toml"));
        _folder.Write("half-new.toml", half.Replace("4e-9", "8e-9", StringComparison.Ordinal));
        string[] words = [.. command.Split('"').SelectMany((part, i) => i % 2 == 1 ? [part] : part.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Skip(1)];
        ToolRun run = ToolRun.Of([.. words.Select(PathOf)]);
        Assert.Empty(run.Error);
        string output = words.Aggregate(OnOneLine(run.Output), (text, word) => text.Replace(PathOf(word), word, StringComparison.Ordinal));
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "command-line.md")).ReplaceLineEndings("\n");
        Assert.Contains($"```\n{command}\n```\n\n```\n{output}```\n", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_command_has_a_row()
    {
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "command-line.md")).ReplaceLineEndings("\n");
        string[] commands = [.. ToolRun.Of("complete", "--", string.Empty).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)];
        Assert.True(commands.Length > 15);
        Assert.All(commands, c => Assert.Contains($"| `scnet {c}", page, StringComparison.Ordinal));
    }

    // the title with the paths of this machine may go on below
    private static string OnOneLine(string output)
    {
        int end = output.IndexOf('\n', StringComparison.Ordinal);
        while (output.AsSpan(end).StartsWith("\n    ", StringComparison.Ordinal))
        {
            output = string.Concat(output.AsSpan(0, end), " ", output.AsSpan(end + 5));
            end = output.IndexOf('\n', StringComparison.Ordinal);
        }

        return output;
    }

    private string PathOf(string word) => word == "half-new.toml" ? _folder.PathOf(word)
        : word.EndsWith(".toml", StringComparison.Ordinal) ? RepositoryFiles.PathOf(["docs", "examples", .. word.Split('/')])
        : word;
}
