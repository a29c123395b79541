using System.Text.RegularExpressions;

namespace ScNet.Cli.Tests.Documentation;

/// <summary>The tutorial of the shell shows what the tool prints, its commands run in docs/examples.</summary>
public sealed partial class TutorialTests
{
    public static TheoryData<string, string> Commands
    {
        get
        {
            TheoryData<string, string> commands = [];
            foreach (Match match in Block().Matches(File.ReadAllText(RepositoryFiles.PathOf("docs", "tutorials", "shell.md")).ReplaceLineEndings("\n")))
            {
                commands.Add(match.Groups["command"].Value, match.Groups["output"].Value);
            }

            return commands;
        }
    }

    [Fact]
    public void There_are_commands_with_their_output() => Assert.True(Commands.Count >= 2);

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_command_of_the_tutorial_prints_what_stands_below_it(string command, string output)
    {
        string examples = RepositoryFiles.PathOf("docs", "examples") + Path.DirectorySeparatorChar;
        string[] arguments = [.. command.Split(' ').Select(a => a.EndsWith(".toml", StringComparison.Ordinal) ? examples + a : a)];
        ToolRun run = ToolRun.Of(arguments);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(output, run.Output.Replace(examples, string.Empty, StringComparison.Ordinal));
    }

    [GeneratedRegex(@"^```sh\nscnet (?<command>[^\n]+)\n```\n\n```text\n(?<output>.*?)^```$", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
