using ScNet.Analysis;
using ScNet.Derivations.Snapshots;
using ScNet.Results;

namespace ScNet.Derivations;

/// <summary>
/// The results of an analysis as a value: saved as an <see cref="AnalysisDocument"/>, read back later, and
/// compared with another one by <see cref="AnalysisDifference"/>. Equality is by name, modes and values.
/// </summary>
/// <remarks>It holds results, not component values: of those it shows what they change, the limits in ohms.</remarks>
public sealed class AnalysisSnapshot : IEquatable<AnalysisSnapshot>
{
    private readonly ConverterAnalysis? _analysis;
    private string? _json;

    private AnalysisSnapshot(string converter, IReadOnlyList<SnapshotMode> modes, string json)
    {
        Converter = converter;
        Modes = modes;
        _json = json;
    }

    private AnalysisSnapshot(ConverterAnalysis analysis)
    {
        Converter = analysis.Converter.Name;
        Modes = [.. analysis.Modes.Select(SnapshotTaker.Of)];
        _analysis = analysis;
    }

    /// <summary>The name of the converter.</summary>
    public string Converter { get; }

    /// <summary>The modes in the order of the netlist, with or without a result.</summary>
    internal IReadOnlyList<SnapshotMode> Modes { get; }

    /// <summary>The snapshot of an analysis. Cost: one entry per value; text is written only by <see cref="ToJson"/>.</summary>
    public static AnalysisSnapshot Of(ConverterAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return new AnalysisSnapshot(analysis);
    }

    /// <summary>The snapshot of the analysis of all modes of a converter.</summary>
    public static AnalysisSnapshot Of(Converter converter) => Of(ConverterAnalysis.Of(converter));

    /// <summary>Reads the text of one analysis document.</summary>
    /// <exception cref="ScNetException">The text is not an analysis document of a converter; it says what is wrong and where.</exception>
    public static AnalysisSnapshot Parse(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Read(json, null);
    }

    /// <summary>Reads one analysis document from a file in UTF-8.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="ScNetException">The file is not an analysis document of a converter.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file must not be read.</exception>
    public static AnalysisSnapshot Load(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Read(SnapshotReader.ReadText(path), path);
    }

    /// <summary>The analysis document.</summary>
    public string ToJson() => _json ??= AnalysisDocument.ToJson(_analysis!);

    /// <summary>Writes the analysis document to a file in UTF-8, with a line end after the last brace.</summary>
    /// <param name="path">The file; one that exists is replaced, once the new one is whole.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path) => AtomicFile.Write(path, ToJson() + "\n");

    /// <inheritdoc/>
    public bool Equals(AnalysisSnapshot? other) => other is not null && Converter == other.Converter && Modes.SequenceEqual(other.Modes);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as AnalysisSnapshot);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Converter, Modes.Count, Modes.Sum(m => m.Entries.Count));

    /// <summary>The name and every value, one on a line.</summary>
    public override string ToString() => string.Join('\n', [Converter, .. Modes.Select(m => $"  {m}"), .. Modes.SelectMany(m => m.Entries.Select(e => $"  {m.Name}: {e}"))]);

    private static AnalysisSnapshot Read(string json, string? file)
    {
        (string converter, IReadOnlyList<SnapshotMode> modes) = SnapshotReader.Read(json, file);
        return new AnalysisSnapshot(converter, modes, json.TrimEnd());
    }
}
