using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Netlists;

namespace ScNet.Cli.Tests.Commands;

public sealed class OverlayCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_netlist_that_is_printed_has_a_mode_with_the_ratio_of_each_network()
    {
        ToolRun run = ToolRun.Of(
            "overlay", _folder.Write("half.toml", NetlistFolder.Half), _folder.Write("third.toml", NetlistFolder.Third), "--family", "series-parallel 3 --step-up",
            "--name", "Gears", "--farads", "2e-9", "--ohms", "3");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Converter gears = NetlistReader.Read(run.Output).GetConverter();
        Assert.Equal("Gears", gears.Name);
        Assert.Equal(["Half: 1/2", "Third: 1/3", "Series-parallel 1:3: 3"], ConverterAnalysis.Of(gears).Results.Select(m => $"{m.Mode}: {m.Ratio}"));
        Assert.All(gears.Capacitors, c => Assert.Equal(2e-9, c.Farads));
        Assert.All(gears.Switches, s => Assert.Equal(3, s.Ohms));
        Assert.True(gears.Switches.Count < 4 + 7 + 7);
    }

    [Fact]
    public void Json_and_csv_have_a_row_per_network()
    {
        string[] arguments = ["overlay", "--family", "series-parallel 3", "--family", "series-parallel 2"];
        JsonNode document = JsonNode.Parse(ToolRun.Of([.. arguments, "--format", "json"]).Output)!;
        Assert.Equal((8, 11, 2), ((int)document["conditions"]!["switchCount"]!, (int)document["conditions"]!["separateSwitchCount"]!, (int)document["conditions"]!["capacitorCount"]!));
        Assert.Equal(["1/3", "1/2"], document["rows"]!.AsArray().Select(r => (string?)r!["ratio"]));
        Assert.Equal(8, document["rows"]![0]!["on"]!.AsObject().Count);
        Assert.Equal(
            "converter,mode,status,ratio,closedSwitchCount\nOverlay,Series-parallel 3:1,ok,0.3333333333333333,7\nOverlay,Series-parallel 2:1,ok,0.5,4\n",
            ToolRun.Of([.. arguments, "--format", "csv"]).Output);
    }

    [Fact]
    public void Networks_that_cannot_be_laid_are_refused_with_every_reason()
    {
        ToolRun run = ToolRun.Of("overlay", "--family", "series-parallel 3", "--family", "series-parallel 3", "--family", "binary 2", "--family", "inductive 1 3");
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Equal(5, run.ErrorLines.Length);
        Assert.Contains("series-parallel 3: Expected, for an overlay, a network of a name of its own", run.ErrorLines[0], StringComparison.Ordinal);
        Assert.Contains("binary 2: Expected, for an overlay, a network of one mode, but it has 3", run.ErrorLines[1], StringComparison.Ordinal);
        Assert.Contains("inductive 1 3: Expected, for an overlay, a network of switches and capacitors, but it has inductors.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_cannot_be_read_leaves_nothing_to_lay()
    {
        ToolRun run = ToolRun.Of("overlay", _folder.PathOf("missing.toml"), "--family", "ladder 3");
        Assert.Equal((1, string.Empty), (run.Code, run.Output));
        Assert.Contains("error file-unreadable: ", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }
}
