namespace ScNet.Cli.Tests;

public sealed class TerminalTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(false, null, "xterm", true)]
    [InlineData(false, "", null, true)]
    [InlineData(false, "1", "xterm", false)]
    [InlineData(false, null, "dumb", false)]
    [InlineData(true, null, "xterm", false)]
    public void Colour_is_for_terminals_that_know_it_and_users_who_want_it(bool isRedirected, string? noColour, string? term, bool expected) =>
        Assert.Equal(expected, Terminal.HasColour(isRedirected, noColour, term));

    [Fact]
    public void Headings_and_cautions_are_coloured_on_a_terminal_and_the_rest_is_the_same()
    {
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        ToolRun plain = ToolRun.Of("analyze", two), coloured = ToolRun.Of(new ToolSession { HasColour = true }, "analyze", two);
        Assert.Contains("\u001b[1mMode shorted\u001b[0m\n  \u001b[33mNo result:\u001b[0m\n", coloured.Output, StringComparison.Ordinal);
        Assert.Equal(plain.Output, System.Text.RegularExpressions.Regex.Replace(coloured.Output, "\u001b\\[[0-9]*m", string.Empty));
    }

    [Theory]
    [InlineData("a.toml(1,2): error syntax: Say error syntax: no.", "a.toml(1,2): \u001b[1;31merror\u001b[0m syntax: Say error syntax: no.")]
    [InlineData("a.toml: mode 'x': warning floating: no.", "a.toml: mode 'x': \u001b[1;33mwarning\u001b[0m floating: no.")]
    [InlineData("scnet: Expected one.", "\u001b[1;31mscnet\u001b[0m: Expected one.")]
    [InlineData("An error of rounding: none.", "An error of rounding: none.")]
    public void The_word_that_says_how_grave_a_message_is_stands_out(string message, string expected)
    {
        using StringWriter inner = new();
        using ColouredMessages error = new(inner) { NewLine = "\n" };
        error.WriteLine(message);
        Assert.Equal(expected + "\n", inner.ToString());
    }

    [Fact]
    public void A_wider_terminal_shows_a_table_in_fewer_pieces()
    {
        string[] narrow = ToolRun.Of(new ToolSession { Width = 60 }, "analyze", "--family", "ladder 4").Output.Split('\n');
        string[] wide = ToolRun.Of(new ToolSession { Width = 160 }, "analyze", "--family", "ladder 4").Output.Split('\n');
        Assert.All(narrow, line => Assert.InRange(line.Length, 0, 60));
        Assert.True(wide.Length < narrow.Length);
    }
}
