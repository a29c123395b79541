using System.Text.Json.Nodes;

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

    private const string TwoLegs =
        """
        name = "Two legs"
        input = "vin"
        output = "vout"

        [phases]
        duty = [0.3, 0.2, 0.3, 0.2]

        [inductors]
        coil_a = { between = ["a", "vout"], henries = 1e-6, ohms = 0.01 }
        coil_b = { between = ["b", "vout"], henries = 1e-6, ohms = 0.01 }

        [switches]
        high_a = { between = ["vin", "a"], ohms = 0.01, on = 1, diode_volts = 0.8 }
        low_a = { between = ["a", "gnd"], ohms = 0.01, on = [2, 3, 4], diode_volts = 0.8 }
        high_b = { between = ["vin", "b"], ohms = 0.01, on = 3, diode_volts = 0.8 }
        low_b = { between = ["b", "gnd"], ohms = 0.01, on = [1, 2, 4], diode_volts = 0.8 }
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
    public void A_dead_time_leaves_the_currents_of_all_coils_to_body_diodes()
    {
        string path = _folder.Write("legs.toml", TwoLegs);
        string[] conditions = ["--input-voltage", "10", "--load-current", "8", "--frequency", "1e6", "--dead-time", "1e-8"];
        ToolRun run = ToolRun.Of(["operate", path, .. conditions]);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("  Body diodes: current from second to first node of the switch", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("inductor-interrupted", run.Output, StringComparison.Ordinal);
        JsonNode row = JsonNode.Parse(ToolRun.Of(["operate", path, .. conditions, "--format", "json"]).Output)!["rows"]![0]!;
        Assert.Equal("ok", (string?)row["status"]);
        Assert.Empty(row["diagnostics"]!.AsArray());
        Assert.Equal(["low_a", "low_b"], row["bodyDiodes"]!.AsObject().Select(d => d.Key));
        Assert.InRange((double)row["bodyDiodes"]!["low_a"]!["dissipationWatts"]!, 0.8 * 0.04 * 3, 0.8 * 0.04 * 5);
    }

    [Fact]
    public void A_dead_time_without_body_diodes_is_told_once_for_each_coil()
    {
        string path = _folder.Write("legs.toml", TwoLegs.Replace(", diode_volts = 0.8", string.Empty, StringComparison.Ordinal));
        ToolRun run = ToolRun.Of("operate", path, "--input-voltage", "10", "--load-current", "8", "--frequency", "1e6", "--dead-time", "1e-8");
        Assert.Equal(1, run.Code);
        string[] lines = run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.All(lines, l => Assert.Contains("In phases 2, 4, 6, 8 the current of inductor 'coil_", l, StringComparison.Ordinal));
        Assert.All(lines, l => Assert.Contains("diode_volts", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Losses_with_devices_count_where_body_diodes_carry_a_dead_time_and_where_a_current_ends_a_phase()
    {
        string requirement = RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml");
        string legs = _folder.Write("legs.toml", TwoLegs), rests = _folder.Write("rests.toml", """
            name = "Step-down that rests"
            input = "vin"
            output = "vout"
            [phases]
            duty = [0.25, 0.75]
            [inductors]
            coil = { between = ["x", "vout"], henries = 1e-6, ohms = 0.02, until_zero = [2] }
            [switches]
            high = { between = ["vin", "x"], ohms = 1, on = [1] }
            low = { between = ["x", "gnd"], ohms = 1, on = [2] }
            """);
        foreach (string[] command in (string[][])[
            [legs, "--load-current", "2", "--dead-time", "1e-8"],
            [rests, "--load-current", "0.05"]])
        {
            ToolRun run = ToolRun.Of(["operate", .. command, "--input-voltage", "3.6", "--frequency", "1e6", "--requirement", requirement, "--format", "json"]);
            Assert.Equal((0, string.Empty), (run.Code, run.Error));
            JsonNode row = JsonNode.Parse(run.Output)!["rows"]![0]!, budget = row["budget"]!;
            double resistive = (double)row["resistiveEfficiency"]!, whole = (double)budget["efficiency"]!;
            Assert.InRange(whole, 0.3, resistive);
            Assert.True((double)budget["losses"]!["gateDriveWatts"]! > 0);
            Assert.True((double)budget["losses"]!["bodyDiodesWatts"]! > 0);
        }
    }

    [Fact]
    public void The_search_of_reachable_ratios_refuses_inductors()
    {
        ToolRun run = ToolRun.Of("reach", _folder.Write("three.toml", ThreeLevels));
        Assert.Equal(1, run.Code);
        Assert.Contains("a converter of switches and capacitors, but it has inductors", run.Error, StringComparison.Ordinal);
    }
}
