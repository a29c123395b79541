using System.Text.Json.Nodes;

namespace ScNet.Cli.Tests.Commands;

public sealed class DifferenceCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_netlist_and_its_snapshot_do_not_differ()
    {
        string half = Half();
        string snapshot = _folder.Write("half.json", ToolRun.Of("analyze", half, "--format", "json").Output);
        ToolRun run = ToolRun.Of("difference", snapshot, half);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal("@/half.json and @/half.toml: no difference\n", _folder.Relative(run.Output));
    }

    [Fact]
    public void A_change_is_shown_by_how_much_and_exits_with_1()
    {
        string after = _folder.Write("after.toml", NetlistFolder.Half.Replace("1e-9", "2e-9", StringComparison.Ordinal));
        ToolRun run = ToolRun.Of("difference", Half(), after);
        Assert.Equal((1, string.Empty), (run.Code, run.Error));
        Assert.Contains("slow-switching limit at 1 Hz  250000000 Ω  125000000 Ω", run.Output, StringComparison.Ordinal);
        JsonNode document = JsonNode.Parse(ToolRun.Of("difference", Half(), after, "--format", "json").Output)!;
        Assert.False((bool)document["conditions"]!["isEmpty"]!);
        Assert.Equal(-50, (double)document["rows"]![0]!["percent"]!, 9);
        Assert.Equal(0, ToolRun.Of("difference", Half(), after, "--tolerance", "0.6").Code);
    }

    [Fact]
    public void What_is_new_and_gone_is_told_as_such()
    {
        ToolRun run = ToolRun.Of("difference", Half(), _folder.Write("third.toml", NetlistFolder.Third), "--format", "csv");
        Assert.Equal(1, run.Code);
        Assert.Contains("\ndefault,fly,fly,gone,,,,\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("\ndefault,c1,c1,new,,,,\n", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing.json", "There is no such file. Save one with: scnet analyze FILE --format json > ")]
    [InlineData("missing.toml", "error file-unreadable: ")]
    [InlineData("broken.json", "error syntax: ")]
    [InlineData("other.json", "error wrong-value: ")]
    public void What_cannot_be_compared_exits_with_2(string name, string message)
    {
        _folder.Write("broken.json", "{ \"converter\": ");
        _folder.Write("other.json", "{ \"converter\": null }");
        ToolRun run = ToolRun.Of("difference", Half(), _folder.PathOf(name));
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    private string Half() => _folder.Write("half.toml", NetlistFolder.Half);
}
