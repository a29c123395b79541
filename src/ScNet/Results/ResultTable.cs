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
[ShownAsText("It is the document that its text is.")]
public sealed class ResultTable
{
    private readonly Column[] _columns;
    private readonly KeyValuePair<string, object?>[] _conditions;
    private readonly Row[] _rows;

    private ResultTable(Column[] columns, KeyValuePair<string, object?>[] conditions, Row[] rows)
    {
        _columns = columns;
        _conditions = conditions;
        _rows = rows;
        Columns = [.. columns.Where(c => c.IsInCsv).Select(c => c.Path)];
    }

    /// <summary>The headers of the CSV text, by which rows can be sorted.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>The headers of the CSV text of <see cref="OfReach"/> without patterns.</summary>
    public static IReadOnlyList<string> ReachColumns => ReachTable.Columns;

    /// <summary>The headers of the CSV text of <see cref="OfOperation"/> without losses.</summary>
    public static IReadOnlyList<string> OperationColumns => OperationTable.Columns;

    /// <summary>The headers of the CSV text of <see cref="OfChoice"/>.</summary>
    public static IReadOnlyList<string> ChoiceColumns => ChoiceTable.Columns;

    /// <summary>The headers of the CSV text of <see cref="OfMap"/>.</summary>
    public static IReadOnlyList<string> MapColumns => MapTable.Columns;

    /// <summary>The headers of the CSV text of <see cref="OfStress"/> without ratings.</summary>
    public static IReadOnlyList<string> StressColumns { get; } = OfStress(default, []).Columns;

    /// <summary>The headers of the CSV text of <see cref="OfGates"/>.</summary>
    public static IReadOnlyList<string> GateColumns { get; } = OfGates(default, []).Columns;

    /// <summary>The headers of the CSV text of <see cref="OfTolerances"/>.</summary>
    public static IReadOnlyList<string> ToleranceColumns { get; } = OfTolerances(new ComponentTolerances(), 0, []).Columns;

    /// <summary>The output impedance over frequency, beside both limits and the published estimates.</summary>
    /// <param name="rows">One row per mode and frequency.</param>
    public static ResultTable OfSweep(IEnumerable<ResultRow<ImpedancePoint>> rows) => SweepTable.Of(rows);

    /// <summary>Periodic steady states over input voltage, load, duty or frequency; figures of the whole only.</summary>
    /// <param name="rows">One row per mode and operating point.</param>
    public static ResultTable OfOperatingSweep(IEnumerable<ResultRow<SweptMode>> rows) => OperationTable.OfSweep(rows);

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
    /// <param name="hasBudgets">Whether the rows have the losses of devices at the load.</param>
    public static ResultTable OfComparisons(
        ComparisonConditions conditions, IEnumerable<ResultRow<ComparedMode>> rows, bool hasSilicon = false, double? loadAmperes = null, bool hasBudgets = false) =>
        ComparisonTable.Of(conditions, rows, hasSilicon, loadAmperes, hasBudgets);

    /// <summary>
    /// The positions of the rows in the order of a column: numbers by size, texts by the code of their letters, rows without a value
    /// last in either direction, rows of equal value in the order they have. In the columns of the slow limit a compared mode with
    /// charge sharing stands by that.
    /// </summary>
    /// <param name="column">One of <see cref="Columns"/>.</param>
    /// <param name="isDescending">Whether the largest comes first.</param>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public IReadOnlyList<int> Order(string column, bool isDescending = false)
    {
        int index = Array.FindIndex(_columns, c => c.IsInCsv && c.Path == column);
        if (index < 0)
        {
            throw new ArgumentException($"Expected one of {string.Join(", ", Columns)}, but got '{column}'.", nameof(column));
        }

        return RowOrder.Of([.. _rows.Select(r => r.SortValues.TryGetValue(index, out object? value) ? value : r.Values[index])], isDescending);
    }

    /// <summary>The same table with its rows in the order of a column (<see cref="Order"/>).</summary>
    /// <param name="column">One of <see cref="Columns"/>.</param>
    /// <param name="isDescending">Whether the largest comes first.</param>
    /// <exception cref="ArgumentException">There is no such column.</exception>
    public ResultTable Sorted(string column, bool isDescending = false) => new(_columns, _conditions, [.. Order(column, isDescending).Select(i => _rows[i])]);

    /// <summary>The text as JSON: indented by two spaces, "\n" line ends, no line end after the last brace.</summary>
    public string ToJson() => JsonText.Of(writer =>
    {
        writer.WriteStartObject();
        writer.WritePropertyName("conditions");
        JsonText.WriteValue(writer, _conditions);
        writer.WriteStartArray("rows");
        foreach (Row row in _rows)
        {
            writer.WriteStartObject();
            WriteNested(writer, row.Values);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    });

    /// <summary>The text as comma-separated values (RFC 4180, but with "\n" line ends).</summary>
    public string ToCsv()
    {
        StringBuilder text = new();
        CsvText.AppendLine(text, Columns);
        foreach (Row row in _rows)
        {
            CsvText.AppendLine(text, row.Values.Where((_, i) => _columns[i].IsInCsv));
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
        return OfAny(conditions, [.. head, .. figures.Select(OfResult)], Guard.Copy(rows, nameof(rows)));

        static Figure<ResultRow<T>> OfResult(Figure<T> figure) => new(figure.Path, r => r.Result is { } result ? figure.Value(result) : null, figure.HasColumn)
        {
            SortValue = figure.SortValue is { } sort ? r => r.Result is { } result ? sort(result) : null : null,
        };
    }

    /// <summary>A table of any rows.</summary>
    internal static ResultTable OfAny<T>(
        IEnumerable<KeyValuePair<string, object?>> conditions, IReadOnlyCollection<Figure<T>> figures, IEnumerable<T> rows) => new(
            [.. figures.Select(f => new Column(f.Path, f.HasColumn))],
            [.. conditions],
            [.. rows.Select(r => new Row(
                [.. figures.Select(f => f.Value(r))],
                figures.Select((f, i) => (Figure: f, Index: i)).Where(f => f.Figure.SortValue is not null).ToDictionary(f => f.Index, f => f.Figure.SortValue!(r))))]);

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

    private sealed record Row(object?[] Values, Dictionary<int, object?> SortValues);
}
