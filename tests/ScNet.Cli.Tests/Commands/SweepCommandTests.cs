using System.Globalization;
using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Results.Pages;
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

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Rows_are_sorted_by_the_headings_shown_in_either_direction(bool isOperation)
    {
        string[] arguments =
        [
            "sweep", "--family", "ladder 3", "--family", "dickson 3", "--frequency", "1e-1,1,1e1",
            .. isOperation ? ["--input-voltage", "3,4", "--load-current", "0.001"] : Array.Empty<string>(),
        ];
        IReadOnlyList<PageColumn> columns = isOperation ? SweepPage.OperationColumns : SweepPage.ImpedanceColumns;
        foreach (PageColumn column in columns.Where(c => c.Key is not null))
        {
            string[] up = Cells(column, "--sort", column.Heading), down = Cells(column, "--sort", column.Heading, "--descending");
            Assert.Equal(up.Order(Comparer<string>.Create(Compare)), up);
            Assert.Equal(up, down.Reverse());
            Assert.Equal(up, Cells(column, "--sort", column.Key!));
        }

        string text = ToolRun.Of([.. arguments, "--sort", "frequency", "--descending", "--format", "text"]).Output;
        Assert.True(text.IndexOf(" 10 Hz ", StringComparison.Ordinal) < text.IndexOf(" 100 mHz ", StringComparison.Ordinal));

        string[] Cells(PageColumn column, params string[] sort)
        {
            string[][] lines = [.. ToolRun.Of([.. arguments, "--format", "csv", .. sort]).Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(','))];
            return [.. lines[1..].Select(l => l[Array.IndexOf(lines[0], column.Key)])];
        }

        static int Compare(string a, string b) =>
            double.TryParse(a, CultureInfo.InvariantCulture, out double x) && double.TryParse(b, CultureInfo.InvariantCulture, out double y) ? x.CompareTo(y) : string.CompareOrdinal(a, b);
    }

    [Theory]
    [InlineData("Output voltage", "outputVoltageVolts", "with")]
    [InlineData("exact", "ohms", "without")]
    public void A_heading_of_the_other_table_is_refused_with_the_reason(string heading, string key, string when)
    {
        string[] more = when == "without" ? ["--input-voltage", "3", "--load-current", "0.1"] : [];
        ToolRun run = ToolRun.Of(["sweep", "--family", "ladder 3", "--frequency", "1e6", "--sort", heading, .. more]);
        Assert.Equal((2, $"scnet: The column {key} is there {when} --input-voltage only.\nFor the options, run: scnet sweep --help\n"), (run.Code, run.Error));
    }
}
