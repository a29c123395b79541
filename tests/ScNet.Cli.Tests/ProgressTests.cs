namespace ScNet.Cli.Tests;

public sealed class ProgressTests : IDisposable
{
    private static readonly string s_requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
    private static readonly string s_gears = RepositoryFiles.PathOf("docs", "examples", "memory-gears.toml");

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string, string[]> Commands { get; } = new()
    {
        { "of the changes looked at", ["stress", s_gears, "--input-voltage", "4"] },
        { "solved", ["operate", s_gears, "--input-voltage", "4", "--load-current", "0.001", "--frequency", "1e6"] },
        { "swept", ["sweep", s_gears, "--frequency", "1e6,1e7"] },
        { "mapped", ["map", s_requirement, "--candidate", "Linear regulator", "--points", "3"] },
    };

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_terminal_shows_how_far_long_work_is_until_it_is_done_and_a_pipe_shows_nothing(string done, string[] arguments)
    {
        ToolRun plain = ToolRun.Of(arguments), terminal = ToolRun.Of(new ToolSession { ShowsProgress = true }, arguments);
        Assert.Equal((0, string.Empty), (plain.Code, plain.Error));
        Assert.Equal((0, plain.Output), (terminal.Code, terminal.Output));
        string[] states = [.. terminal.Error.Split('\r', StringSplitOptions.RemoveEmptyEntries).Where(s => s.Contains(done, StringComparison.Ordinal))];
        Assert.Contains(states, s => s.StartsWith($"100 % {done}", StringComparison.Ordinal));
        Assert.EndsWith("\r", terminal.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_is_told_once_the_line_is_wiped()
    {
        string[] arguments = ["operate", _folder.Write("two.toml", NetlistFolder.TwoWays), "--input-voltage", "4", "--load-current", "0.001", "--frequency", "1e6"];
        ToolRun plain = ToolRun.Of(arguments), terminal = ToolRun.Of(new ToolSession { ShowsProgress = true }, arguments);
        Assert.Equal(1, terminal.Code);
        Assert.NotEmpty(plain.Error);
        Assert.EndsWith("\r" + plain.Error, terminal.Error, StringComparison.Ordinal);
    }
}
