namespace ScNet.Cli.Tests.Commands;

/// <summary>A network whose steady state is too large to be solved in reasonable time is refused with a message, not with a stack trace.</summary>
public sealed class TooLargeTests : IDisposable
{
    private const int Cells = 3000;

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Thousands_of_cells_are_refused_by_sweep_with_the_reason()
    {
        string elements = string.Concat(Enumerable.Range(0, Cells).Select(k => FormattableString.Invariant($"c{k} = {{ between = [\"p{k}\", \"n{k}\"] }}\n")));
        string switches = string.Concat(Enumerable.Range(0, Cells).Select(k => FormattableString.Invariant(
            $"a{k} = {{ between = [\"vin\", \"p{k}\"], on = 1 }}\nb{k} = {{ between = [\"n{k}\", \"vout\"], on = 1 }}\ne{k} = {{ between = [\"p{k}\", \"vout\"], on = 2 }}\nd{k} = {{ between = [\"n{k}\", \"gnd\"], on = 2 }}\n")));
        string path = _folder.Write("cells.toml", $"name = \"Cells\"\ninput = \"vin\"\noutput = \"vout\"\n\n[capacitors]\n{elements}\n[switches]\n{switches}");
        ToolRun run = ToolRun.Of("sweep", path, "--frequency", "1e6");
        Assert.Equal(1, run.Code);
        Assert.Contains("steady-state-too-large", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }
}
