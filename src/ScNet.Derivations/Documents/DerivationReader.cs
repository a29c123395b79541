using ScNet.Netlists;
using ScNet.Netlists.Toml;

namespace ScNet.Derivations.Documents;

/// <summary>Reads derivation documents: TOML 1.0 with the keys that <see cref="JsonSchema"/> describes.</summary>
/// <remarks>No document makes it throw. Time is linear in the length of the document, up to the limits of <see cref="NetlistReader"/>, and that of one analysis.</remarks>
public static class DerivationReader
{
    private static readonly Lazy<string> s_schema = new(() => SchemaResource.Load("ScNet.Derivations.Documents.derivation.schema.json", typeof(DerivationReader).Assembly));

    /// <summary>The version of the format that is read.</summary>
    public const int FormatVersion = 1;

    /// <summary>
    /// The JSON Schema (draft 2020-12) of the document, for editors and for other programs. It knows keys and types; names of
    /// elements and counts of phases are those of the netlist and are checked in reading.
    /// </summary>
    public static string JsonSchema => s_schema.Value;

    /// <summary>Reads the text of a document about a converter.</summary>
    /// <param name="text">The document.</param>
    /// <param name="converter">The converter that it is about; the netlist or family that the document names is not looked at.</param>
    /// <param name="file">The name of the file for the positions of diagnostics; null for text without a file, which they call "derivation".</param>
    public static DerivationReading Read(string text, Converter converter, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(converter);
        return Read(text, converter, file, null);
    }

    /// <summary>Reads a file in UTF-8, and the netlist that it names. A file that cannot be read gives one error, not an exception.</summary>
    /// <param name="path">The file; the path of its netlist starts from its folder.</param>
    /// <param name="converter">The converter that it is about, in the place of the netlist or family that it names; null for that one.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static DerivationReading ReadFile(string path, Converter? converter = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        DiagnosticList findings = new(path);
        return TomlFile.Read(path, DerivationKeys.Format, findings) is { } text
            ? Read(text, converter, path, Path.GetDirectoryName(path) ?? string.Empty)
            : Reading(null, findings, []);
    }

    /// <summary>Reads a stream in UTF-8 up to its end, such as standard input. What cannot be read gives one error, not an exception.</summary>
    /// <param name="stream">The stream; it stays open.</param>
    /// <param name="converter">The converter that it is about, in the place of the netlist or family that it names; null for that one, whose path starts from the working folder.</param>
    /// <param name="file">What the stream is called in the positions of diagnostics; null for "derivation".</param>
    public static DerivationReading Read(Stream stream, Converter? converter = null, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        DiagnosticList findings = new(file ?? "derivation");
        return TomlFile.Read(stream, DerivationKeys.Format, findings) is { } text ? Read(text, converter, file, string.Empty) : Reading(null, findings, []);
    }

    private static DerivationReading Read(string text, Converter? converter, string? file, string? folder)
    {
        DiagnosticList findings = new(file ?? "derivation");
        if (TomlDocument.Read(text, DerivationKeys.Format, findings) is not { } document)
        {
            return Reading(null, findings, []);
        }

        DerivationDocument derivation = new(document, findings);
        IReadOnlyList<Diagnostic> ofNetlist = [];
        if (converter is null && derivation.Netlist is { } named)
        {
            NetlistReading netlist = NetlistReader.ReadFile(Path.Combine(folder ?? string.Empty, named));
            (converter, ofNetlist) = (netlist.Converter, netlist.HasResult ? [] : netlist.Diagnostics);
        }
        else if (converter is null && derivation.Family is { } family)
        {
            converter = family.Build();
        }
        else if (converter is null)
        {
            derivation.RequireNetlist();
        }

        Derivation? stated = converter is null ? null : derivation.Of(converter);
        return Reading(findings.HasErrors ? null : stated, findings, ofNetlist);
    }

    private static DerivationReading Reading(Derivation? derivation, DiagnosticList findings, IReadOnlyList<Diagnostic> ofNetlist) =>
        new(derivation, [.. findings.Findings(), .. ofNetlist], $"'{findings.File}'");
}
