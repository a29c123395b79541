using System.Text;
using System.Text.Json;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Design.Maps;
using ScNet.Reconfiguration;
using ScNet.SteadyState;

namespace ScNet.Results;

/// <summary>
/// Results in rows as a document for other programs: JSON with the conditions and one object per row, or CSV with one
/// header line and one line per row. Immutable.
/// </summary>
/// <remarks>
/// A key is the name of the library's property in camel case, with its unit; a header of CSV is the path of the same
/// figure in JSON with dots between the keys, such as "slowSwitchingLimit.bestSplitOhms". JSON has exact values as
/// fractions in strings; CSV has the nearest decimals. What is undetermined or has no result is null, or an empty field.
/// Lists of names and the figures of single elements are in JSON only.
/// </remarks>
public sealed class ResultTable
{
    private readonly Column[] _columns;
    private readonly KeyValuePair<string, object?>[] _conditions;
    private readonly object?[][] _rows;

    private ResultTable(Column[] columns, KeyValuePair<string, object?>[] conditions, object?[][] rows)
    {
        _columns = columns;
        _conditions = conditions;
        _rows = rows;
    }

    /// <summary>The output impedance over frequency, beside both limits and the published estimates.</summary>
    /// <param name="rows">One row per mode and frequency.</param>
    public static ResultTable OfSweep(IEnumerable<ResultRow<ImpedancePoint>> rows) => SweepTable.Of(rows);

    /// <summary>Periodic steady states at one operating point.</summary>
    /// <param name="point">The operating point of all rows.</param>
    /// <param name="deadTimeSeconds">The dead time in each phase in seconds (s); 0 for none.</param>
    /// <param name="rows">The rows, in their order.</param>
    /// <param name="hasBudgets">Whether the rows have losses with devices.</param>
    public static ResultTable OfOperation(OperatingPoint point, double deadTimeSeconds, IEnumerable<ResultRow<OperatedMode>> rows, bool hasBudgets = false) =>
        OperationTable.Of(point, deadTimeSeconds, rows, hasBudgets);

    /// <summary>The ratios that the switches of a converter reach, a row each, with the three best patterns.</summary>
    /// <param name="file">The file of the converter as the caller named it, or null where there is none.</param>
    /// <param name="converter">The converter whose switches were searched.</param>
    /// <param name="reachable">What they reach.</param>
    /// <param name="hasPatterns">Whether to say in which phases each switch is closed.</param>
    public static ResultTable OfReach(string? file, Converter converter, ReachableRatios reachable, bool hasPatterns = false) =>
        ReachTable.Of(file, converter, reachable, hasPatterns);

    /// <summary>The candidates of a requirement in their order, then those that cannot do what is required.</summary>
    /// <param name="choice">The choice.</param>
    /// <param name="sensitivity">What would change the winner; null where that is not asked for.</param>
    public static ResultTable OfChoice(RankedChoice choice, ChoiceSensitivity? sensitivity = null) => ChoiceTable.Of(choice, sensitivity);

    /// <summary>The points of a map, the best mode of each and what it does.</summary>
    /// <param name="map">The map.</param>
    public static ResultTable OfMap(OperatingMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return MapTable.Of(map);
    }

    /// <summary>What elements must withstand: a row per element over all modes, at all changes and in each mode, and one per change of mode.</summary>
    /// <param name="inputVolts">The input voltages in volts (V) of all rows.</param>
    /// <param name="results">The converters.</param>
    /// <param name="hasRatings">Whether the rows are compared with devices.</param>
    public static ResultTable OfStress(Interval<double> inputVolts, IEnumerable<RatedStress> results, bool hasRatings = false) =>
        StressTable.Of(inputVolts, results, hasRatings);

    /// <summary>What gates need: a row per phase in which a switch is closed.</summary>
    /// <param name="inputVolts">The input voltages in volts (V) of all rows.</param>
    /// <param name="results">The converters.</param>
    public static ResultTable OfGates(Interval<double> inputVolts, IEnumerable<GateNeeds> results) => GateTable.Of(inputVolts, results);

    /// <summary>One set of switches for several ratios: a row per network with the phases in which each switch is closed.</summary>
    /// <param name="overlay">The networks laid over one another.</param>
    public static ResultTable OfOverlay(Overlay overlay) => OverlayTable.Of(overlay);

    /// <summary>How tolerances spread the output impedance: a row per mode and frequency.</summary>
    /// <param name="tolerances">The tolerances of all rows.</param>
    /// <param name="seed">What the samples were drawn from.</param>
    /// <param name="rows">The rows, in their order.</param>
    public static ResultTable OfTolerances(ComponentTolerances tolerances, int seed, IEnumerable<ResultRow<ToleratedMode>> rows) =>
        ToleranceTable.Of(tolerances, seed, rows);

    /// <summary>Modes of converters side by side.</summary>
    /// <param name="conditions">The conditions of all rows.</param>
    /// <param name="rows">The rows, in their order.</param>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="loadAmperes">The load current in amperes (A) at which the rows are compared too; null for none.</param>
    public static ResultTable OfComparisons(
        ComparisonConditions conditions, IEnumerable<ResultRow<ComparedMode>> rows, bool hasSilicon = false, double? loadAmperes = null) =>
        ComparisonTable.Of(conditions, rows, hasSilicon, loadAmperes);

    /// <summary>The figures by which compared modes can be sorted: the columns of the CSV text from "ratio" on.</summary>
    /// <param name="hasSilicon">Whether the rows are compared at equal silicon too.</param>
    /// <param name="hasLoad">Whether the rows are compared at a load too.</param>
    public static IReadOnlyList<string> ComparisonColumns(bool hasSilicon, bool hasLoad = false) => ComparisonTable.Columns(hasSilicon, hasLoad);

    /// <summary>Compared modes in the ascending order of a column, of efficiencies in the descending one, those without a value last.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="column">One of <see cref="ComparisonColumns"/>.</param>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public static IReadOnlyList<ResultRow<ComparedMode>> SortedComparisons(IEnumerable<ResultRow<ComparedMode>> rows, string column) =>
        ComparisonTable.Sorted(rows, column);

    /// <summary>The text as JSON: indented by two spaces, "\n" line ends, no line end after the last brace.</summary>
    public string ToJson() => JsonText.Of(writer =>
    {
        writer.WriteStartObject();
        writer.WritePropertyName("conditions");
        JsonText.WriteValue(writer, _conditions);
        writer.WriteStartArray("rows");
        foreach (object?[] row in _rows)
        {
            writer.WriteStartObject();
            WriteNested(writer, row);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    });

    /// <summary>The text as comma-separated values (RFC 4180, but with "\n" line ends).</summary>
    public string ToCsv()
    {
        StringBuilder text = new();
        CsvText.AppendLine(text, _columns.Where(c => c.IsInCsv).Select(c => c.Path));
        foreach (object?[] row in _rows)
        {
            CsvText.AppendLine(text, row.Where((_, i) => _columns[i].IsInCsv));
        }

        return text.ToString();
    }

    /// <summary>The CSV text.</summary>
    public override string ToString() => ToCsv();

    /// <summary>A table of rows that are each a mode, or a file that could not be read.</summary>
    internal static ResultTable Of<T>(
        IEnumerable<KeyValuePair<string, object?>> conditions, IReadOnlyCollection<Figure<T>> figures, IEnumerable<ResultRow<T>> rows)
        where T : class
    {
        Figure<ResultRow<T>>[] head =
        [
            new("file", r => r.File),
            new("converter", r => r.Outcome?.Converter.Name),
            new("mode", r => r.Outcome?.Mode.Name),
            new("status", r => r.Result is null ? "error" : "ok"),
            new("diagnostics", r => r.Diagnostics, HasColumn: false),
        ];
        return OfAny(conditions, [.. head, .. figures.Select(f => new Figure<ResultRow<T>>(f.Path, r => r.Result is { } result ? f.Value(result) : null, f.HasColumn))], rows);
    }

    /// <summary>A table of any rows.</summary>
    internal static ResultTable OfAny<T>(
        IEnumerable<KeyValuePair<string, object?>> conditions, IReadOnlyCollection<Figure<T>> figures, IEnumerable<T> rows) => new(
            [.. figures.Select(f => new Column(f.Path, f.HasColumn))],
            [.. conditions],
            [.. rows.Select(r => (object?[])[.. figures.Select(f => f.Value(r))])]);

    // figures whose paths begin alike stand next to one another
    private void WriteNested(Utf8JsonWriter writer, object?[] row)
    {
        string[] open = [];
        for (int i = 0; i < row.Length; i++)
        {
            string[] keys = _columns[i].Path.Split('.');
            int common = 0;
            while (common < open.Length && common < keys.Length - 1 && open[common] == keys[common])
            {
                common++;
            }

            Close(writer, open.Length - common);
            open = keys[..^1];
            foreach (string key in open[common..])
            {
                writer.WriteStartObject(key);
            }

            writer.WritePropertyName(keys[^1]);
            JsonText.WriteValue(writer, row[i]);
        }

        Close(writer, open.Length);
    }

    private static void Close(Utf8JsonWriter writer, int count)
    {
        for (int i = 0; i < count; i++)
        {
            writer.WriteEndObject();
        }
    }

    private readonly record struct Column(string Path, bool IsInCsv);
}
