using ScNet.Design.Choice;
using ScNet.Design.Requirements;
using ScNet.Reporting.Charts;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>
/// The pictures of the guide are those that the library draws. With the environment variable UPDATE_PICTURES they are written anew.
/// </summary>
public sealed class GuidePicturesTests
{
    public static TheoryData<string> Names => ["impedance", "waveforms", "stress", "losses", "efficiency", "map", "trade-off", "tolerance"];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_picture_of_the_guide_is_what_the_library_draws(string name)
    {
        string drawn = ChartSamples.Picture(
            name switch { "map" => "map-of-outputs", "waveforms" => "waveforms-with-inductor", _ => name }, Appearance.Light).ToSvg();
        AssertIs(drawn, "pictures", $"{name}.svg");
    }

    [Fact]
    [Trait("Length", "Long")]
    public void The_picture_of_the_readme_is_what_the_example_loses()
    {
        Requirement core = RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")).GetRequirement();
        RankedChoice choice = RankedChoice.Of(core, Candidates.Of(core, directory: RepositoryFiles.PathOf("docs", "examples")).All);
        AssertIs(LossChart.Of(choice).ToSvg(), "examples", "core-design", "losses.svg");
    }

    private static void AssertIs(string drawn, params string[] path)
    {
        string file = RepositoryFiles.PathOf(["docs", .. path]);
        if (Environment.GetEnvironmentVariable("UPDATE_PICTURES") is not null)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, drawn);
        }

        Assert.Null(SvgDifference.Of(File.ReadAllText(file), drawn));
    }

    [Theory]
    [InlineData("<path d=\"M1.00 2\"/>", "<path d=\"M1.02 2\"/>", true)]
    [InlineData("<path d=\"M1.00 2\"/>", "<path d=\"M1.2 2\"/>", false)]
    [InlineData("<path d=\"M1.00 2\"/>", "<path d=\"M1.00 2 3\"/>", false)]
    [InlineData("<text>10 kHz</text>", "<text>10 MHz</text>", false)]
    public void Drawings_are_the_same_where_only_rounding_differs(string one, string other, bool isSame) =>
        Assert.Equal(isSame, SvgDifference.Of(one, other) is null);
}
