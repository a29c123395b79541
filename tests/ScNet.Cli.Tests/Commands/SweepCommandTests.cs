using System.Globalization;
using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;

namespace ScNet.Cli.Tests.Commands;

public sealed class SweepCommandTests : IDisposable
{
    private const string Header = "file,converter,mode,status,hertz,ohms,slowSwitchingLimit.ohms,fastSwitchingLimit.ohms,rootSumSquareOhms,norm254Ohms,singlePairOhms,ratio,currentRatio,inputSiemens";

    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    public void The_csv_holds_the_numbers_of_the_library_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        string half = _folder.Write("a,b.toml", NetlistFolder.Half.Replace("\"Half\"", "'A \"half\"'", StringComparison.Ordinal));
        ToolRun run = ToolRun.Of("sweep", half, "--frequency", "2.5e6,1e7..1e9:3");
        string[] lines = _folder.Relative(run.Output).Split('\n');
        Converter converter = NetlistReader.ReadFile(half).GetConverter();
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(Header, lines[0]);
        Assert.Equal(6, lines.Length);
        Assert.Empty(lines[5]);
        foreach ((string line, double hertz) in lines[1..5].Zip(new[] { 2.5e6, 1e7, 1e8, 1e9 }))
        {
            Assert.StartsWith("\"@/a,b.toml\",\"A \"\"half\"\"\",default,ok,", line, StringComparison.Ordinal);
            ImpedancePoint point = impedance.At(hertz);
            Assert.Equal(
                [hertz, point.Ohms, point.SlowOhms, point.FastOhms, point.RootSumSquareOhms, point.Norm254Ohms, point.SinglePairOhms, 0.5, 0.5, 0],
                line.Split(',')[^10..].Select(n => double.Parse(n, CultureInfo.InvariantCulture)));
        }
    }

    [Fact]
    public void A_file_and_a_mode_without_a_result_are_reported_and_the_others_still_done()
    {
        string two = _folder.Write("two.toml", NetlistFolder.TwoWays), half = _folder.Write("half.toml", NetlistFolder.Half);
        ToolRun run = ToolRun.Of("sweep", _folder.PathOf("missing.toml"), two, half, "--frequency", "1e6");
        Assert.Equal(1, run.Code);
        Assert.Equal(
            [("missing", "", "error"), ("two", "1/2", "ok"), ("two", "shorted", "error"), ("half", "default", "ok")],
            run.Output.Split('\n')[1..5].Select(l => l.Split(',')).Select(l => (Path.GetFileNameWithoutExtension(l[0]), l[2], l[3])));
        Assert.Equal(2, run.ErrorLines.Length);
        Assert.Contains("missing.toml: error file-unreadable: ", run.ErrorLines[0], StringComparison.Ordinal);
        Assert.Contains("two.toml: mode 'shorted': error input-shorted: ", run.ErrorLines[1], StringComparison.Ordinal);
        Assert.Equal(0, ToolRun.Of("sweep", two, "--mode", "1/2", "--frequency", "1e6").Code);
        ToolRun unknown = ToolRun.Of("sweep", half, "--mode", "1/2", "--frequency", "1e6");
        Assert.Equal((1, Header + "\n"), (unknown.Code, unknown.Output));
        Assert.Contains("'Half' has no mode '1/2'", Assert.Single(unknown.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public void Operating_points_are_those_of_operate_over_every_combination()
    {
        string half = _folder.Write("half.toml", NetlistFolder.Half);
        JsonNode[] rows = [.. JsonNode.Parse(ToolRun.Of(
            "sweep", half, "--input-voltage", "3.6,4", "--load-current", "0..0.02:3", "--frequency", "1e7,2e7", "--format", "json").Output)!["rows"]!.AsArray().Select(r => r!)];
        Assert.Equal(12, rows.Length);
        Assert.Equal([0, 0.01, 0.02], rows.Select(r => (double)r["loadCurrentAmperes"]!).Distinct());
        foreach (JsonNode row in rows)
        {
            JsonNode one = JsonNode.Parse(ToolRun.Of(
                "operate", half, "--input-voltage", row["inputVoltageVolts"]!.ToJsonString(), "--load-current", row["loadCurrentAmperes"]!.ToJsonString(),
                "--frequency", row["hertz"]!.ToJsonString(), "--format", "json").Output)!["rows"]![0]!;
            Assert.Equal((double)one["outputVoltageVolts"]!, (double)row["outputVoltageVolts"]!, 1e-12);
            Assert.Equal((double?)one["resistiveEfficiency"], (double?)row["resistiveEfficiency"]);
            Assert.Equal("1/2", (string?)row["duty"]);
        }
    }

    // an ideal step-down stage with an inductor gives the duty times the input: R. W. Erickson and D. Maksimović, Fundamentals of Power
    // Electronics, chapter 2 (from memory)
    [Fact]
    public void Duties_are_exact_and_change_the_ratio()
    {
        JsonNode[] rows = [.. JsonNode.Parse(ToolRun.Of(
            "sweep", "--family", "inductive 1 4", "--input-voltage", "4", "--load-current", "0", "--duty", "0.1..0.3:3,0.5", "--frequency", "1e6", "--format", "json").Output)!["rows"]!
            .AsArray().Select(r => r!)];
        Assert.Equal(["1/10", "1/5", "3/10", "1/2"], rows.Select(r => (string?)r["duty"]));
        Assert.Equal([0.4, 0.8, 1.2, 2], rows.Select(r => Math.Round((double)r["idealOutputVoltageVolts"]!, 12)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    public void The_text_has_a_row_per_point_and_says_what_has_no_result(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("sweep", _folder.Write("two.toml", NetlistFolder.TwoWays), "--frequency", "1e6,2e6", "--format", "text");
        Assert.Equal(1, run.Code);
        Assert.StartsWith("Output impedance over frequency\n\nnetlist   mode     frequency    exact", run.Output, StringComparison.Ordinal);
        Assert.Contains("Two ways  shorted  no result", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
        ToolRun points = ToolRun.Of("sweep", "--family", "ladder 3", "--input-voltage", "3..4:2", "--load-current", "0.1", "--frequency", "1e6", "--format", "text");
        Assert.Equal((0, string.Empty), (points.Code, points.Error));
        Assert.StartsWith("Operating points\n\nnetlist     mode     duty  input    load  frequency", points.Output, StringComparison.Ordinal);
    }
}
