using System.Globalization;
using ScNet.Netlists;

namespace ScNet.Synthesis.Tests;

/// <summary>The catalogue of the guide: what is asked in each of its rows, and how an answer is written.</summary>
internal static class Catalogue
{
    /// <summary>The work after which a row is given up.</summary>
    public const double LargestEffort = 600;

    /// <summary>The heading of the table.</summary>
    public const string Heading = """
        | ratios | flying capacitors | from | device | at changes | switches | devices | | effort |
        |---|---|---|---|---|---|---|---|---|
        """;

    /// <summary>The rows in their order.</summary>
    public static IReadOnlyList<CatalogueRow> Rows { get; } =
    [
        .. Of(2, "1/2, 1/3", 4.2, null, 1.5, 1.8),
        new("1/2, 1/3", 2, 4.2, 1.5, true),
        .. Of(2, "1/3, 1/2, 2/3", 4.2, null, 1.5, 1.8),
        new("1/3, 1/2, 2/3", 2, 4.2, 1.5, true),
        .. Of(2, "2, 3", 1.2, null, 1.5, 1.8),
        .. Of(2, "3/2, 2", 4.2, null, 1.5, 1.8),
        .. Of(2, "3/2, 2, 3", 1.2, null, 1.5, 1.8),
        .. Of(3, "1/4, 1/2, 3/4", 4.2, null, 1.5, 1.8),
        .. Of(3, "1/3, 2/5, 1/2", 4.2, null, 1.5, 1.8),
        .. Of(3, "1/5, 1/4, 1/3", 4.2, (double?)null),
        .. Of(3, "1/5, 1/4, 1/3, 1/2", 4.2, null, 1.5, 1.8),
    ];

    /// <summary>The examples that make the ratios of rows without ratings.</summary>
    public static IReadOnlyList<(string Ratios, string File)> Examples { get; } = [("1/3, 1/2, 2/3", "memory-gears.toml"), ("1/5, 1/4, 1/3", "core-gears.toml")];

    /// <summary>The lines of the page and where the rows of its table begin and end.</summary>
    public static (List<string> Lines, int First, int End) Read()
    {
        List<string> lines = [.. File.ReadLines(Page)];
        int heading = lines.IndexOf(Heading.Split('\n')[0].TrimEnd());
        int first = heading + 2, end = lines.FindIndex(first, line => !line.StartsWith('|'));
        return heading < 0 ? throw new InvalidOperationException($"Expected the heading of the catalogue in {Page}.") : (lines, first, end);
    }

    /// <summary>Writes the line of one row into the page.</summary>
    public static void Write(CatalogueRow row, string line)
    {
        (List<string> lines, int first, int end) = Read();
        List<string> rows = [.. Rows.Select(r => lines[first..end].Find(l => l.StartsWith(r.Asked, StringComparison.Ordinal))).OfType<string>()];
        rows.RemoveAll(l => l.StartsWith(row.Asked, StringComparison.Ordinal));
        rows.Add(line);
        string[] inOrder = [.. Rows.Select(r => rows.Find(l => l.StartsWith(r.Asked, StringComparison.Ordinal))).OfType<string>()];
        File.WriteAllLines(Page, [.. lines[..first], .. inOrder, .. lines[end..]]);
    }

    /// <summary>The netlist of an example.</summary>
    public static Converter Example(string file) => NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", file)).GetConverter();

    private static string Page => RepositoryFiles.PathOf("docs", "guide", "smallest-converters.md");

    private static IEnumerable<CatalogueRow> Of(int capacitors, string ratios, double inputVolts, params double?[] devices) =>
        devices.Select(volts => new CatalogueRow(ratios, capacitors, inputVolts, volts, false));
}

/// <summary>A row of the catalogue.</summary>
/// <param name="Ratios">The ratios, with commas.</param>
/// <param name="Capacitors">The flying capacitors.</param>
/// <param name="InputVolts">The input voltage in volts (V).</param>
/// <param name="DeviceVolts">The rating of devices in volts (V); null for none.</param>
/// <param name="HoldsAtChanges">Whether it holds at changes.</param>
internal sealed record CatalogueRow(string Ratios, int Capacitors, double InputVolts, double? DeviceVolts, bool HoldsAtChanges)
{
    /// <summary>What is asked, as the line of the table begins.</summary>
    public string Asked => string.Create(
        CultureInfo.InvariantCulture,
        $"| {Ratios} | {Capacitors} | {InputVolts} V | {(DeviceVolts is { } volts ? $"{volts} V" : "any")} | {(HoldsAtChanges ? "yes" : "no")} |");

    /// <summary>The request: least devices with a rating, least switches without.</summary>
    public SynthesisRequest Request
    {
        get
        {
            SynthesisRequest request = Requests.Of(Capacitors, Ratios.Replace(", ", " ", StringComparison.Ordinal), InputVolts) with { HoldsAtChanges = HoldsAtChanges, LargestEffort = Catalogue.LargestEffort };
            return DeviceVolts is { } volts ? request with { SwitchRatingVolts = volts, LargestStack = 3, Cost = SynthesisCost.Devices } : request;
        }
    }

    /// <summary>The line without its effort.</summary>
    public string Answered(SynthesisResult result)
    {
        string switches = result.Converter is null ? "" : result.Converter.Switches.Count.ToString(CultureInfo.InvariantCulture);
        string devices = result.Devices is null ? "" : result.Devices.Sum().ToString(CultureInfo.InvariantCulture);
        string proof = result.Outcome switch
        {
            SynthesisOutcome.Proved => "proved",
            SynthesisOutcome.NoneExists => "none exists",
            _ => string.Create(CultureInfo.InvariantCulture, $"at least {result.Bound}"),
        };
        return $"{Asked} {switches} | {devices} | {proof} |";
    }

    /// <summary>The line with its effort, to two digits.</summary>
    public string Line(SynthesisResult result) => string.Create(
        CultureInfo.InvariantCulture, $"{Answered(result)} {double.Parse(result.Effort.ToString("G2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)} |");

    /// <inheritdoc/>
    public override string ToString() => Asked;
}
