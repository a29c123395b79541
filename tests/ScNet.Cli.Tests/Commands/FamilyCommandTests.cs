using System.Globalization;
using Fractions;
using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.Topologies;

namespace ScNet.Cli.Tests.Commands;

public sealed class FamilyCommandTests
{
    /// <summary>A command line, the name of the converter and the ratio of its first mode.</summary>
    public static TheoryData<string, string, string> Families => new()
    {
        { "series-parallel 3", "Series-parallel 3:1", "1/3" },
        { "series-parallel 3 --step-up", "Series-parallel 1:3", "3" },
        { "ladder 4", "Ladder 4:1", "1/4" },
        { "ladder --step-up 4", "Ladder 1:4", "4" },
        { "dickson 5", "Dickson 5:1", "1/5" },
        { "dickson 5 --step-up", "Dickson 1:5", "5" },
        { "cockcroft-walton 3", "Cockcroft-Walton 4:1", "1/4" },
        { "cockcroft-walton 3 --step-up", "Cockcroft-Walton 1:4", "4" },
        { "fibonacci 4", "Fibonacci step-down of 4 stages", "1/8" },
        { "fibonacci 4 --step-up", "Fibonacci step-up of 4 stages", "8" },
        { "doubler 2", "Doubler step-down of 2 stages", "1/4" },
        { "doubler 2 --step-up", "Doubler step-up of 2 stages", "4" },
        { "fraction 2 3", "Fractional 2/3", "2/3" },
        { "fraction 5 2", "Fractional 5/2", "5/2" },
        { "binary 3 3", "Binary 3/8", "3/8" },
        { "binary 3 3 --step-up", "Binary 8/3", "8/3" },
        { "binary 2", "Binary 1/4 to 3/4", "1/4" },
        { "recursive 3 5", "Recursive 5/8", "5/8" },
        { "recursive 3 5 --step-up", "Recursive 8/5", "8/5" },
        { "recursive 2", "Recursive 1/4 to 3/4", "1/4" },
        { "inverter 2", "Polarity inverter -1/2", "-1/2" },
        { "inverter 2 --step-up", "Polarity inverter -2", "-2" },
        { "inverter 2 3", "Polarity inverter -2/3", "-2/3" },
        { "inductive 2 9", "Inductive step-down, duty 2/9", "2/9" },
        { "inductive-up 2 9", "Inductive step-up, duty 2/9", "9/7" },
        { "inductive-inverter 2 9", "Inductive inverter, duty 2/9", "-2/7" },
        { "flying-capacitor 4 2 9", "Flying-capacitor stage, 4 levels, duty 2/9", "2/9" },
        { "series-charged 2 9", "Series-charged stage, duty 2/9", "2/9" },
        { "series-capacitor 2 9", "Series-capacitor stage, duty 2/9", "1/9" },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void A_family_is_a_document_of_its_ratio(string line, string name, string ratio)
    {
        ToolRun run = ToolRun.Of(["family", .. line.Split(' ')]);
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        NetlistReading reading = NetlistReader.Read(run.Output);
        Assert.Empty(reading.Diagnostics);
        Converter converter = reading.GetConverter();
        Assert.Equal(name, converter.Name);
        Assert.Equal(Fraction.FromString(ratio, CultureInfo.InvariantCulture), ModeAnalysis.Of(converter, converter.Modes[0]).Ratio.ToFraction());
    }

    [Fact]
    public void Every_form_is_tried_above_in_both_directions()
    {
        string[] lines = [.. Families.Select(row => (string)row[0])];
        Assert.All(FamilyCatalogue.All, form => Assert.Equal(
            form.StepUpRatio is null ? 1 : 2,
            lines.Select(line => line.Replace(" --step-up", string.Empty, StringComparison.Ordinal).Split(' '))
                .Count(words => words[0] == form.Name && words.Length - 1 == form.Parameters.Count) - (form.Name == "fraction" ? 1 : 0)));
    }

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_document_is_the_same_text_in_every_culture(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("family", "series-parallel", "2", "--farads", "2.5e-9", "--ohms", "0.5");
        Assert.Equal(
            """
            name = "Series-parallel 2:1"
            input = "vin"
            output = "vout"

            [capacitors]
            fly1 = { between = ["p1", "n1"], farads = 2.5e-9 }

            [switches]
            series1 = { between = ["vin", "p1"], ohms = 0.5, on = 1 }
            series2 = { between = ["vout", "n1"], ohms = 0.5, on = 1 }
            top1 = { between = ["p1", "vout"], ohms = 0.5, on = 2 }
            bottom1 = { between = ["n1", "gnd"], ohms = 0.5, on = 2 }

            """.ReplaceLineEndings("\n"),
            run.Output);
    }

    [Theory]
    [InlineData("")]
    [InlineData("ar-SA")]
    public void Without_a_name_the_families_are_listed_with_sizes_and_ratios(string culture)
    {
        using CultureScope scope = new(culture);
        ToolRun run = ToolRun.Of("family");
        Assert.Equal((0, string.Empty), (run.Code, run.Error));
        Assert.Equal(File.ReadAllText("Commands/family.expected.txt").ReplaceLineEndings("\n"), run.Output);
    }

    [Theory]
    [InlineData("tower 3", "There is no family 'tower'. There are series-parallel, ladder, dickson, cockcroft-walton, fibonacci, doubler, fraction, binary, recursive, inverter, inductive, inductive-up, inductive-inverter, flying-capacitor, series-charged, series-capacitor.")]
    [InlineData("Ladder 3", "There is no family 'Ladder'. There are series-parallel, ladder, dickson, cockcroft-walton, fibonacci, doubler, fraction, binary, recursive, inverter, inductive, inductive-up, inductive-inverter, flying-capacitor, series-charged, series-capacitor.")]
    [InlineData("ladder", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder'.")]
    [InlineData("ladder 1", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder 1'.")]
    [InlineData("ladder 1001", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder 1001'.")]
    [InlineData("ladder 2.0", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder 2.0'.")]
    [InlineData("ladder -3", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder -3'.")]
    [InlineData("ladder 3 --load", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder 3 --load'.")]
    [InlineData("ladder 99999999999", "Expected 'ladder N' with whole numbers N from 2 to 1000, but got 'ladder 99999999999'.")]
    [InlineData("fraction 6 5", "Expected 'fraction P Q' with whole numbers P and Q from 1 to 5 in lowest terms, but got 'fraction 6 5'.")]
    [InlineData("fraction 0 5", "Expected 'fraction P Q' with whole numbers P and Q from 1 to 5 in lowest terms, but got 'fraction 0 5'.")]
    [InlineData("fraction 2 4", "Expected 'fraction P Q' with whole numbers P and Q from 1 to 5 in lowest terms, but got 'fraction 2 4'.")]
    [InlineData("inverter 2 2", "Expected 'inverter N' with whole numbers N from 1 to 1000, or 'inverter P Q' with whole numbers P and Q from 1, P + Q up to 5 in lowest terms, but got 'inverter 2 2'.")]
    [InlineData("binary 3 8", "Expected 'binary N K' with whole numbers N from 1 to 30, K from 1, below 2^N, or 'binary N' with whole numbers N from 1 to 10, but got 'binary 3 8'.")]
    [InlineData("binary 11", "Expected 'binary N K' with whole numbers N from 1 to 30, K from 1, below 2^N, or 'binary N' with whole numbers N from 1 to 10, but got 'binary 11'.")]
    [InlineData("inverter 3 4", "Expected 'inverter N' with whole numbers N from 1 to 1000, or 'inverter P Q' with whole numbers P and Q from 1, P + Q up to 5 in lowest terms, but got 'inverter 3 4'.")]
    [InlineData("inverter 2147483647 2147483646", "Expected 'inverter N' with whole numbers N from 1 to 1000, or 'inverter P Q' with whole numbers P and Q from 1, P + Q up to 5 in lowest terms, but got 'inverter 2147483647 2147483646'.")]
    [InlineData("fraction 2 3 --step-up", "The family fraction P Q has no --step-up. Its ratio is P/Q.")]
    [InlineData("--step-up", "Expected the name of a family with --step-up.")]
    [InlineData("--ohms 2", "Expected the name of a family with --ohms.")]
    [InlineData("ladder 3 --farads 0", "Expected a positive number of farads (F) after --farads, such as 2.5 or 1e-6 (from 1e-60 to 1e60), but got '0'.")]
    public void What_is_no_family_is_refused(string line, string message)
    {
        ToolRun run = ToolRun.Of(["family", .. line.Split(' ')]);
        Assert.Equal((2, string.Empty), (run.Code, run.Output));
        Assert.Contains($"scnet: {message}", run.ErrorLines);
    }

    [Fact]
    public void The_largest_of_each_family_is_written()
    {
        string[] lines = ["ladder 1000", "dickson 1000", "fibonacci 1000", "binary 30 1073741823", "recursive 30 1", "binary 10", "recursive 10"];
        Assert.All(lines, line => Assert.Equal(0, ToolRun.Of(["family", .. line.Split(' ')]).Code));
    }
}
