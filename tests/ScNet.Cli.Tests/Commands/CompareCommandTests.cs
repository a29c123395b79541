using System.Globalization;
using System.Text.Json.Nodes;
using ScNet.Design;
using ScNet.Results;
using ScNet.Results.Pages;

namespace ScNet.Cli.Tests.Commands;

public sealed class CompareCommandTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_table_is_the_same_text_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = Compare("text", NetlistFolder.Half, NetlistFolder.TwoWays, NetlistFolder.Third);
        Assert.Equal(File.ReadAllText("Commands/compare.expected.txt").ReplaceLineEndings("\n"), _folder.Layout(run.Output));
        Assert.Equal(1, run.Code);
        Assert.StartsWith("@/1.toml: mode 'shorted': error input-shorted: ", _folder.Relative(Assert.Single(run.ErrorLines)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    public void The_csv_is_the_same_text_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = Compare("csv", NetlistFolder.Third.Replace("\"Third\"", "'A \"third\", say'", StringComparison.Ordinal), NetlistFolder.TwoWays);
        string[] lines = _folder.Relative(run.Output).Split('\n');
        Assert.Equal(
            "file,converter,mode,status,ratio,idealOutputVoltageVolts,slowSwitchingLimit.ownProportionsOhms,slowSwitchingLimit.bestSplitOhms,"
            + "fastSwitchingLimit.ownProportionsOhms,fastSwitchingLimit.bestSplitOhms,capacitorChargeVoltage.value,switchChargeVoltage.value,"
            + "switchStress.peakVolts,switchStress.maximumExcessVolts,switchStress.exceedingCount,switchStress.undeterminedCount,"
            + "capacitorStress.peakVolts,capacitorStress.maximumExcessVolts,capacitorStress.exceedingCount,capacitorStress.undeterminedCount,"
            + "capacitorCount,switchCount,phaseCount,bottomPlateSwing.maximumVolts,bottomPlateSwing.lossWeight,bottomPlateSwing.undeterminedCount,"
            + "chargeSharing.ownProportionsOhms,chargeSharing.bestSplitOhms",
            lines[0]);
        Assert.StartsWith("@/0.toml,\"A \"\"third\"\", say\",default,ok,0.3333333333333333,1.2,0.5,0.444", lines[1], StringComparison.Ordinal);
        Assert.Contains(",2.4,0.6,3,0,1.2,0,0,0,2,7,2,2.4,", lines[1], StringComparison.Ordinal);
        Assert.Contains(",3.6,1.8,1,1,1.8,0,0,1,", lines[2], StringComparison.Ordinal);
        Assert.Equal("@/1.toml,Two ways,shorted,error" + new string(',', 24), lines[3]);
        Assert.Equal(5, lines.Length);
        Assert.Empty(lines[4]);
    }

    [Fact]
    public void The_json_holds_the_conditions_and_exact_fractions()
    {
        ToolRun run = Compare("json", NetlistFolder.Third, NetlistFolder.TwoWays);
        JsonNode document = JsonNode.Parse(run.Output)!;
        Assert.True(JsonNode.DeepEquals(
            JsonNode.Parse("""{ "inputVoltageVolts": 3.6, "deviceRatingVolts": 1.8, "totalCapacitanceFarads": 1e-06, "totalConductanceSiemens": 1, "hertz": 1000000 }"""),
            JsonNode.Parse(document["conditions"]!.ToJsonString().Replace("1E-06", "1e-06", StringComparison.Ordinal))));
        JsonNode third = document["rows"]![0]!;
        Assert.Equal("1/3", (string?)third["ratio"]);
        Assert.Equal("2/3", (string?)third["capacitorChargeVoltage"]!["value"]);
        Assert.Equal("10/3", (string?)third["switchChargeVoltage"]!["value"]);
        Assert.Equal(["s1", "s4", "s5"], third["switchStress"]!["exceeding"]!.AsArray().Select(n => (string?)n));
        Assert.Equal(["s 6"], document["rows"]![1]!["switchStress"]!["undetermined"]!.AsArray().Select(n => (string?)n));
        Assert.Equal("error", (string?)document["rows"]![2]!["status"]);
        Assert.Null(document["rows"]![2]!["ratio"]);
        Assert.Equal("input-shorted", (string?)document["rows"]![2]!["diagnostics"]!.AsArray().First(d => (string?)d!["severity"] == "error")!["code"]);
    }

    // 1 µF and 1 S: R = (1/4C f) coth(T/(8 R C)) with 4 Ω a switch
    [Fact]
    public void A_load_adds_output_voltage_and_efficiency()
    {
        double ohms = 0.25 / Math.Tanh(1.0 / 32);
        string half = _folder.Write("half.toml", NetlistFolder.Half), third = _folder.Write("third.toml", NetlistFolder.Third);
        ToolRun run = ToolRun.Of("compare", half, third, "--input-voltage", "3.6", "--rating", "1.8", "--load-current", "0.02", "--format", "json");
        JsonNode document = JsonNode.Parse(run.Output)!;
        Assert.Equal(0.02, (double)document["conditions"]!["loadCurrentAmperes"]!);
        JsonNode atLoad = document["rows"]![0]!["atLoad"]!;
        Assert.Equal(1.8 - (0.02 * ohms), (double)atLoad["outputVoltageVolts"]!, 1e-9);
        Assert.Equal(1 - (0.02 * ohms / 1.8), (double)atLoad["resistiveEfficiency"]!, 1e-9);
        Assert.False((bool)atLoad["isOverloaded"]!);

        ToolRun text = ToolRun.Of("compare", third, half, "--input-voltage", "3.6", "--rating", "1.8", "--load-current", "0.02", "--sort", "η at load", "--descending");
        string[] rows = [.. text.Output.Split('\n').Where(l => l.StartsWith("Half", StringComparison.Ordinal) || l.StartsWith("Third", StringComparison.Ordinal))];
        Assert.Contains(rows.Where(r => r.StartsWith("Half", StringComparison.Ordinal)), r => r.Contains(" 1.64 V ", StringComparison.Ordinal) && r.Contains(" 91.11 %", StringComparison.Ordinal));
        Assert.Equal(["Half", "Third", "Half", "Third"], rows.Select(r => r.Split(' ')[0]));
        Assert.Contains("overload", ToolRun.Of("compare", half, "--input-voltage", "3.6", "--rating", "1.8", "--load-current", "1").Output, StringComparison.Ordinal);
    }

    // 1 S over four switches of 4 Ω, 250 µm each of 1 kΩ·µm: gates of 2 fC/µm at 2 V from a rail of 80 % are all that is lost beside R
    [Fact]
    public void A_requirement_adds_the_efficiency_with_all_losses_of_its_devices()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half), third = _folder.Write("third.toml", NetlistFolder.Third);
        string gates = _folder.Write("gates.toml", OperateCommandTests.GatesOnly);
        string[] conditions = ["--input-voltage", "3.6", "--rating", "1.8", "--load-current", "0.02", "--frequency", "2e7", "--requirement", gates];
        ToolRun json = ToolRun.Of(["compare", half, third, .. conditions, "--format", "json"]);
        Assert.Equal((0, string.Empty), (json.Code, json.Error));
        JsonNode row = JsonNode.Parse(json.Output)!["rows"]![0]!, budget = row["budget"]!;
        double watts = 2e7 * 4 * 250 * 2e-15 * 2 / 0.8, dissipation = (double)row["atLoad"]!["dissipationWatts"]!, output = 0.02 * (double)row["atLoad"]!["outputVoltageVolts"]!;
        Assert.Equal(watts, (double)budget["losses"]!["gateDriveWatts"]!, 1e-12);
        Assert.Equal(dissipation + watts, (double)budget["totalLossWatts"]!, 1e-9);
        double efficiency = output / (output + dissipation + watts);
        Assert.Equal(efficiency, (double)budget["efficiency"]!, 1e-9);
        Assert.Equal("n", (string?)budget["devices"]!["s1"]!["device"]);

        ToolRun text = ToolRun.Of(["compare", third, half, .. conditions, "--sort", "η devices"]);
        string[] rows = [.. text.Output.Split('\n').Where(l => l.StartsWith("Half", StringComparison.Ordinal) || l.StartsWith("Third", StringComparison.Ordinal))];
        Assert.StartsWith("Half", rows[0], StringComparison.Ordinal);
        Assert.Contains(rows, r => r.StartsWith("Half", StringComparison.Ordinal) && r.Contains(efficiency.ToString(" 0.00 %", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            && r.Contains("conduction ", StringComparison.Ordinal));
        Assert.Contains("of 'gates'", text.Output, StringComparison.Ordinal);
        string[] columns = ToolRun.Of(["compare", half, .. conditions, "--format", "csv"]).Output.Split('\n')[0].Split(',');
        Assert.Contains("budget.losses.platesWatts", columns);
        Assert.Contains("budget.efficiency", columns);
    }

    [Fact]
    public void A_requirement_needs_a_load_and_devices_that_serve()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half), gates = _folder.Write("gates.toml", OperateCommandTests.GatesOnly);
        string[] conditions = ["compare", half, "--input-voltage", "3.6", "--rating", "1.8"];
        Assert.Contains("Expected --load-current with --requirement", ToolRun.Of([.. conditions, "--requirement", gates]).Error, StringComparison.Ordinal);
        Assert.Contains("The column budget.efficiency is there with --requirement only.", ToolRun.Of([.. conditions, "--load-current", "0.02", "--sort", "budget.efficiency"]).Error, StringComparison.Ordinal);
        string weak = _folder.Write("weak.toml", OperateCommandTests.GatesOnly.Replace("\nrated_volts = 3.6", "\nrated_volts = 0.1", StringComparison.Ordinal));
        ToolRun run = ToolRun.Of([.. conditions, "--load-current", "0.02", "--requirement", weak]);
        Assert.Equal(1, run.Code);
        Assert.Contains("device-rating-exceeded", run.Error, StringComparison.Ordinal);
        Assert.Contains("Half", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_of_a_load_need_the_load()
    {
        ToolRun run = ToolRun.Of("compare", _folder.Write("half.toml", NetlistFolder.Half), "--input-voltage", "3.6", "--rating", "1.8", "--sort", "atLoad.dissipationWatts");
        Assert.NotEqual(0, run.Code);
        Assert.Contains("The column atLoad.dissipationWatts is there with --load-current only.", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_json_holds_counts_and_bottom_plates()
    {
        JsonNode third = JsonNode.Parse(Compare("json", NetlistFolder.Third).Output)!["rows"]![0]!;
        Assert.Equal((2, 7, 2), ((int)third["capacitorCount"]!, (int)third["switchCount"]!, (int)third["phaseCount"]!));
        // n1 of the series string is at 2/3 of 3.6 V, then at 0
        Assert.Equal(2.4, (double)third["bottomPlateSwing"]!["maximumVolts"]!);
        Assert.Single(third["bottomPlateSwing"]!["maximumCapacitors"]!.AsArray());
        Assert.Empty(third["bottomPlateSwing"]!["undetermined"]!.AsArray());
    }

    [Theory]
    [InlineData("text")]
    [InlineData("csv")]
    [InlineData("json")]
    public void Rows_are_sorted_by_a_column_with_those_that_have_no_value_last(string format)
    {
        string[] files = [.. new[] { NetlistFolder.Half, NetlistFolder.TwoWays, NetlistFolder.Third }.Select((text, i) => _folder.Write($"{i}.toml", text))];
        ToolRun run = ToolRun.Of(["compare", .. files, "--input-voltage", "3.6", "--rating", "1.8", "--sort", "ratio", "--format", format]);
        int[] places = [.. new[] { "Third", "Half", "Two ways", "shorted" }.Select(name => run.Output.IndexOf(name, StringComparison.Ordinal))];
        Assert.Equal(places.Order(), places);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("csv")]
    public void Headings_sort_as_the_columns_they_show_in_either_direction(string format)
    {
        string[] files = [_folder.Write("half.toml", NetlistFolder.Half), _folder.Write("two.toml", NetlistFolder.TwoWays), _folder.Write("third.toml", NetlistFolder.Third)];
        IReadOnlyList<string> columns = ResultTable.OfComparisons(new ComparisonConditions(1, 1), []).Columns;
        foreach (PageColumn column in ComparisonPage.Columns())
        {
            Assert.Contains(column.Key, columns);
            string Run(string key, params string[] more) =>
                ToolRun.Of(["compare", .. files, "--input-voltage", "3.6", "--rating", "1.8", "--format", format, "--sort", key, .. more]).Output;
            Assert.Equal(Run(column.Key!), Run(column.Heading));
            Assert.Equal(Run(column.Key!, "--descending"), Run(column.Heading, "--descending"));
            if (column.Heading is "netlist" or "ratio" or "QV cap")
            {
                Assert.NotEqual(Run(column.Heading), Run(column.Heading, "--descending"));
            }
        }
    }

    [Fact]
    public void A_column_that_does_not_exist_is_refused_with_those_that_do()
    {
        ToolRun run = ToolRun.Of("compare", "a.toml", "--input-voltage", "1", "--rating", "1", "--sort", "cost");
        Assert.Equal(2, run.Code);
        Assert.Contains(run.ErrorLines, line => line.StartsWith("scnet: Expected a heading or a column of the CSV output after --sort, one of netlist, mode, ratio, Vout, ", StringComparison.Ordinal)
            && line.EndsWith(", but got 'cost'.", StringComparison.Ordinal));
    }

    [Fact]
    public void Totals_and_frequency_change_the_limits()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun run = ToolRun.Of(
            "compare", half, "--input-voltage", "2e0", "--rating", "1", "--total-capacitance", "2e-9", "--total-conductance", "4", "--frequency", "5e6");
        Assert.Equal(0, run.Code);
        Assert.StartsWith("2 V input, 1 V rating, 2 nF of capacitance, 4 S of switch conductance, 5 MHz\n", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"Half +default +1/2 \(0\.5\) +1 V +25 Ω +25 Ω +2 Ω +2 Ω +0\.5 +2\n", run.Output);
        Assert.Matches(@"Half +default +1 V +0 +1 V +0\n", run.Output);
    }

    [Fact]
    public void Two_converters_of_one_name_are_told_apart_by_their_files()
    {
        string[] files = [_folder.Write("0.toml", NetlistFolder.Half), _folder.Write("1.toml", NetlistFolder.Half)];
        ToolRun run = ToolRun.Of(new ToolSession { Width = 300 }, ["compare", .. files, "--input-voltage", "3.6", "--rating", "1.8"]);
        Assert.Contains("\nHalf (@/0.toml)", _folder.Relative(run.Output), StringComparison.Ordinal);
        Assert.Contains("\nHalf (@/1.toml)", _folder.Relative(run.Output), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_table_at_equal_silicon_is_the_same_text_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        ToolRun run = ToolRun.Of(
            "compare", two, "--family", "series-parallel 3", "--family", "ladder 3  --step-up", "--input-voltage", "3.6", "--rating", "1.3", "--silicon");
        Assert.Equal(File.ReadAllText("Commands/silicon.expected.txt").ReplaceLineEndings("\n"), _folder.Layout(run.Output));
        Assert.Equal(1, run.Code);
    }

    [Fact]
    public void At_equal_silicon_a_stack_of_two_has_a_quarter_of_what_its_area_gives()
    {
        // 1/2 of 4 V over 1.5 V: everything in stacks of two
        Func<string, double> figure = Silicon("ladder 2", "4", "1.5");
        Assert.Equal(0.25, figure("slowSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal(1, figure("equalSilicon.slowSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal(8, figure("fastSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal(32, figure("equalSilicon.fastSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal((2, 2, 8, 0), (figure("equalSilicon.maximumStackCount"), figure("equalSilicon.capacitorDeviceCount"), figure("equalSilicon.switchDeviceCount"), figure("equalSilicon.undeterminedCount")));
    }

    [Fact]
    public void At_equal_silicon_nothing_changes_where_nothing_is_over_the_rating()
    {
        Func<string, double> figure = Silicon("dickson 4", "1", "1");
        Assert.Equal(figure("slowSwitchingLimit.bestSplitOhms"), figure("equalSilicon.slowSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal(figure("fastSwitchingLimit.bestSplitOhms"), figure("equalSilicon.fastSwitchingLimit.bestSplitOhms"), 12);
        Assert.Equal((1, 3, 8, 0), (figure("equalSilicon.maximumStackCount"), figure("equalSilicon.capacitorDeviceCount"), figure("equalSilicon.switchDeviceCount"), figure("equalSilicon.undeterminedCount")));
    }

    [Fact]
    public void The_json_at_equal_silicon_names_the_stack_of_each_element()
    {
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays);
        JsonNode rows = JsonNode.Parse(ToolRun.Of("compare", two, "--input-voltage", "3.6", "--rating", "1.3", "--silicon", "--format", "json").Output)!["rows"]!;
        JsonNode silicon = rows[0]!["equalSilicon"]!;
        Assert.Equal(["idle"], silicon["undetermined"]!.AsArray().Select(n => (string?)n));
        Assert.Equal((2, 2, 3), ((int)silicon["stacks"]!["fly"]!, (int)silicon["stacks"]!["s1"]!, (int)silicon["stacks"]!["s5"]!));
        Assert.Equal(3, (int)silicon["maximumStackCount"]!);
        Assert.Null(rows[1]!["equalSilicon"]!["stacks"]);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("csv")]
    [InlineData("json")]
    public void More_modes_than_equal_silicon_takes_are_a_failure_of_that_converter_only(string format)
    {
        ToolRun run = ToolRun.Of("compare", "--family", "recursive 8", "--family", "ladder 3", "--input-voltage", "4", "--rating", "1", "--silicon", "--format", format);
        Assert.Equal(1, run.Code);
        Assert.Equal(
            "recursive 8: Expected at most 128 modes for --silicon, but 'Recursive 1/256 to 255/256' has 255. Leave the option out, or some modes.", Assert.Single(run.ErrorLines));
        Assert.Contains("Ladder 3:1", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Recursive", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text")]
    [InlineData("csv")]
    [InlineData("json")]
    public void An_absurd_rating_gives_numbers_all_the_same(string format)
    {
        ToolRun run = ToolRun.Of("compare", "--family", "ladder 3", "--input-voltage", "1e60", "--rating", "1e-60", "--silicon", "--format", format);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Contains("2147483647", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_are_sorted_by_a_column_of_equal_silicon()
    {
        ToolRun run = ToolRun.Of(
            "compare", "--family", "series-parallel 4", "--family", "ladder 4", "--input-voltage", "4", "--rating", "1", "--silicon", "--sort", "equalSilicon.maximumStackCount", "--format", "csv");
        Assert.Equal(["ladder 4", "series-parallel 4"], run.Output.Split('\n')[1..3].Select(line => line.Split(',')[0]));
    }

    [Fact]
    public void A_family_is_compared_as_the_file_that_scnet_family_prints()
    {
        string file = _folder.Write("ladder.toml", ToolRun.Of("family", "ladder", "4").Output);
        string[] lines = ToolRun.Of("compare", file, "--family", "ladder 4", "--input-voltage", "4", "--rating", "1", "--format", "csv").Output.Split('\n');
        Assert.Equal(lines[1].Replace(file, "ladder 4", StringComparison.Ordinal), lines[2]);
    }

    // the figures of the only row by the name of their column
    private static Func<string, double> Silicon(string family, string volts, string rating)
    {
        ToolRun run = ToolRun.Of("compare", "--family", family, "--input-voltage", volts, "--rating", rating, "--silicon", "--format", "csv");
        string[][] lines = [.. run.Output.Split('\n').Select(line => line.Split(','))];
        return column => double.Parse(lines[1][Array.IndexOf(lines[0], column)], System.Globalization.CultureInfo.InvariantCulture);
    }

    private ToolRun Compare(string format, params string[] netlists) => ToolRun.Of([
        "compare",
        .. netlists.Select((text, i) => _folder.Write($"{i}.toml", text)),
        "--input-voltage", "3.6", "--rating", "1.8", "--format", format,
    ]);
}
