using System.Globalization;

namespace ScNet.Synthesis.Tests;

/// <summary>The catalogue of the guide: rows of two capacitors are proved again, and one of three.</summary>
public class CatalogueTests
{
    public static TheoryData<string> SmallRows => new(Rows().Where(r => Cells(r)[1] == "2"));

    [Fact]
    public void The_catalogue_has_rows_of_two_and_three_capacitors()
    {
        Assert.True(Rows().Count(r => Cells(r)[1] == "2") >= 6);
        Assert.True(Rows().Count(r => Cells(r)[1] == "3") >= 4);
    }

    [Theory]
    [MemberData(nameof(SmallRows))]
    public void A_row_is_proved_again(string row)
    {
        string[] cells = Cells(row);
        SynthesisRequest request = Requests.Of(2, cells[0].Replace(", ", " ", StringComparison.Ordinal));
        if (cells[2] != "any")
        {
            double volts = double.Parse(cells[2].Split(' ')[0], CultureInfo.InvariantCulture);
            request = request with { SwitchRatingVolts = volts, LargestStack = 3, Cost = SynthesisCost.Devices };
        }

        SynthesisResult result = Solved.Of(request);
        Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
        Assert.Equal((cells[3], cells[4]), (Text(result.Converter!.Switches.Count), Text(result.Devices!.Sum())));
    }

    [Fact]
    public void Three_ratios_of_three_capacitors_take_ten_switches_and_the_work_of_seconds()
    {
        SynthesisResult result = SmallestConverter.Find(Requests.Of(3, "1/3 2/5 1/2") with { LargestEffort = 20 });
        Assert.Equal(SynthesisOutcome.Proved, result.Outcome);
        Assert.Equal(10, result.Cost);
    }

    private static IEnumerable<string> Rows() => File.ReadLines(RepositoryFiles.PathOf("docs", "guide", "smallest-converters.md"))
        .SkipWhile(line => !line.StartsWith("## A catalogue", StringComparison.Ordinal))
        .Where(line => line.StartsWith("| ", StringComparison.Ordinal))
        .Skip(1);

    private static string[] Cells(string row) => [.. row.Trim('|').Split('|').Select(c => c.Trim())];

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
