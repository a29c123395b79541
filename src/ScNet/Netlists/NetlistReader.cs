using ScNet.Netlists.Toml;

namespace ScNet.Netlists;

/// <summary>Reads netlist documents: TOML 1.0 with the keys that <see cref="JsonSchema"/> describes.</summary>
/// <remarks>
/// No document makes it throw. Time is linear in the length of the document. A document may have
/// <see cref="MaximumLength"/> bytes, a million signs of structure (about 100 000 elements) and values
/// nested 64 deep; at most 1000 errors are listed.
/// </remarks>
public static class NetlistReader
{
    /// <summary>The most bytes of a file, or characters of a text, that are read: 16 MiB.</summary>
    public const int MaximumLength = TomlFile.MaximumLength;

    /// <summary>The version of the format that is read and written; a document that names none is of it.</summary>
    public const int FormatVersion = 1;

    /// <summary>
    /// The JSON Schema (draft 2020-12) of the document, for editors and for other programs. It knows keys, types and
    /// ranges; what only the whole can tell, such as the sum of the duties, is checked in reading.
    /// </summary>
    public static string JsonSchema => NetlistSchema.Json;

    /// <summary>Reads the text of a document.</summary>
    /// <param name="text">The document.</param>
    /// <param name="file">The name of the file for the positions of diagnostics; null for text without a file.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static NetlistReading Read(string text, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        DiagnosticList findings = new(file);
        Converter? converter = TomlDocument.Read(text, NetlistKeys.Format, findings) is { } document
            ? ConverterAssembly.Of(NetlistDocument.Read(document.Root, findings, document.IsComplete), findings)
            : null;
        return Reading(converter, findings);
    }

    /// <summary>Reads a file in UTF-8. A file that cannot be read gives one error, not an exception.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="ArgumentException"><paramref name="path"/> is null or empty.</exception>
    public static NetlistReading ReadFile(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        DiagnosticList findings = new(path);
        return TomlFile.Read(path, NetlistKeys.Format, findings) is { } text ? Read(text, path) : Reading(null, findings);
    }

    /// <summary>Reads a stream in UTF-8 up to its end, such as standard input. What cannot be read gives one error, not an exception.</summary>
    /// <param name="stream">The stream; it stays open.</param>
    /// <param name="file">What the stream is called in the positions of diagnostics; null for none.</param>
    /// <exception cref="ArgumentNullException"><paramref name="stream"/> is null.</exception>
    public static NetlistReading Read(Stream stream, string? file = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        DiagnosticList findings = new(file);
        return TomlFile.Read(stream, NetlistKeys.Format, findings) is { } text ? Read(text, file) : Reading(null, findings);
    }

    private static NetlistReading Reading(Converter? converter, DiagnosticList findings) =>
        new(converter, findings.Findings(), findings.File is { } file ? $"'{file}'" : "The netlist");
}
