using System.Globalization;
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
}
