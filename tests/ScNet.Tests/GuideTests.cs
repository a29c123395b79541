using System.Text.RegularExpressions;
using ScNet.Derivations.Documents;
using ScNet.Design.Requirements;
using ScNet.Netlists;

namespace ScNet.Tests;

/// <summary>
/// Every TOML block of the guide reads as the guide says: as a netlist, or as a requirement or derivation where it is marked so; without
/// errors, or with some where it is marked "bad". A block marked as a part goes on from the requirement before it.
/// </summary>
public sealed partial class GuideTests
{
    private const string Bad = "bad", Requirement = "requirement", Part = "requirement part", Derivation = "derivation";

    // what derivations of the guide are about
    private static readonly Converter s_third = NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "series-parallel-3.toml")).GetConverter();

    public static TheoryData<string, int, string, string> Blocks
    {
        get
        {
            TheoryData<string, int, string, string> blocks = [];
            foreach (string file in Directory.EnumerateFiles(RepositoryFiles.PathOf("docs", "guide"), "*.md").Order(StringComparer.Ordinal))
            {
                (int number, string whole) = (0, string.Empty);
                foreach (Match match in Block().Matches(File.ReadAllText(file)))
                {
                    (string mark, string text) = (match.Groups["mark"].Value, match.Groups["text"].Value);
                    whole = mark == Requirement ? text : whole;
                    blocks.Add(Path.GetFileName(file), ++number, mark, mark == Part ? whole + text : text);
                }
            }

            return blocks;
        }
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_of_the_guide_reads_as_it_says(string file, int number, string mark, string text)
    {
        Assert.Contains(mark, new[] { string.Empty, Bad, Requirement, Part, Derivation });
        string name = $"{file}#{number}";
        IReadOnlyList<Diagnostic> diagnostics = mark switch
        {
            Requirement or Part => RequirementReader.Read(text, name).Diagnostics,
            Derivation => DerivationReader.Read(text, s_third, name).Diagnostics,
            _ => NetlistReader.Read(text, name).Diagnostics,
        };

        Assert.True(diagnostics.Any(d => d.Severity == DiagnosticSeverity.Error) == (mark == Bad), string.Join('\n', diagnostics));
    }

    [Fact]
    public void The_page_of_the_format_shows_the_messages_of_its_bad_blocks()
    {
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "netlist-document.md"));
        string[] bad = [.. Block().Matches(page).Where(m => m.Groups["mark"].Value == Bad).Select(m => m.Groups["text"].Value)];
        Assert.NotEmpty(bad);
        Assert.All(bad, text => Assert.All(
            NetlistReader.Read(text, "bad.toml").Diagnostics, d => Assert.Contains(d.ToString(), page, StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"^```toml(?: (?<mark>[^\r\n]+))?\r?\n(?<text>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
