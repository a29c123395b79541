namespace ScNet.Cli.Tests.Commands;

/// <summary>What the tool says of converters with inductors.</summary>
public sealed class HybridTests : IDisposable
{
    private const string ThreeLevels =
        """
        name = "Three levels"
        input = "vin"
        output = "vout"

        [phases]
        duty = [0.2, 0.3, 0.2, 0.3]

        [capacitors]
        fly = { between = ["t", "b"], farads = 1e-6, controlled = "1/2" }

        [inductors]
        coil = { between = ["x", "vout"], henries = 1e-6, ohms = 0.02 }

        [switches]
        u1 = { between = ["vin", "t"], ohms = 0.1, on = 1 }
        u2 = { between = ["t", "x"], ohms = 0.1, on = 3 }
        d1 = { between = ["gnd", "b"], ohms = 0.1, on = [2, 3, 4] }
        d2 = { between = ["b", "x"], ohms = 0.1, on = [1, 2, 4] }
        """;

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_analysis_leads_with_charge_sharing_and_marks_controlled_capacitors()
    {
        ToolRun run = ToolRun.Of("analyze", _folder.Write("three.toml", ThreeLevels));
        Assert.Equal(0, run.Code);
        foreach (string part in (string[])[
            "1 capacitor, 1 inductor, 4 switches",
            "  Ideal ratio           1/5",
            "  Voltages fixed by     a controller",
            "  Charge sharing        0 Ω: all capacitors are charged softly\n",
            "  All in impulses       40 kΩ at 1 Hz",
            "1/2 (controlled)",
            "  Inductors: current from first to second node",
            "1 µH",
            "20 mΩ"])
        {
            Assert.Contains(part, run.Output, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("Slow-switching limit", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_comparison_leads_with_charge_sharing_and_sorts_by_it()
    {
        string three = _folder.Write("three.toml", ThreeLevels), half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun run = ToolRun.Of("compare", half, three, "--input-voltage", "3.6", "--rating", "1.8", "--sort", "slowSwitchingLimit.bestSplitOhms");
        Assert.Equal(0, run.Code);
        Assert.Contains("*0 Ω", run.Output, StringComparison.Ordinal);
        Assert.Contains("charge sharing instead of SSL", run.Output, StringComparison.Ordinal);
        Assert.True(run.Output.IndexOf("Three levels", StringComparison.Ordinal) < run.Output.IndexOf("Half", StringComparison.Ordinal));
    }

    [Fact]
    public void The_search_of_reachable_ratios_refuses_inductors()
    {
        ToolRun run = ToolRun.Of("reach", _folder.Write("three.toml", ThreeLevels));
        Assert.Equal(1, run.Code);
        Assert.Contains("a converter of switches and capacitors, but it has inductors", run.Error, StringComparison.Ordinal);
    }
}
