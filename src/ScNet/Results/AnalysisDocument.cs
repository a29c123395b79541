using System.Buffers;
using System.Text.Json;
using ScNet.Analysis;

namespace ScNet.Results;

/// <summary>
/// The analysis document: the results of one netlist as JSON for other programs, indented by two
/// spaces, with "\n" line ends, no line end after the last brace, and the same bytes in every culture.
/// </summary>
/// <remarks>
/// Exact values are strings with a reduced fraction ("1/3"), values that component values decide are
/// numbers, undetermined values are null. Physical quantities are numbers in SI units with the unit in
/// the key. Names are written as they are, so text for a web page still needs escaping for HTML.
/// The keys are described in docs/guide/analysis-document.md.
/// </remarks>
[ShownAsText("It is the document that its text is.")]
public sealed class AnalysisDocument
{
    private readonly Converter? _converter;
    private readonly ModeOutcome[] _modes;
    private readonly string? _file;
    private readonly Diagnostic[] _diagnostics;
    private readonly ResultRow<FrequencyResults[]>[]? _impedances;

    private AnalysisDocument(
        Converter? converter, ModeOutcome[] modes, string? file, Diagnostic[] diagnostics, double[]? frequenciesHz = null)
    {
        _converter = converter;
        _modes = modes;
        _file = file;
        _diagnostics = diagnostics;
        _impedances = frequenciesHz is null ? null : [.. modes.Select(m => ResultRow.Find(null, m, a => FrequencyResults.Of(a, frequenciesHz)))];
    }

    /// <summary>
    /// Whether the document has everything asked for: the file could be read and every mode has a result, and its
    /// output impedance where frequencies are given, which a mode that is too large for it has not.
    /// </summary>
    public bool IsComplete => _converter is not null && _modes.All(m => m.HasResult) && (_impedances?.All(r => r.Result is not null) ?? true);

    /// <summary>The document of an analysis with all its modes.</summary>
    /// <param name="analysis">The analysis.</param>
    public static AnalysisDocument Of(ConverterAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        return Of(analysis.Converter, analysis.Modes);
    }

    /// <summary>The document of some modes of a converter, in the order given.</summary>
    /// <param name="converter">The converter.</param>
    /// <param name="modes">What came of analysing its modes.</param>
    public static AnalysisDocument Of(Converter converter, IEnumerable<ModeOutcome> modes)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(modes);
        return new AnalysisDocument(converter, [.. modes], null, []);
    }

    /// <summary>The document of a file that could not be read: no converter, no modes, and the reasons.</summary>
    /// <param name="file">The file as the caller named it; used for findings without a position.</param>
    /// <param name="diagnostics">The findings.</param>
    public static AnalysisDocument Unreadable(string? file, IEnumerable<Diagnostic> diagnostics)
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        return new AnalysisDocument(null, [], file, [.. diagnostics]);
    }

    /// <summary>
    /// The same document with the exact output impedance of every mode, under the key "outputImpedance". A mode that is
    /// too large for it has null there, an error that says so, and the status "error" beside its other results.
    /// </summary>
    /// <param name="frequenciesHz">Switching frequencies in hertz (Hz), in the order of the entries.</param>
    /// <exception cref="ArgumentOutOfRangeException">A frequency is not positive, or not from 1e-60 to 1e60.</exception>
    public AnalysisDocument WithOutputImpedance(IEnumerable<double> frequenciesHz)
    {
        ArgumentNullException.ThrowIfNull(frequenciesHz);
        double[] frequencies = [.. frequenciesHz];
        foreach (double frequencyHz in frequencies.Where(f => !Guard.IsInRange(f, allowZero: false)))
        {
            throw new ArgumentOutOfRangeException(nameof(frequenciesHz), frequencyHz, $"Expected positive frequencies from {Guard.MinimumValue} to {Guard.MaximumValue}.");
        }

        return new AnalysisDocument(_converter, _modes, _file, _diagnostics, frequencies);
    }

    /// <summary>The text of an analysis with all its modes.</summary>
    /// <param name="analysis">The analysis.</param>
    public static string ToJson(ConverterAnalysis analysis) => Of(analysis).ToJson();

    /// <summary>The text of several documents as one array, in the order given.</summary>
    /// <param name="documents">The documents.</param>
    public static string ToJson(IEnumerable<AnalysisDocument> documents)
    {
        IReadOnlyList<AnalysisDocument> all = Guard.Copy(documents, nameof(documents));
        return JsonText.Of(writer => WriteArray(all, writer));
    }

    /// <summary>Writes several documents as one array, in the order given, in UTF-8 without a byte order mark.</summary>
    /// <param name="documents">The documents.</param>
    /// <param name="stream">Where to; it stays open.</param>
    public static void Write(IEnumerable<AnalysisDocument> documents, Stream stream)
    {
        IReadOnlyList<AnalysisDocument> all = Guard.Copy(documents, nameof(documents));
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(JsonText.Utf8Of(writer => WriteArray(all, writer)).Span);
    }

    /// <summary>Writes several documents as one array, in the order given, in UTF-8 without a byte order mark.</summary>
    /// <param name="documents">The documents.</param>
    /// <param name="buffer">Where to.</param>
    public static void Write(IEnumerable<AnalysisDocument> documents, IBufferWriter<byte> buffer)
    {
        IReadOnlyList<AnalysisDocument> all = Guard.Copy(documents, nameof(documents));
        ArgumentNullException.ThrowIfNull(buffer);
        buffer.Write(JsonText.Utf8Of(writer => WriteArray(all, writer)).Span);
    }

    /// <summary>The text of this document.</summary>
    public string ToJson() => JsonText.Of(WriteTo);

    /// <summary>Writes this document in UTF-8 without a byte order mark.</summary>
    /// <param name="stream">Where to; it stays open.</param>
    public void WriteTo(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(JsonText.Utf8Of(WriteTo).Span);
    }

    /// <summary>Writes this document in UTF-8 without a byte order mark.</summary>
    /// <param name="buffer">Where to.</param>
    public void WriteTo(IBufferWriter<byte> buffer)
    {
        ArgumentNullException.ThrowIfNull(buffer);
        buffer.Write(JsonText.Utf8Of(WriteTo).Span);
    }

    private static void WriteArray(IEnumerable<AnalysisDocument> documents, Utf8JsonWriter writer)
    {
        writer.WriteStartArray();
        foreach (AnalysisDocument document in documents)
        {
            document.WriteTo(writer);
        }

        writer.WriteEndArray();
    }

    private void WriteTo(Utf8JsonWriter writer)
    {
        writer.WriteStartObject();
        writer.WriteString("converter", _converter?.Name);
        writer.WriteStartArray("modes");
        for (int m = 0; m < _modes.Length; m++)
        {
            if (_impedances is null)
            {
                ModeJson.Write(writer, _modes[m]);
            }
            else
            {
                ModeJson.Write(writer, _impedances[m]);
            }
        }

        writer.WriteEndArray();
        if (_converter is null)
        {
            writer.WriteStartArray("diagnostics");
            foreach (Diagnostic diagnostic in _diagnostics)
            {
                DiagnosticJson.Write(writer, diagnostic, diagnostic.Position ?? new SourcePosition(_file, 0, 0));
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
    }
}
