using System.Globalization;
using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;

namespace ScNet.Tests.Documentation;

/// <summary>Every netlist of docs/examples does what its comments claim, mode by mode.</summary>
public sealed class ExampleNetlistsTests
{
    private const string RatioMark = "# ratio:";
    private const string BlocksMark = "# blocks:";

    private static readonly string s_directory = FindExamples();

    private static readonly string[] s_files =
        [.. Directory.EnumerateFiles(s_directory, "*.toml").Select(path => Path.GetFileName(path))
            .Where(file => !file.EndsWith("requirement.toml", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Files => [.. s_files];

    [Fact]
    public void There_are_at_least_seven_netlists_and_one_of_them_has_three_gears()
    {
        Assert.True(s_files.Length >= 7);
        Assert.Contains(s_files, file => Claims(file, RatioMark).Distinct().Count() >= 3);
        Assert.Contains(s_files, file => Read(file).Phases.Count == 3);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_mode_has_the_ratio_that_the_file_claims(string file)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(Read(file));
        Assert.Equal(Claims(file, RatioMark), analysis.Modes.Select(m => m.Require().Ratio.ToFraction()));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_mode_blocks_at_most_what_the_file_claims(string file)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(Read(file));
        Assert.Equal(
            Claims(file, BlocksMark),
            analysis.Modes.Select(m => m.Require().BlockingVoltages.Peaks.Max(peak => peak.ToFraction().Abs())));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Nothing_is_found_fault_with(string file)
    {
        Converter converter = Read(file);
        Assert.Empty(converter.Warnings);
        Assert.All(
            ConverterAnalysis.Of(converter).Modes,
            mode => Assert.Empty(mode.Diagnostics));
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void The_file_says_that_it_is_invented_and_the_readme_names_it(string file)
    {
        Assert.Contains("Invented", File.ReadLines(PathOf(file)).First(), StringComparison.Ordinal);
        Assert.Contains($"({file})", File.ReadAllText(PathOf("README.md")), StringComparison.Ordinal);
    }

    private static Converter Read(string file) => NetlistReader.ReadFile(PathOf(file)).GetConverter();

    private static Fraction[] Claims(string file, string mark) =>
    [
        .. File.ReadLines(PathOf(file))
            .Where(line => line.StartsWith(mark, StringComparison.Ordinal))
            .Select(line => Fraction.FromString(line[mark.Length..].Trim(), CultureInfo.InvariantCulture)),
    ];

    private static string PathOf(string file) => Path.Combine(s_directory, file);

    private static string FindExamples()
    {
        for (DirectoryInfo? directory = new(AppContext.BaseDirectory); directory is not null; directory = directory.Parent)
        {
            string examples = Path.Combine(directory.FullName, "docs", "examples");
            if (Directory.Exists(examples))
            {
                return examples;
            }
        }

        throw new DirectoryNotFoundException("No directory above the tests holds docs/examples.");
    }
}
