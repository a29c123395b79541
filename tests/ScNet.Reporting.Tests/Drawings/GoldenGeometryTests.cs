using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Reporting.Tests.Drawings;

public sealed class GoldenGeometryTests
{
    private const int TolerancePixels = 6;

    private static readonly string[] s_file = ["tests", "ScNet.Reporting.Tests", "Drawings", "golden-geometry.txt"];

    /// <summary>Set SCNET_UPDATE_GOLDEN to 1 to write the file anew, after a look at the drawings.</summary>
    [Fact]
    public void Drawings_stand_as_somebody_once_looked_at_them()
    {
        string[] actual = [.. Converters().SelectMany(DrawnNetworks.Of).SelectMany(d => (IEnumerable<string>)[$"# {d.Name}", .. GoldenGeometry.Of(d.Sheet)])];
        if (Environment.GetEnvironmentVariable("SCNET_UPDATE_GOLDEN") == "1")
        {
            File.WriteAllText(RepositoryFiles.PathOf(s_file), string.Join('\n', actual) + "\n");
        }

        string[] expected = File.ReadAllLines(RepositoryFiles.PathOf(s_file));
        Assert.Empty(GoldenGeometry.Differences(Places(expected), Places(actual), TolerancePixels));
        Assert.Equal(expected.Where(IsHeading), actual.Where(IsHeading));
    }

    [Fact]
    public void What_moved_further_than_the_tolerance_is_found()
    {
        string[] kept = ["sheet 300 200", "symbol fly 100 50", "net vout = p 40 20"];
        Assert.Empty(GoldenGeometry.Differences(kept, ["sheet 306 200", "symbol fly 100 44", "net vout = p 40 20"], TolerancePixels));
        Assert.Equal("'symbol fly 100 50' expected, 'symbol fly 107 50' found", Assert.Single(GoldenGeometry.Differences(kept, ["sheet 300 200", "symbol fly 107 50", "net vout = p 40 20"], TolerancePixels)));
        Assert.Single(GoldenGeometry.Differences(kept, ["sheet 300 200", "symbol other 100 50", "net vout = p 40 20"], TolerancePixels));
        Assert.Single(GoldenGeometry.Differences(kept, kept[..2], TolerancePixels));
    }

    [Theory]
    [InlineData("ladder-4-converter.svg")]
    [InlineData("ladder-4-phase-1.svg")]
    public void Pictures_of_the_guide_are_as_drawn_to_the_byte(string file)
    {
        Converter ladder = Ladder.StepDown(4);
        Picture picture = file.Contains("phase", StringComparison.Ordinal)
            ? ScNet.Reporting.Drawings.NetworkDrawing.OfPhase(ScNet.Analysis.ModeAnalysis.Of(ladder), 1)
            : ScNet.Reporting.Drawings.NetworkDrawing.OfConverter(ladder);
        GoldenFile.Is(picture.ToSvg(), "docs", "pictures", file);
    }

    private static IEnumerable<Converter> Converters() =>
    [
        Ladder.StepDown(4),
        SeriesParallel.StepDown(4),
        Dickson.StepDown(5),
        InductiveStage.StepDown(new(1, 3)),
        NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "half.toml")).Converter!,
        NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "two-rails.toml")).Converter!,
    ];

    private static string[] Places(string[] lines) => [.. lines.Where(l => !IsHeading(l))];

    private static bool IsHeading(string line) => line.StartsWith('#');
}
