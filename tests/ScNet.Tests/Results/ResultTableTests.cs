using System.Text.Json.Nodes;
using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.SteadyState;
using ScNet.Tests.Design.Choice;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Results;

public sealed class ResultTableTests
{
    private static readonly string[] s_tables = ["comparison", "silicon", "load", "sweep", "operation", "budget", "reach", "choice", "map"];

    public static TheoryData<string> Tables => [.. s_tables];

    [Theory]
    [MemberData(nameof(Tables))]
    public void A_header_is_the_path_of_the_same_figure_in_the_json(string table)
    {
        ResultTable made = Make(table);
        JsonNode[] rows = [.. JsonNode.Parse(made.ToJson())!["rows"]!.AsArray().Select(r => r!)];
        string[][] lines = [.. made.ToCsv().TrimEnd('\n').Split('\n').Select(line => line.Split(','))];
        Assert.Equal(rows.Length + 1, lines.Length);
        for (int r = 0; r < rows.Length; r++)
        {
            Assert.Equal(lines[0].Length, lines[r + 1].Length);
            foreach ((string header, string cell) in lines[0].Zip(lines[r + 1]))
            {
                AssertSame(At(rows[r], header), cell, header);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Keys_are_in_camel_case(string table)
    {
        JsonNode document = JsonNode.Parse(Make(table).ToJson())!;
        Assert.All(Keys(document), key => Assert.Matches("^[a-z][A-Za-z0-9]*$", key));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")]
    public void The_text_is_the_same_in_every_culture(string culture)
    {
        string[] expected = [.. s_tables.SelectMany(t => new[] { Make(t).ToJson(), Make(t).ToCsv() })];
        using CultureScope scope = new(culture);
        Assert.Equal(expected, s_tables.SelectMany(t => new[] { Make(t).ToJson(), Make(t).ToCsv() }));
    }

    [Fact]
    public void A_mode_without_a_result_and_a_file_that_cannot_be_read_are_rows_with_their_reasons()
    {
        Converter shorted = Converter.Create("Shorted").Input("vin").Output("vout").Switch("s", "vin", "gnd", on: 1).Switch("t", "vout", "vin", on: 2).Build();
        ModeOutcome outcome = ModeAnalysis.Try(shorted, shorted.Modes[0]);
        NetlistReading bad = NetlistReader.Read("name = 5", "bad.toml");
        ResultTable table = SweepTable.Of([
            ResultRow.Of<ImpedancePoint>("shorted.toml", outcome, null), ResultRow.Unreadable<ImpedancePoint>("bad.toml", bad.Diagnostics)]);

        JsonNode rows = JsonNode.Parse(table.ToJson())!["rows"]!;
        Assert.Equal(["error", "error"], rows.AsArray().Select(r => (string?)r!["status"]));
        Assert.Equal((DiagnosticCodes.InputShorted, null), ((string?)rows[0]!["diagnostics"]![0]!["code"], rows[0]!["ohms"]));
        Assert.Equal((null, 1), ((string?)rows[1]!["converter"], (int?)rows[1]!["diagnostics"]![0]!["line"]));
        Assert.Equal("bad.toml,,,error,,,,,,,,,,", table.ToCsv().Split('\n')[2]);
    }

    [Fact]
    public void Names_are_quoted_in_csv_where_they_must_be()
    {
        Converter odd = Converter.Create("a \"b\", c").Input("vin").Output("vout").Switch("s", "vin", "vout", on: [1, 2]).Build();
        ModeAnalysis analysis = ModeAnalysis.Of(odd);
        ResultTable table = SweepTable.Of([ResultRow.Of(null, ModeAnalysis.Try(odd, odd.Modes[0]), OutputImpedance.Of(analysis).At(1e6))]);
        Assert.StartsWith(",\"a \"\"b\"\", c\",default,ok,1000000,", table.ToCsv().Split('\n')[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_are_sorted_by_any_column_and_by_no_other()
    {
        ResultRow<ComparedMode>[] rows = [.. new[] { 4, 2, 3 }.Select(n => Compared(Ladder.StepDown(n), hasSilicon: false))];
        ResultTable table = ResultTable.OfComparisons(Conditions, rows);
        Assert.Equal([4, 3, 2], table.Order("ratio").Select(i => Levels(rows[i])));
        Assert.Equal([2, 3, 4], table.Order("ratio", isDescending: true).Select(i => Levels(rows[i])));
        Assert.Equal([2, 3, 4], table.Order("switchCount").Select(i => Levels(rows[i])));
        Assert.Throws<ArgumentException>(() => table.Order("switchStress.exceeding"));
        Assert.All(table.Columns, column => Assert.Equal(table.ToCsv().Split('\n').Order(), table.Sorted(column).ToCsv().Split('\n').Order()));

        static int Levels(ResultRow<ComparedMode> row) => row.Outcome!.Converter.Switches.Count / 2;
    }

    private static ResultTable Make(string table)
    {
        Converter converter = Ladder.StepDown(3, farads: 1e-9, ohms: 2);
        ModeAnalysis analysis = ModeAnalysis.Of(converter);
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        return table switch
        {
            "comparison" => ComparisonTable.Of(Conditions, [Compared(converter, hasSilicon: false)]),
            "silicon" => ComparisonTable.Of(Conditions, [Compared(converter, hasSilicon: true)], hasSilicon: true),
            "sweep" => SweepTable.Of(new[] { 1e5, 1e9 }.Select(f => ResultRow.Of("a.toml", outcome, OutputImpedance.Of(analysis).At(f)))),
            "operation" => OperationTable.Of(
                new OperatingPoint(3, 0.01, 1e7), 0, [ResultRow.Of("a.toml", outcome, new OperatedMode(PeriodicSteadyState.Of(analysis, new OperatingPoint(3, 0.01, 1e7))))]),
            "load" => ComparisonTable.Of(Conditions, [Compared(converter, hasSilicon: false, amperes: 0.001)], loadAmperes: 0.001),
            "budget" => OperationTable.Of(
                new OperatingPoint(3, 0.01, 1e7),
                0,
                [ResultRow.Of("a.toml", outcome, new OperatedMode(
                    PeriodicSteadyState.Of(analysis, new OperatingPoint(3, 0.01, 1e7)),
                    LossModel.Of(Sized.Of(converter), analysis).At(new OperatingPoint(3, 0.01, 1e7))))],
                hasBudgets: true),
            "choice" => ResultTable.OfChoice(Choice, ChoiceSensitivity.Of(RankedChoice.Of(CoreRequirement.Of(), [Candidate.Linear]))),
            "map" => ResultTable.OfMap(OperatingMap.Of(Choice.Winner!.Modes, [2.8, 4.2], [0.5, 0.8], [1e-5, 1e-2])),
            _ => ReachTable.Of("a.toml", Half, ReachableRatios.Of(Half)),
        };
    }

    // one ranked with sizes, one without, one rejected
    private static RankedChoice Choice { get; } = RankedChoice.Of(
        CoreRequirement.Of(), [Candidate.Linear, Candidate.Of(SeriesParallel.StepDown(3)), Candidate.Of(SeriesParallel.StepDown(4))]);

    private static Converter Half => SeriesParallel.StepDown(2);

    private static ComparisonConditions Conditions => new(3.6, 0.9);

    private static ResultRow<ComparedMode> Compared(Converter converter, bool hasSilicon, double? amperes = null)
    {
        ModeOutcome outcome = ModeAnalysis.Try(converter, converter.Modes[0]);
        SiliconComparison? silicon = hasSilicon
            ? SiliconComparison.Of(SiliconComparison.Rate(ConverterAnalysis.Of(converter), Conditions), converter.Modes[0].Name, Conditions)
            : null;
        return ResultRow.Of("a.toml", outcome, new ComparedMode(
            ModeComparison.Of(outcome.Require(), Conditions), silicon, amperes is { } load ? ComparedLoad.Of(outcome.Require(), Conditions, load) : null));
    }

    private static JsonNode? At(JsonNode row, string path) => path.Split('.').Aggregate((JsonNode?)row, (node, key) =>
    {
        Assert.True(node!.AsObject().ContainsKey(key), path);
        return node[key];
    });

    private static void AssertSame(JsonNode? value, string cell, string header)
    {
        string text = value switch
        {
            null => string.Empty,
            JsonValue json when json.TryGetValue(out string? exact) && exact.Contains('/', StringComparison.Ordinal) && header != "file" =>
                Quantity.Exact(Fractions.Fraction.FromString(exact, System.Globalization.CultureInfo.InvariantCulture)).ToDouble().ToString("R", System.Globalization.CultureInfo.InvariantCulture),
            JsonValue json when json.TryGetValue(out string? name) => name,
            _ => value.ToJsonString(),
        };
        Assert.True(text == cell, $"{header}: {text} in JSON, {cell} in CSV");
    }

    private static IEnumerable<string> Keys(JsonNode? node) => node switch
    {
        // names of elements are no keys of the format
        JsonObject table => table.SelectMany(e => new[] { e.Key }.Concat(e.Key is "switches" or "capacitors" or "stacks" or "on" ? [] : Keys(e.Value))),
        JsonArray array => array.SelectMany(Keys),
        _ => [],
    };
}
