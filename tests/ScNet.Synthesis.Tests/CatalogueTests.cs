namespace ScNet.Synthesis.Tests;

/// <summary>
/// The catalogue of the guide: rows of two capacitors are proved again, and one of three. With SCNET_WRITE_CATALOGUE=all
/// every row is made anew and written, with the ratios of a row in its place ("1/4, 1/2, 3/4") only those rows.
/// </summary>
public class CatalogueTests
{
    public static TheoryData<string> SmallRows => Asked(holdsAtChanges: false);

    public static TheoryData<string> SmallRowsOfChanges => Asked(holdsAtChanges: true);

    [Fact]
    public void The_page_has_every_row_of_the_catalogue_and_no_other()
    {
        string? written = Environment.GetEnvironmentVariable("SCNET_WRITE_CATALOGUE");
        foreach (CatalogueRow row in Catalogue.Rows.Where(r => written == "all" || r.Ratios == written))
        {
            Catalogue.Write(row, row.Line(SmallestConverter.Find(row.Request)));
        }

        (List<string> lines, int first, int end) = Catalogue.Read();
        Assert.Equal(Catalogue.Rows.Count, end - first);
        Assert.All(Catalogue.Rows.Zip(lines[first..end]), r => Assert.StartsWith(r.First.Asked, r.Second, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(SmallRows))]
    public void A_row_is_proved_again(string asked) => Prove(asked);

    [Theory]
    [Trait("Length", "Long")]
    [MemberData(nameof(SmallRowsOfChanges))]
    public void A_row_with_ratings_at_changes_is_proved_again(string asked) => Prove(asked);

    private static TheoryData<string> Asked(bool holdsAtChanges) =>
        new(Catalogue.Rows.Where(r => r.Capacitors == 2 && r.HoldsAtChanges == holdsAtChanges).Select(r => r.Asked));

    private static void Prove(string asked)
    {
        CatalogueRow row = Catalogue.Rows.Single(r => r.Asked == asked);
        (List<string> lines, int first, int end) = Catalogue.Read();
        Assert.Contains(lines[first..end], line => line.StartsWith(row.Answered(Solved.Of(row.Request)), StringComparison.Ordinal));
    }

    [Fact]
    [Trait("Length", "Long")]
    public void Three_ratios_of_three_capacitors_take_ten_switches_and_the_work_of_seconds()
    {
        SynthesisResult result = SmallestConverter.Find(Requests.Of(3, "1/3 2/5 1/2") with { LargestEffort = 20 });
        Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
        Assert.Equal(10, result.Cost);
    }

    // the examples are drawn by hand: what the page says of them beside the table
    [Fact]
    public void The_page_says_how_many_switches_the_examples_take()
    {
        string page = File.ReadAllText(RepositoryFiles.PathOf("docs", "guide", "smallest-converters.md"));
        Assert.All(Catalogue.Examples, example =>
        {
            Converter converter = Catalogue.Example(example.File);
            Assert.Equal(example.Ratios.Split(", ").Order(StringComparer.Ordinal), converter.Modes.Select(m => m.Name).Order(StringComparer.Ordinal));
            CatalogueRow row = Catalogue.Rows.First(r => r.Ratios == example.Ratios && r.DeviceVolts is null);
            Assert.Equal(row.Capacitors, converter.Capacitors.Count);
            Assert.Contains($"({"../examples/" + example.File}) | {example.Ratios} | {converter.Switches.Count} |", page, StringComparison.Ordinal);
        });
    }
}
