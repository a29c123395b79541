using System.Text.RegularExpressions;
using ScNet.Netlists;

namespace ScNet.Tests;

/// <summary>Every TOML block of the guide reads as the guide says: without errors, or with some where it is marked "bad".</summary>
public sealed partial class GuideTests
{
    public static TheoryData<string, int, bool, string> Blocks
    {
        get
        {
            TheoryData<string, int, bool, string> blocks = [];
            foreach (string file in Directory.EnumerateFiles(RepositoryFiles.PathOf("docs", "guide"), "*.md").Order(StringComparer.Ordinal))
            {
                int number = 0;
                foreach (Match match in Block().Matches(File.ReadAllText(file)))
                {
                    blocks.Add(Path.GetFileName(file), ++number, match.Groups["bad"].Success, match.Groups["text"].Value);
                }
            }

            return blocks;
        }
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_of_the_guide_reads_as_it_says(string file, int number, bool bad, string text)
    {
        NetlistReading reading = NetlistReader.Read(text, $"{file}#{number}");

        Assert.True(reading.HasResult != bad, string.Join('\n', reading.Diagnostics));
    }

    [Fact]
    public void The_page_of_the_format_shows_the_messages_of_its_bad_blocks()
    {
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "netlist-document.md"));
        string[] bad = [.. Block().Matches(page).Where(m => m.Groups["bad"].Success).Select(m => m.Groups["text"].Value)];
        Assert.NotEmpty(bad);
        Assert.All(bad, text => Assert.All(
            NetlistReader.Read(text, "bad.toml").Diagnostics, d => Assert.Contains(d.ToString(), page, StringComparison.Ordinal)));
    }

    [GeneratedRegex(@"^```toml(?<bad> bad)?\r?\n(?<text>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
