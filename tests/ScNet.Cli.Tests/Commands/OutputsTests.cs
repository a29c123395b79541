namespace ScNet.Cli.Tests.Commands;

/// <summary>What the tool says of converters with several outputs.</summary>
public sealed class OutputsTests : IDisposable
{
    private const string TwoRails =
        """
        name = "Two rails"
        input = "vin"
        output = "vout"

        [capacitors]
        fly = { between = ["p", "n"], farads = 1e-6 }
        alone = { between = ["x", "gnd"], farads = 1e-6 }

        [outputs]
        drive = { between = ["p", "n"] }
        lost = { between = ["x", "gnd"] }

        [switches]
        s1 = { between = ["vin", "p"], ohms = 2.0, on = 1 }
        s2 = { between = ["n", "vout"], ohms = 2.0, on = 1 }
        s3 = { between = ["p", "vout"], ohms = 2.0, on = 2 }
        s4 = { between = ["n", "gnd"], ohms = 2.0, on = 2 }
        """;

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_analysis_shows_every_output_and_says_which_carries_nothing()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("rails.toml", TwoRails), "--frequency", "1e6");
        Assert.Equal(0, run.Code);
        string[] lines = run.Output.Split('\n');
        Assert.Contains(lines, l => l.StartsWith("  Outputs: ratio in V per V of input; fall of each per ampere", StringComparison.Ordinal));
        Assert.Contains(lines, l => Cells(l) is ["drive", "p", "n", "1/2", "(0.5)", ..] cells && cells[^1] == "?");
        Assert.Contains(lines, l => Cells(l) is ["lost", "x", "gnd", "?", "?", ..]);
        Assert.Contains(lines, l => Cells(l) is ["1", "MHz", "drive", "0.5", "0.5", ..]);
        Assert.Contains("No flow delivers charge to the further output 'lost'", run.Output, StringComparison.Ordinal);
        Assert.Contains("The further output 'lost' is left out of the periodic solution", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_said_of_outputs_where_there_is_one()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("half.toml", NetlistFolder.Half), "--frequency", "1e6");
        Assert.Equal(0, run.Code);
        Assert.DoesNotContain("Outputs", run.Output, StringComparison.Ordinal);
    }

    private static string[] Cells(string line) => line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
