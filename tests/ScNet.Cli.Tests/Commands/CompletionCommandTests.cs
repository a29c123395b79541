using System.Diagnostics;

namespace ScNet.Cli.Tests.Commands;

public sealed class CompletionCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("analyze", "an")]
    [InlineData("compare completion", "comp")]
    [InlineData("--family --format --frequency", "sweep", "--f")]
    [InlineData("csv json text", "compare", "--format", "")]
    [InlineData("--format=json", "compare", "--format=j")]
    [InlineData("efficiency", "map", "--sort", "e")]
    [InlineData("json", "compare", "--format", "=", "j")]
    [InlineData("csv json text", "compare", "--format", "=")]
    [InlineData("dickson doubler", "stress", "--family", "d")]
    [InlineData("derivation netlist requirement", "schema", "")]
    [InlineData("bash", "completion", "b")]
    [InlineData("", "analyze", "half")]
    [InlineData("", "compare", "--input-voltage", "")]
    public void The_last_word_becomes_what_the_command_line_takes_there(string expected, params string[] words) =>
        Assert.Equal(expected.Split(' ', StringSplitOptions.RemoveEmptyEntries), Of(words));

    [Fact]
    public void The_modes_are_those_of_the_netlists_before()
    {
        string gears = RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml");
        Assert.Equal(["1/2", "1/3", "2/3"], Of("stress", gears, "--mode", ""));
        Assert.Empty(Of("stress", _folder.PathOf("missing.toml"), "--mode", ""));
    }

    [Fact]
    public void It_is_in_no_list_of_commands()
    {
        Assert.DoesNotContain("complete", Of(string.Empty));
        Assert.DoesNotContain("  complete ", ToolRun.Of("--help").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    [InlineData("powershell")]
    public void Every_shell_has_a_script_that_says_how_to_load_it(string shell)
    {
        ToolRun run = ToolRun.Of("completion", shell);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains($"scnet completion {shell}", run.Output, StringComparison.Ordinal);
        Assert.Contains("complete --", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_shell_is_wrong_usage()
    {
        ToolRun run = ToolRun.Of("completion", "tea");
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains("Expected bash or zsh or fish or powershell, but got 'tea'.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bash_completes_with_the_script()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        _folder.Write("half.toml", NetlistFolder.Half.Replace("on = 1", "on = []", StringComparison.Ordinal));
        _folder.Write("two ways.toml", NetlistFolder.TwoWays);
        string tool = _folder.Write("scnet", $"#!/bin/bash\nexec dotnet '{typeof(Tool).Assembly.Location}' \"$@\"\n");
        File.SetUnixFileMode(tool, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        _folder.Write("try.sh", """
            source <(scnet completion bash)
            try() { COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); COMPREPLY=(); _scnet; printf '%s|' "${COMPREPLY[@]}"; echo; }
            try scnet sw
            try scnet stress --family dic
            try scnet analyze "two ways.toml" --mode ""
            complete -p scnet
            """);
        ProcessStartInfo start = new("bash", ["try.sh"]) { WorkingDirectory = _folder.Folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["PATH"] = $"{_folder.Folder}:{Environment.GetEnvironmentVariable("PATH")}";
        using Process bash = Process.Start(start)!;
        string output = await bash.StandardOutput.ReadToEndAsync(), error = await bash.StandardError.ReadToEndAsync();
        await bash.WaitForExitAsync();
        Assert.Equal((string.Empty, "sweep|\ndickson|\n1/2|shorted|\ncomplete -o default -F _scnet scnet\n"), (error, output));
    }

    private static string[] Of(params string[] words) =>
        ToolRun.Of(["complete", "--", .. words]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
}
