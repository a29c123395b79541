using System.Globalization;

namespace ScNet.Cli.Tests;

/// <summary>The same bytes on every run, in every culture and with any number of threads, of every command on the example documents.</summary>
public sealed class SameBytesTests : IDisposable
{
    private readonly NetlistFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> Lines =>
    [
        "analyze half.toml ladder-4.toml three-phase-4.toml memory-gears.toml two-rails.toml four-level-stage.toml --frequency 1e6",
        "analyze half.toml ladder-4.toml three-phase-4.toml memory-gears.toml two-rails.toml four-level-stage.toml --frequency 1e6 --format json",
        "compare half.toml dickson-5.toml memory-gears.toml --input-voltage 4.2 --rating 1.8 --silicon --load-current 1e-3 --format csv",
        "compare half.toml dickson-5.toml memory-gears.toml --input-voltage 4.2 --rating 1.8 --silicon --load-current 1e-3",
        "sweep half.toml fibonacci-5.toml four-level-stage.toml --frequency 1e5..1e9:5",
        "operate half.toml core-gears.toml four-level-stage.toml --input-voltage 4 --load-current 1e-3 --frequency 1e7",
        "operate half.toml core-gears.toml four-level-stage.toml --input-voltage 4 --load-current 1e-3 --frequency 1e7 --format json",
        "stress core-gears.toml four-level-stage.toml --input-voltage 2.8..4.2 --rating 1.5",
        "gates core-gears.toml --input-voltage 4 --gate-voltage 1.5",
        "tolerances half.toml memory-gears.toml --frequency 1e6 --capacitance 0.1 --on-resistance 0.2 --samples 50",
        "reach half.toml --patterns --format csv",
        "overlay half.toml series-parallel-3.toml --format json",
        "formulas half.toml four-level-stage.toml --duties",
        "formulas dickson-5.toml --format mathml",
        "working series-parallel-3.toml --format latex",
        "difference half.toml series-parallel-3.toml",
        "map core-requirement.toml --candidate Linear\u00A0regulator --points 3 --format csv",
        "report memory-gears.toml --input-voltage 4 --rating 1.8 --output -",
        "find --ratio 1/3..1/2 --capacitors 2 --format json",
        "family",
        "family dickson 4 --farads 1e-9",
        "schema requirement",
    ];

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_command_prints_the_same_bytes_in_every_culture_and_on_every_run(string line)
    {
        ToolRun plain = Run(line, CultureInfo.InvariantCulture);
        Assert.NotEmpty(plain.Output);
        foreach (CultureInfo culture in new[] { "de-DE", "ar-SA", "tr-TR", "th-TH" }.Select(CultureInfo.GetCultureInfo).Append(HostileValues.OddCulture()))
        {
            ToolRun run = Run(line, culture);
            Assert.True(plain == run, $"{culture.Name}: {Difference(plain.Output, run.Output)} {Difference(plain.Error, run.Error)}");
        }
    }

    [Theory]
    [InlineData("1")]
    [InlineData("3")]
    [InlineData("32")]
    public void A_design_and_an_atlas_are_the_same_with_any_number_of_threads(string threads)
    {
        string[] design = ["design", _folder.Write("requirement.toml", Requirement()), "--format", "json"];
        ToolRun expected = ToolRun.Of(design), found = ToolRun.Of([.. design, "--threads", threads]);
        Assert.Equal((0, expected.Output, string.Empty), (found.Code, found.Output, found.Error));
        ToolRun.Of("atlas", "--capacitors", "2", "--output", _folder.PathOf("one"));
        ToolRun.Of("atlas", "--capacitors", "2", "--output", _folder.PathOf("other"), "--threads", threads);
        string file = Path.GetFileName(Assert.Single(Directory.GetFiles(_folder.PathOf("one"))));
        Assert.Equal(File.ReadAllBytes(_folder.PathOf(Path.Combine("one", file))), File.ReadAllBytes(_folder.PathOf(Path.Combine("other", file))));
    }

    [Fact]
    public void The_odd_culture_would_be_seen() => Assert.Equal("minus1~5", (-1.5).ToString(HostileValues.OddCulture()));

    // two sorts of candidates instead of every one
    private static string Requirement()
    {
        string text = File.ReadAllText(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml"));
        return text[..text.IndexOf("# every sort that is known", StringComparison.Ordinal)] + "[[candidates]]\nfamily = \"series-parallel\"\nsizes = [3, 4]\n[[candidates]]\nfamily = \"ladder\"\nsizes = 4\n";
    }

    private static ToolRun Run(string line, CultureInfo culture)
    {
        using CultureScope scope = new(culture);
        return ToolRun.Of([.. line.Split(' ').Select(w => w.EndsWith(".toml", StringComparison.Ordinal) ? RepositoryFiles.PathOf("docs", "examples", w) : w.Replace('\u00A0', ' '))]);
    }

    private static string Difference(string expected, string actual)
    {
        int at = expected.Zip(actual).TakeWhile(p => p.First == p.Second).Count();
        return expected == actual ? "no difference" : $"'{Around(expected)}' became '{Around(actual)}'";

        string Around(string text) => text[Math.Max(0, at - 20)..Math.Min(text.Length, at + 20)];
    }
}
